using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Which spare prop goes on a boat now.</summary>
internal static class FitsApi
{
    private static readonly QueryField<string> Boat = Query.Id("boat", "The boat that wants a prop.") with { Needed = true };

    public static void MapFits(this IEndpointRouteBuilder read) =>
        read.MapGet("fits", FitsAsync).Takes(Boat, Query.Position).Shows<Page<PositionFits>>()
            .Is("fits", "Spare props held against a boat's engines, by dock and then best first, with what keeps the near misses.", "/api/fits?boat=linnet", "/api/fits?boat=linnet&position=single");

    private static async Task<IResult> FitsAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (boat, position) = (Boat.In(http)!, Query.Position.In(http));
        if (await reading.FindingAsync(tenant, boat, ct) is not { } stored) return ReadingRoutes.OrUnknown<BoatPage>(null, "boat", boat);

        // What is mounted now is no spare, nor what is gone for good, and most props are one or the other: their lives need not be told.
        var mounted = (await reading.FindingsAsync(tenant, ct)).SelectMany(f => f.Finding.Positions).Select(p => p.Mounting?.Prop.Prop).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var tags = (await reading.StreamsAsync(tenant, StreamName.Prop(""), ct)).Select(s => StreamName.PropOf(s)!).Where(t => !mounted.Contains(t));
        var logs = await reading.LogsAsync(tenant, tags.Select(StreamName.Prop), ct);
        var spares = await reading.PropLivesAsync(tenant, [.. logs.Values.Where(l => !IsGone(l)).Select(l => StreamName.PropOf(l.Id)!)], ct);
        var parts = await reading.PartsAsync(tenant, [.. (await reading.StreamsAsync(tenant, StreamName.Part(""), ct)).Select(s => StreamName.PartOf(s)!)], ct);
        var positions = stored.Finding.Positions.Where(p => position is null || p.Position == position).ToList();
        var engines = await reading.LogsAsync(tenant, positions.Select(p => p.Engine?.Engine).OfType<string>().Select(StreamName.Engine), ct);

        return TaggedJson.Of(new Page<PositionFits>([.. positions.Select(p => new PositionFits(p.Position, FitsNow.Of(Stated(p, engines), p.Engine, spares, parts)))], null));
    }

    /// <summary>The last word of its log is that it is used no more, or back with its lender; what it cost may be told later.</summary>
    private static bool IsGone(FactLog prop) => Effective.Of(prop.Facts).Facts.LastOrDefault(f => f is not PropCostTold) is PropRetired or LoanerReturned;

    private static EngineFitStated? Stated(PositionFinding position, IReadOnlyDictionary<string, FactLog> engines) =>
        position.Engine is not { } engine ? null : Effective.Of(engines[StreamName.Engine(engine.Engine)].Facts).Facts.OfType<EngineFitStated>().LastOrDefault();
}

/// <summary>Spares held against the engine at a position.</summary>
/// <param name="Position">The position.</param>
/// <param name="Fits">Which of them fit.</param>
public sealed record PositionFits(Logbook.Position Position, FitsNow Fits);
