using System.Globalization;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Response;

namespace FleetWake.Import;

/// <summary>How one engine family answers, and from what that was learned.</summary>
/// <param name="Model">The engines' model.</param>
/// <param name="Boats">Boats that taught something.</param>
/// <param name="Power">Pairs of trials in unlike air.</param>
/// <param name="Pitch">Changes of pitch.</param>
/// <param name="Response">What was learned.</param>
internal sealed record FamilyResponse(string Model, int Boats, int Power, int Pitch, LearnedResponse Response);

/// <summary>Learns from a folder of sheets how each engine family answers power and pitch. Needs no database.</summary>
internal static class LearnRun
{
    /// <summary>The families that taught something, by name.</summary>
    public static IReadOnlyList<FamilyResponse> Of(FleetLogs logs) =>
    [
        .. logs.Boats
            .SelectMany(boat => KnownChanges.Of(BoatHistory.Tell(logs.DossierOf(boat))))
            .GroupBy(k => k.Model, StringComparer.Ordinal)
            .OrderBy(f => f.Key, StringComparer.Ordinal)
            .Select(f =>
            {
                List<PowerStep> power = [.. f.SelectMany(k => k.Power)];
                List<PitchStep> pitch = [.. f.SelectMany(k => k.Pitch)];
                return new FamilyResponse(f.Key, f.Count(), power.Count, pitch.Count, GainLearning.Learn(power, pitch));
            }),
    ];

    /// <summary>The families in words, with what to give to trial and pitch.</summary>
    public static IEnumerable<string> Told(IReadOnlyList<FamilyResponse> families)
    {
        foreach (var f in families)
        {
            var (gain, pitch) = (f.Response.Gain, f.Response.PitchElasticity);
            yield return $"{f.Model}: {f.Boats} boats, {f.Power} pairs of trials in unlike air, {f.Pitch} changes of pitch";
            yield return $"  RPM follows power by g = {Text(gain)}, and pitch by {Text(pitch)}; {100 * f.Response.PriorShare:0} % of what was held beforehand is left";
            yield return $"  trial --gain {Typed(gain)}      pitch --elasticity {Typed(pitch)}";
        }
    }

    private static string Text(Uncertain value) => string.Create(CultureInfo.InvariantCulture, $"{value.Value:0.00} +/- {value.StandardDeviation:0.00}");

    private static string Typed(Uncertain value) => string.Create(CultureInfo.InvariantCulture, $"{value.Value:0.000}+-{value.StandardDeviation:0.000}");
}
