using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Propulsion.Causes;
using FleetWake.Reports.Pictures;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Charts;

namespace FleetWake.Web.Office.Boat;

/// <summary>One engine position on the boat page: what is fitted, where it stands, where that leads, and what would tell more.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Strip">Its place in the band.</param>
/// <param name="Standing">The same in words; null without a prop.</param>
/// <param name="Picture">The drift picture; null without a trial.</param>
/// <param name="Slip">Slip over the hours; null where nothing tells it.</param>
/// <param name="Speed">Speed over the hours; null where none was read.</param>
/// <param name="Advice">Where each pitch would land; null where band, gear or RPM is not known.</param>
/// <param name="Plan">The boat's prop plan here.</param>
public sealed record PositionCard(
    PositionFinding Finding, BandStrip? Strip, Standing? Standing, DriftPicture? Picture, SmallChart? Slip, SmallChart? Speed, PitchCard? Advice, IReadOnlyList<PlannedProp> Plan)
{
    /// <summary>The mounting; null without a prop.</summary>
    public MountingFinding? Mounting => Finding.Mounting;

    internal static PositionCard Of(BoatFinding boat, PositionFinding position, Measures measures) => new(
        position,
        BandStrip.Of(position),
        position.Mounting is null ? null : Standings.Of(position),
        DriftPictures.Of(boat, position),
        position.Mounting is { } m ? TrialCharts.Slip(m, measures) : null,
        position.Mounting is { } n ? TrialCharts.Speed(n, measures) : null,
        PitchCard.Of(position),
        [.. boat.PropPlan.Where(p => p.Position == position.Position)]);

    /// <summary>What lies behind its reading, in a sentence; null where nothing tells.</summary>
    public string? Causes()
    {
        if (Mounting is not { } mounting) return null;
        var told = CauseWords.Of(mounting.PointsTo).Trim();
        if (told.Length > 0) return told;
        return mounting.Causes.Count > 0 ? $"May be: {string.Join(", ", mounting.Causes)}." : null;
    }

    /// <summary>What would tell its causes apart, the cheapest first.</summary>
    public IReadOnlyList<string> Tests() => Mounting?.PointsTo is { Tied.Count: > 1 } points ? [.. points.Tests.Select(SeparatingTests.Words)] : [];
}
