using System.Text.Json;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads a trial that somebody typed as JSON: {"runs":[{"rpm":5480,"speedKnots":31.2,"headingDegrees":40}, ...]}, beside it
/// airCelsius, pressureHpa and humidityPercent as far as read, and with a run heldSeconds, limiterReached and ventilated.
/// </summary>
internal static class TypedJson
{
    internal static void Take(JsonElement trial, JsonElement runs, LogBuilder log, int line)
    {
        Air(trial, "airCelsius", log.Air.Celsius, log, line);
        Air(trial, "pressureHpa", log.Air.Hectopascals, log, line);
        Air(trial, "humidityPercent", percent => log.Air.HumidityFraction(percent / 100), log, line);
        var typed = new TypedRuns(log, runs.GetArrayLength());
        foreach (var run in runs.EnumerateArray())
        {
            if (run.ValueKind != JsonValueKind.Object)
            {
                log.Drop(line, "a run that is no object");
                continue;
            }

            typed.Take(
                Number(run, "rpm"), Number(run, "speedKnots"), Number(run, "headingDegrees"), Number(run, "heldSeconds"),
                Flag(run, "limiterReached"), Flag(run, "ventilated"), line);
        }
    }

    private static void Air(JsonElement trial, string name, Func<double, string?> take, LogBuilder log, int line)
    {
        if (Number(trial, name) is { } value && take(value) is { } reason) log.Drop(line, reason);
    }

    private static double? Number(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number
        && value.TryGetDouble(out var d) && double.IsFinite(d)
            ? d
            : null;

    private static bool Flag(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.True;
}
