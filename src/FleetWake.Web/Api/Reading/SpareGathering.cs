using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;

namespace FleetWake.Web.Api.Reading;

/// <summary>An operator's spare props and small parts, to be held against engines.</summary>
/// <param name="Props">Lives of the props that are neither mounted nor gone for good.</param>
/// <param name="Parts">Stock of small parts.</param>
internal sealed record SpareGathering(IReadOnlyList<PropLife> Props, IReadOnlyList<PartStock> Parts)
{
    /// <summary>Gathers them.</summary>
    /// <param name="reading">The fleet.</param>
    /// <param name="tenant">The operator.</param>
    /// <param name="findings">Every boat's finding.</param>
    /// <param name="ct">Ends the reading.</param>
    public static async Task<SpareGathering> OfAsync(FleetReading reading, string tenant, IEnumerable<BoatFinding> findings, CancellationToken ct)
    {
        // What is mounted now is no spare, nor what is gone for good, and most props are one or the other: their lives need not be told.
        var mounted = findings.SelectMany(f => f.Positions).Select(p => p.Mounting?.Prop.Prop).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var tags = (await reading.StreamsAsync(tenant, StreamName.Prop(""), ct)).Select(s => StreamName.PropOf(s)!).Where(t => !mounted.Contains(t));
        var logs = await reading.LogsAsync(tenant, tags.Select(StreamName.Prop), ct);
        var spares = await reading.PropLivesAsync(tenant, [.. logs.Values.Where(l => !IsGone(l)).Select(l => StreamName.PropOf(l.Id)!)], ct);
        var parts = await reading.PartsAsync(tenant, [.. (await reading.StreamsAsync(tenant, StreamName.Part(""), ct)).Select(s => StreamName.PartOf(s)!)], ct);
        return new SpareGathering(spares, parts);
    }

    /// <summary>Which of them fit a position.</summary>
    /// <param name="position">The position.</param>
    /// <param name="engineFacts">The facts of its engine's log that count.</param>
    public FitsNow For(PositionFinding position, IEnumerable<IFact> engineFacts) =>
        FitsNow.Of(position.Engine is null ? null : engineFacts.OfType<EngineFitStated>().LastOrDefault(), position.Engine, Props, Parts);

    /// <summary>The last word of its log is that it is used no more, or back with its lender; what it cost may be told later.</summary>
    private static bool IsGone(FactLog prop) => Effective.Of(prop.Facts).Facts.LastOrDefault(f => f is not PropCostTold) is PropRetired or LoanerReturned;
}
