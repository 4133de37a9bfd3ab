using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads cells below a header. With a column of times it is a recording; without one, each row is a run that somebody typed.
/// Numbers may have a decimal comma where a semicolon or a tab parts the cells.
/// </summary>
internal sealed class CsvLog
{
    private readonly LogBuilder _log;
    private readonly char _separator;
    private readonly Dictionary<CsvQuantity, (int Index, CsvColumn Column)> _columns = [];
    private readonly int _count;
    private TimeSpan? _timeOfDay;
    private int _day;

    private CsvLog(string header, LogBuilder log)
    {
        _log = log;
        _separator = CsvCells.Separator(header);
        var names = CsvCells.Of(header, _separator);
        _count = names.Count;
        var aside = new List<string>();
        foreach (var (index, name) in names.Index())
        {
            if (CsvColumn.Of(name) is { } column && _columns.TryAdd(column.Quantity, (index, column))) continue;
            if (name.Length > 0) aside.Add(CsvColumn.WithUnit(name) is { } with ? $"\"{name}\", which names no unit: call it {with}" : $"\"{name}\"");
        }

        if (aside.Count > 0) log.Say(LogNoticeKind.LeftAside, $"columns left aside: {string.Join("; ", aside.Take(20))}");
    }

    internal static void Read(IEnumerable<NumberedLine> lines, LogBuilder log)
    {
        CsvLog? sheet = null;
        var typed = new List<(List<string> Cells, int Line)>();
        foreach (var (number, text) in lines)
        {
            if (!log.Take()) break;
            if (text is null) log.Drop(number, $"longer than {BoundedLines.Longest} characters");
            if (string.IsNullOrWhiteSpace(text) || text[0] == '#') continue;
            if (sheet is null)
            {
                sheet = new CsvLog(text, log);
                if (sheet.Has(CsvQuantity.Rpm) || sheet.Has(CsvQuantity.Knots)) continue;
                log.Drop(number, "no header of a trial: it needs a column rpm, or one of speed with its unit such as speed_kn");
                return;
            }

            var cells = CsvCells.Of(text, sheet._separator);
            if (cells.Count > sheet._count && cells.Skip(sheet._count).Any(cell => cell.Length > 0))
                log.Drop(number, $"{cells.Count} cells below {sheet._count} names");
            else if (sheet.Timed) sheet.Sample(cells, number);
            else typed.Add((cells, number));
        }

        if (sheet is null) log.Drop(1, "nothing in it");
        var runs = new TypedRuns(log, typed.Count);
        foreach (var (cells, line) in typed) sheet!.Run(runs, cells, line);
    }

    private bool Timed => Has(CsvQuantity.Time) || Has(CsvQuantity.Seconds);

    private bool Has(CsvQuantity quantity) => _columns.ContainsKey(quantity);

    private void Sample(List<string> cells, int line)
    {
        if (Moment(cells) is not { } raw)
        {
            _log.Drop(line, $"a row with the time \"{Text(cells, Has(CsvQuantity.Time) ? CsvQuantity.Time : CsvQuantity.Seconds)}\"");
            return;
        }

        if (!Numeric(cells, line) || _log.Time(raw, line) is not { } at) return; // a row that is dropped must not move the clock
        if (Number(cells, CsvQuantity.Rpm) is { } rpm) _log.Rate("", Text(cells, CsvQuantity.Engine), at, rpm, line);
        if (Number(cells, CsvQuantity.Knots) is { } knots) _log.Fix("", at, knots, Number(cells, CsvQuantity.Heading), line);
        Air(cells, line);
    }

    private void Run(TypedRuns runs, List<string> cells, int line)
    {
        if (!Numeric(cells, line)) return;
        Air(cells, line);
        runs.Take(
            Number(cells, CsvQuantity.Rpm), Number(cells, CsvQuantity.Knots), Number(cells, CsvQuantity.Heading),
            Number(cells, CsvQuantity.HeldSeconds), Flag(cells, CsvQuantity.Limiter), Flag(cells, CsvQuantity.Ventilated), line);
    }

    private void Air(List<string> cells, int line)
    {
        var air = _log.Air;
        foreach (var reason in new[]
        {
            Number(cells, CsvQuantity.Celsius) is { } t ? air.Celsius(t) : null,
            Number(cells, CsvQuantity.Hectopascals) is { } p ? air.Hectopascals(p) : null,
            Number(cells, CsvQuantity.HumidityFraction) is { } h ? air.HumidityFraction(h) : null,
        })
        {
            if (reason is not null) _log.Drop(line, reason);
        }
    }

    private DateTimeOffset? Moment(List<string> cells)
    {
        if (!Has(CsvQuantity.Time))
            return Number(cells, CsvQuantity.Seconds) is { } s && s is >= 0 and < 1e9 ? DateTimeOffset.UnixEpoch.AddSeconds(s) : null;
        var text = Text(cells, CsvQuantity.Time);
        if (LogTime.Iso(text) is { } iso) return iso;
        if (LogTime.OfDay(text) is not { } clock) return LogTime.Unix(text);
        _log.Say(LogNoticeKind.NoDate, "no date was logged; times count from midnight");
        var time = clock - DateTimeOffset.UnixEpoch;
        if (_timeOfDay - time > TimeSpan.FromHours(12)) _day++;
        _timeOfDay = time;
        return clock.AddDays(_day);
    }

    /// <summary>Whether every cell that should be a number is one or empty: half a row is not trusted.</summary>
    private bool Numeric(List<string> cells, int line)
    {
        foreach (var (quantity, (index, _)) in _columns)
        {
            if (quantity is CsvQuantity.Time or CsvQuantity.Engine or CsvQuantity.Limiter or CsvQuantity.Ventilated) continue;
            if (Text(cells, quantity) is not { Length: > 0 } text || Number(cells, quantity) is not null) continue;
            _log.Drop(line, string.Create(CultureInfo.InvariantCulture, $"\"{text}\" in column {index + 1} is no number"));
            return false;
        }

        return true;
    }

    private double? Number(List<string> cells, CsvQuantity quantity)
    {
        var text = Text(cells, quantity);
        if (_separator != ',') text = text.Replace(',', '.');
        return Numbers.Parse(text) is { } value && _columns[quantity].Column is var column
            ? (value * column.Factor) + column.Offset
            : null;
    }

    private bool Flag(List<string> cells, CsvQuantity quantity) =>
        Text(cells, quantity).ToLowerInvariant() is "1" or "yes" or "y" or "true" or "x";

    private string Text(List<string> cells, CsvQuantity quantity) =>
        _columns.TryGetValue(quantity, out var at) && at.Index < cells.Count ? cells[at.Index] : "";
}
