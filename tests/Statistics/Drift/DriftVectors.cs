using System.Text.Json;
using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>The worked cases of the recommended estimator, see Reference/PROVENANCE.md.</summary>
internal static class DriftVectors
{
    private static readonly JsonElement Root = JsonDocument.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "drift_vectors.json"))).RootElement;

    public static TheoryData<string> Ids => [.. Root.GetProperty("mountings").EnumerateArray().Select(m => m.GetProperty("mounting_id").GetString()!)];

    public static DriftSettings Settings => DriftSettings.Recommended;

    public static SlopePrior Prior => SlopePrior.Of(Numbers(Root, "prior"));

    /// <summary>The drifts that those cases look for: half the prior from 5 up, half even from 5 to 60.</summary>
    public static SlopePrior Alternative
    {
        get
        {
            var prior = Prior.Weights.ToArray().Select((w, g) => SlopeGrid.At(g) >= 5 ? w : 0).ToArray();
            return SlopePrior.Of([.. prior.Select((w, g) => (0.5 * w / prior.Sum()) + (SlopeGrid.At(g) is >= 5 and <= 60 ? 0.5 / 56 : 0))]);
        }
    }

    public static JsonElement Of(string id) => Root.GetProperty("mountings").EnumerateArray().Single(m => m.GetProperty("mounting_id").GetString() == id);

    public static double[] Numbers(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(x => x.GetDouble())];

    public static double Number(JsonElement of, string name) => of.GetProperty(name).GetDouble();

    public static DriftSeries Series(JsonElement m)
    {
        var (week, hours, rpm, air, load) = (Numbers(m, "week"), Numbers(m, "hours"), Numbers(m, "rpm"), Numbers(m, "air_temp_c"), Numbers(m, "load_delta_kg"));
        var band = Numbers(m, "rated");
        return new(
            band[0],
            band[1],
            [.. week.Select((w, i) => new DriftTrial(w, hours[i], rpm[i], air[i], load[i]))],
            [.. m.GetProperty("events").EnumerateArray().Select(e => new DriftEvent(e[0].GetDouble(), e[1].GetString() == "strike" ? StepKind.Strike : StepKind.Repitch))]);
    }
}
