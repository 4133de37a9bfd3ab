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

        // A recording tells neither how long a run was held nor what was seen during it: nothing is left out in silence.
        if (Timed) aside.AddRange(_columns.Where(pair => pair.Key is CsvQuantity.HeldSeconds or CsvQuantity.Limiter or CsvQuantity.Ventilated)
            .Select(pair => $"\"{names[pair.Value.Index]}\", which is read of typed runs only, those without times"));
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
        if (sheet is { Timed: false })
        {
            log.Typed = true;
            if (typed.Count == 0) log.Drop(1, "no row below its header");
        }

        var runs = new TypedRuns(log, typed.Count);
        foreach (var (cells, line) in typed) sheet!.Run(runs, cells, line);
    }

    private bool Timed => Has(CsvQuantity.Time) || Has(CsvQuantity.Seconds);

    private bool Has(CsvQuantity quantity) => _columns.ContainsKey(quantity);

    private void Sample(List<string> cells, int line)
    {
        _log.SawRpm |= Text(cells, CsvQuantity.Rpm).Length > 0;
        _log.SawSpeed |= Text(cells, CsvQuantity.Knots).Length > 0;
        if (Moment(cells) is not { } raw)
        {
            _log.Drop(line, $"a row with the time \"{Text(cells, Has(CsvQuantity.Time) ? CsvQuantity.Time : CsvQuantity.Seconds)}\"");
            return;
        }

        if (!Numeric(cells, line) || _log.Time(raw, line) is not { } at) return; // a row that is dropped must not move the clock
        var wrong = new List<string>();
        var rpm = Plain(cells, CsvQuantity.Rpm, wrong);
        var knots = Plain(cells, CsvQuantity.Knots, wrong);
        var course = Plain(cells, CsvQuantity.Heading, wrong);
        if (rpm is { } n) _log.Rate("", Text(cells, CsvQuantity.Engine), at, n, line);
        if (knots is { } v) _log.Fix("", at, v, course, line);
        if (wrong.Count > 0 && rpm is null && knots is null)
        {
            _log.Drop(line, string.Join("; ", wrong));
            wrong.Clear();
        }

        foreach (var reason in wrong) _log.Aside(line, reason);
        Air(cells, line);
    }

    private void Run(TypedRuns runs, List<string> cells, int line)
    {
        if (!Numeric(cells, line)) return;
        Air(cells, line);
        var run = new TypedRun { Limiter = Flag(cells, CsvQuantity.Limiter, line), Ventilated = Flag(cells, CsvQuantity.Ventilated, line) };
        foreach (var (quantity, (_, column)) in _columns)
        {
            if (AirMeans.Has(quantity) || Number(cells, quantity) is not { } written || run.Take(column, written) is not { } reason) continue;
            _log.Drop(line, reason);
            return;
        }

        runs.Take(
            run,
            Has(CsvQuantity.Rpm) ? "a run without its rpm" : "a run without its rpm: add a column rpm",
            "a run without its heading, which pairs it with another: "
                + (Has(CsvQuantity.Heading) ? "write degrees 0 to 360" : "add a column heading_deg, degrees 0 to 360"),
            line);
    }

    private void Air(List<string> cells, int line)
    {
        foreach (var (quantity, (_, column)) in _columns)
        {
            if (AirMeans.Has(quantity) && Number(cells, quantity) is { } written && _log.Air.Take(column, written) is { } reason)
                _log.Aside(line, reason);
        }
    }

    private DateTimeOffset? Moment(List<string> cells)
    {
        if (!Has(CsvQuantity.Time))
        {
            _log.Times = LogTimes.SecondsOnly;
            return Number(cells, CsvQuantity.Seconds) is { } s && s is >= 0 and < 1e9 ? DateTimeOffset.UnixEpoch.AddSeconds(s) : null;
        }

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
            _log.Drop(line, string.Create(CultureInfo.InvariantCulture, $"\"{text}\" in column {index + 1} is no number{Numbers.Mend(text, quantity)}"));
            return false;
        }

        return true;
    }

    /// <summary>The number of a cell as it was written, a point of the compass in degrees; null when it has none.</summary>
    private double? Number(List<string> cells, CsvQuantity quantity)
    {
        var text = Text(cells, quantity);
        if (quantity == CsvQuantity.Heading && Turn.Point(text) is { } point) return point;
        if (_separator != ',') text = text.Replace(',', '.');
        return Numbers.Parse(text);
    }

    /// <summary>The value of a cell in the unit of its quantity; null when it has none or, which is noted, an impossible one.</summary>
    private double? Plain(List<string> cells, CsvQuantity quantity, List<string> wrong)
    {
        if (Number(cells, quantity) is not { } written) return null;
        var column = _columns[quantity].Column;
        if (Plausible.Of(column, written) is not { } reason) return column.Value(written);
        wrong.Add(reason);
        return null;
    }

    private bool Flag(List<string> cells, CsvQuantity quantity, int line)
    {
        var text = Text(cells, quantity);
        var said = YesNo.Of(text);
        if (said is null) _log.Aside(line, $"{(quantity == CsvQuantity.Limiter ? "limiter" : "ventilated")} \"{text}\" is not {YesNo.Words}");
        return said ?? false;
    }

    private string Text(List<string> cells, CsvQuantity quantity) =>
        _columns.TryGetValue(quantity, out var at) && at.Index < cells.Count ? cells[at.Index] : "";
}
