using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Engines;

/// <summary>Which spare prop fits an engine now, by what is on record. It says what goes on the shaft, not what suits the boat.</summary>
/// <param name="Engine">The engine's id; null when none hangs there.</param>
/// <param name="Spares">Spares that fit, and those that one thing keeps from it, by dock and then best first.</param>
/// <param name="Others">Spares that more than one thing keeps from it.</param>
public sealed record FitsNow(string? Engine, IReadOnlyList<SpareFit> Spares, int Others)
{
    /// <summary>Holds each spare against what is stated of the engine.</summary>
    /// <param name="fit">What is stated to fit the engine; null when nobody stated it.</param>
    /// <param name="engine">The engine.</param>
    /// <param name="props">Lives of the operator's props.</param>
    /// <param name="parts">Stock of small parts.</param>
    public static FitsNow Of(EngineFitStated? fit, EngineCard? engine, IEnumerable<PropLife> props, IEnumerable<PartStock> parts)
    {
        var stock = parts.ToDictionary(p => p.Part, StringComparer.Ordinal);
        var held = props.Where(p => p.Place.Standing is PropStanding.Spare or PropStanding.AtShop)
            .Select(p => (Prop: p, Points: Points(fit, p, stock).ToList())).ToList();
        var spares = held.Where(h => h.Points.Count(Keeps) <= 1).Select(h => Spare(h.Prop, h.Points))
            .OrderBy(s => s.Dock is null).ThenBy(s => s.Dock, StringComparer.Ordinal).ThenBy(s => s.Answer).ThenBy(s => s.Prop, StringComparer.Ordinal)
            .ToList();
        return new FitsNow(engine?.Engine, spares, held.Count - spares.Count);
    }

    private static SpareFit Spare(PropLife prop, List<FitPoint> points) => new(
        prop.Prop,
        prop.Place.Dock,
        prop.Place.DockAssumed,
        points.Any(Keeps) ? FitAnswer.NearMiss
            : points.Any(p => p.Verdict == FitVerdict.NotStated) ? FitAnswer.NotStated
            : points.Any(p => p.Verdict == FitVerdict.WithPart) ? FitAnswer.FitsWithPart
            : FitAnswer.Fits,
        points,
        prop.Numbers.DiameterInches,
        prop.Numbers.PitchInches,
        prop.Registered?.Blades,
        prop.Registered?.Material);

    private static bool Keeps(FitPoint point) => point.Verdict == FitVerdict.Keeps;

    private static IEnumerable<FitPoint> Points(EngineFitStated? fit, PropLife prop, Dictionary<string, PartStock> stock)
    {
        FitPoint?[] points = [Rotates(fit, prop), Turns(fit, prop), Hub(fit, prop, stock), Washer(fit, prop), State(prop), Place(prop)];
        return points.OfType<FitPoint>();
    }

    private static FitPoint? Rotates(EngineFitStated? fit, PropLife prop) =>
        fit?.Rotation is not { } engine || prop.Registered is not { Rotation: var own } ? NotStated("rotation", fit?.Rotation is null)
        : engine == own ? null
        : Keeps($"it turns {Words.Prose(own)}, the engine's prop turns {Words.Prose(engine)}");

    private static FitPoint? Turns(EngineFitStated? fit, PropLife prop) =>
        fit?.LargestDiameterInches is not { } most || prop.Numbers.DiameterInches is not { } across ? NotStated("diameter", fit?.LargestDiameterInches is null)
        : across <= most ? null
        : Keeps($"it is {across:0.##} in across, {most:0.##} in is the most that turns free");

    private static FitPoint? Hub(EngineFitStated? fit, PropLife prop, Dictionary<string, PartStock> stock)
    {
        if (fit?.HubKit is { } wanted && prop.Fit?.HubKit is { } kit)
            return kit == wanted ? null : WithKit(wanted, prop.Place.Dock, stock.GetValueOrDefault(wanted));
        if (fit?.Spline is { } shaft && prop.Fit?.Spline is { } bore)
            return shaft == bore ? null : Keeps($"its spline is {bore}, the shaft's is {shaft}");
        if (fit?.SplineTeeth is { } teeth && prop.Fit?.SplineTeeth is { } own)
            return teeth == own ? null : Keeps($"its spline has {own} teeth, the shaft's has {teeth}");
        return NotStated("spline or hub kit", fit is null or { HubKit: null, Spline: null, SplineTeeth: null });
    }

    private static FitPoint WithKit(string kit, string? dock, PartStock? stock)
    {
        if (stock?.At(dock) is > 0 and var here) return new FitPoint(FitVerdict.WithPart, $"with hub kit {kit}, of which {here} lie there", kit);
        var elsewhere = stock?.Docks.Where(d => d.Quantity > 0).Select(d => $"{d.Quantity} at {d.Dock}").ToList() ?? [];
        return new FitPoint(
            FitVerdict.Keeps, $"it wants hub kit {kit}, of which none is on record there{(elsewhere.Count > 0 ? "; " + string.Join(", ", elsewhere) : "")}", kit);
    }

    private static FitPoint? Washer(EngineFitStated? fit, PropLife prop) =>
        fit?.ThrustWasher is not { } engine || prop.Fit?.ThrustWasher is not { } own ? NotStated("thrust washer", fit?.ThrustWasher is null)
        : engine == own ? null
        : Keeps($"it wants thrust washer {own}, the engine takes {engine}");

    private static FitPoint? State(PropLife prop) => prop.CameOff is not { } off ? null : Keeps($"it came off {Why(off)} on {off.On:yyyy-MM-dd} and was not mended since");

    private static string Why(PropCameOff off) => off.Why switch
    {
        Mountings.RemovalReason.HubSlip => "with a slipping hub",
        var why => Words.Prose(why),
    };

    private static FitPoint? Place(PropLife prop) => prop.Place is not { Standing: PropStanding.AtShop } place ? null
        : Keeps($"it is at {place.Shop}{(place.DueBackOn is { } due ? $", due back on {due:yyyy-MM-dd}" : "")}");

    private static FitPoint Keeps(string sentence) => new(FitVerdict.Keeps, sentence, null);

    private static FitPoint NotStated(string what, bool ofEngine) => new(FitVerdict.NotStated, $"{what} of the {(ofEngine ? "engine" : "prop")} is not stated", null);
}

/// <summary>A spare held against an engine.</summary>
/// <param name="Prop">The tag.</param>
/// <param name="Dock">Where it lies; null when nobody said, or at a shop.</param>
/// <param name="DockAssumed">The dock is the home of the boat that it came off.</param>
/// <param name="Answer">Whether it fits.</param>
/// <param name="Points">What speaks against it or is not stated; empty when it fits as it is.</param>
/// <param name="DiameterInches">Diameter now [in].</param>
/// <param name="PitchInches">Pitch now [in].</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Material">Material.</param>
public sealed record SpareFit(
    string Prop,
    string? Dock,
    bool DockAssumed,
    FitAnswer Answer,
    IReadOnlyList<FitPoint> Points,
    double? DiameterInches,
    double? PitchInches,
    int? Blades,
    PropMaterial? Material);

/// <summary>Whether a spare fits, best first.</summary>
public enum FitAnswer
{
    /// <summary>By all that is on record.</summary>
    Fits,

    /// <summary>With a part that lies at the same dock.</summary>
    FitsWithPart,

    /// <summary>Nothing speaks against it, but something is not stated.</summary>
    NotStated,

    /// <summary>One thing keeps it from fitting.</summary>
    NearMiss,
}

/// <summary>One thing about a spare and an engine.</summary>
/// <param name="Verdict">What it means.</param>
/// <param name="Sentence">The thing in words.</param>
/// <param name="Part">The part it is about, if one.</param>
public sealed record FitPoint(FitVerdict Verdict, string Sentence, string? Part);

/// <summary>What a point means.</summary>
public enum FitVerdict
{
    /// <summary>It keeps the spare from fitting.</summary>
    Keeps,

    /// <summary>It takes a part, and the part is there.</summary>
    WithPart,

    /// <summary>One side is not stated.</summary>
    NotStated,
}
