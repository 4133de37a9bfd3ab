using System.Text.Json;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads a trial that somebody typed as JSON: {"runs":[{"rpm":5480,"speedKnots":31.2,"headingDegrees":40}, ...]}, beside it
/// airCelsius, pressureHpa and humidityPercent as far as read, and with a run heldSeconds, limiterReached and ventilated.
/// Members are known by the names of columns, however their words are parted; one that is not known is told.
/// </summary>
internal sealed class TypedJson
{
    private const string OfTrial = "runs, airCelsius (or airFahrenheit), pressureHpa (or pressureKpa, pressureInHg), humidityPercent";

    private const string OfRun =
        "rpm, speedKnots (or speedMph, speedKmh, speedMs), headingDegrees, heldSeconds, limiterReached, ventilated";

    private readonly LogBuilder _log;
    private readonly int _line;

    private TypedJson(LogBuilder log, int line) => (_log, _line) = (log, line);

    internal static void Take(JsonElement trial, JsonElement runs, LogBuilder log, int line)
    {
        log.Typed = true;
        var reader = new TypedJson(log, line);
        reader.Air(trial);
        var typed = new TypedRuns(log, runs.GetArrayLength());
        if (runs.GetArrayLength() == 0) log.Drop(line, "runs holds no run");
        foreach (var (index, run) in runs.EnumerateArray().Index()) reader.Run(typed, run, $"runs[{index}]");
    }

    private void Air(JsonElement trial)
    {
        foreach (var (name, value, column) in Members(trial, "", OfTrial, AirMeans.Has))
        {
            if (Number(value) is not { } number) _log.Aside(_line, NoNumber(name, value, column));
            else if (_log.Air.Take(column, number) is { } reason) _log.Aside(_line, $"{name}: {reason}");
        }
    }

    private void Run(TypedRuns typed, JsonElement element, string place)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            _log.Drop(_line, $"{place} is no object");
            return;
        }

        var run = new TypedRun();
        string? wrong = null;
        foreach (var (name, value, column) in Members(element, place + ".", OfRun, IsOfRun))
        {
            if (column.Quantity is CsvQuantity.Limiter or CsvQuantity.Ventilated) Flag(run, name, value, column.Quantity);
            else if (Number(value, column.Quantity) is not { } number) wrong ??= NoNumber(name, value, column);
            else if (run.Take(column, number) is { } reason) wrong ??= $"{name}: {reason}";
        }

        if (wrong is not null) _log.Drop(_line, wrong);
        else typed.Take(
            run, $"{place}.rpm is missing", $"{place}.headingDegrees is missing, which pairs the run with another: add it, degrees 0 to 360", _line);
    }

    /// <summary>The members that are known and have a value, each quantity once; of the others it is told that they were left aside.</summary>
    private IEnumerable<(string Name, JsonElement Value, CsvColumn Column)> Members(
        JsonElement element, string place, string known, Func<CsvQuantity, bool> wanted)
    {
        var seen = new HashSet<CsvQuantity>();
        foreach (var member in element.EnumerateObject())
        {
            var name = place + member.Name;
            if (place.Length == 0 && member.NameEquals("runs")) continue;
            if (CsvColumn.Of(member.Name) is not { } column || !wanted(column.Quantity)) _log.Aside(_line, $"{Short(name)} is not known: {known}");
            else if (member.Value.ValueKind == JsonValueKind.Null) continue;
            else if (!seen.Add(column.Quantity)) _log.Aside(_line, $"{name} is the second of its kind");
            else yield return (name, member.Value, column);
        }
    }

    private void Flag(TypedRun run, string name, JsonElement value, CsvQuantity quantity)
    {
        var said = YesNo.Of(value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText());
        if (said is null) _log.Aside(_line, $"{name}: {Short(value.GetRawText())} is not {YesNo.Words}");
        else if (quantity == CsvQuantity.Limiter) run.Limiter = said.Value;
        else run.Ventilated = said.Value;
    }

    private static bool IsOfRun(CsvQuantity quantity) => quantity is CsvQuantity.Rpm or CsvQuantity.Knots or CsvQuantity.Heading
        or CsvQuantity.HeldSeconds or CsvQuantity.Limiter or CsvQuantity.Ventilated;

    /// <summary>A number, whether or not somebody put it in quotes; for a heading a point of the compass too.</summary>
    private static double? Number(JsonElement value, CsvQuantity quantity = CsvQuantity.Rpm) => value.ValueKind switch
    {
        JsonValueKind.Number => value.TryGetDouble(out var d) && double.IsFinite(d) ? d : null,
        JsonValueKind.String when quantity == CsvQuantity.Heading && Turn.Point(value.GetString()!) is { } point => point,
        JsonValueKind.String => Numbers.Parse(value.GetString()),
        _ => null,
    };

    private static string NoNumber(string name, JsonElement value, CsvColumn column) => $"{name}: {Short(value.GetRawText())} is no number"
        + Numbers.Mend(value.ValueKind == JsonValueKind.String ? value.GetString()! : "", column.Quantity);

    private static string Short(string text) => text.Length > 60 ? text[..60] + "..." : text;
}
