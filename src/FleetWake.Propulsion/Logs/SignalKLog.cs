using System.Text.Json;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads Signal K delta messages (Signal K specification 1.x, "delta format"): a context, which is a boat, with updates that
/// hold a time and values by path, all in SI units: m/s, radians, revolutions a second, pascals, kelvin, fractions.
/// </summary>
internal sealed class SignalKLog
{
    private const string Self = "vessels.self";

    /// <summary>A course and a speed come one after another; a course older than this belongs to another speed.</summary>
    private static readonly TimeSpan s_oldest = TimeSpan.FromSeconds(5);

    private readonly LogBuilder _log;
    private readonly Dictionary<string, (DateTimeOffset At, double Degrees)> _course = [];

    private SignalKLog(LogBuilder log) => _log = log;

    internal static void Read(IEnumerable<NumberedLine> lines, LogBuilder log)
    {
        var reader = new SignalKLog(log);
        foreach (var (line, text, broken) in JsonObjects.Of(lines))
        {
            if (!log.Take()) break;
            if (broken is not null)
            {
                log.Drop(line, broken);
                continue;
            }

            try
            {
                using var document = JsonDocument.Parse(text);
                reader.Message(document.RootElement, line);
            }
            catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
            {
                // The last two are what half a surrogate pair in a text makes of it.
                log.Drop(line, "no JSON object");
            }
        }
    }

    private void Message(JsonElement message, int line)
    {
        if (message.TryGetProperty("runs", out var runs) && runs.ValueKind == JsonValueKind.Array)
        {
            _log.Format = LogFormat.TypedJson;
            TypedJson.Take(message, runs, _log, line);
            return;
        }

        if (message.TryGetProperty("updates", out var updates) && updates.ValueKind == JsonValueKind.Array)
        {
            var boat = Text(message, "context") ?? Self;
            foreach (var update in updates.EnumerateArray())
            {
                if (update.ValueKind == JsonValueKind.Object) Update(boat, update, line);
                else _log.Drop(line, "an update that is no object");
            }
        }
        else if (Text(message, "self") is { } self) // the greeting of a server
        {
            _log.OwnBoat = self.StartsWith("vessels.", StringComparison.Ordinal) ? self : $"vessels.{self}";
        }
        else
        {
            _log.Drop(line, "neither updates nor runs");
        }
    }

    private void Update(string boat, JsonElement update, int line)
    {
        if (!update.TryGetProperty("values", out var values) || values.ValueKind != JsonValueKind.Array) return; // "meta" has none
        if (LogTime.Iso(Text(update, "timestamp") ?? "") is not { } raw)
        {
            _log.Drop(line, "an update without a time");
            return;
        }

        if (_log.Time(raw, line) is not { } at) return;
        // A speed may stand before its course in one update, so courses go first.
        var pairs = values.EnumerateArray().Where(value => value.ValueKind == JsonValueKind.Object)
            .Select(value => (Path: Text(value, "path"), Value: Number(value)))
            .Where(pair => pair is { Path: not null, Value: not null })
            .Select(pair => (Path: pair.Path!, Value: pair.Value!.Value))
            .OrderBy(pair => pair.Path == "navigation.speedOverGround");
        foreach (var (path, value) in pairs) Value(boat, at, path, value, line);
    }

    private void Value(string boat, DateTimeOffset at, string path, double value, int line)
    {
        switch (path)
        {
            case "navigation.courseOverGroundTrue":
                var degrees = value * 180 / Math.PI;
                if (Plausible.Course(degrees) is { } odd) _log.Aside(line, odd);
                else _course[boat] = (at, degrees);
                return;
            case "navigation.speedOverGround":
                double? course = _course.TryGetValue(boat, out var last) && (at - last.At).Duration() <= s_oldest ? last.Degrees : null;
                _log.Fix(boat, at, value * (3600.0 / 1852.0), course, line, alone: false);
                return;
        }

        if (path.StartsWith("propulsion.", StringComparison.Ordinal) && path.EndsWith(".revolutions", StringComparison.Ordinal))
        {
            var engine = path["propulsion.".Length..^".revolutions".Length]; // "propulsion.revolutions" has no engine
            if (engine.Length > 0) _log.Rate(boat, engine, at, value * 60, line, alone: false);
            return;
        }

        var reason = path switch
        {
            "environment.outside.pressure" => _log.Air.Hectopascals(value / 100),
            "environment.outside.temperature" => _log.Air.Celsius(value - 273.15),
            "environment.outside.relativeHumidity" or "environment.outside.humidity" => _log.Air.HumidityFraction(value),
            _ => null,
        };
        if (reason is not null) _log.Aside(line, reason);
    }

    private static string? Text(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static double? Number(JsonElement value) =>
        value.TryGetProperty("value", out var number) && number.ValueKind == JsonValueKind.Number
        && number.TryGetDouble(out var d) && double.IsFinite(d)
            ? d
            : null;
}
