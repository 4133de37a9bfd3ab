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

        var spares = await SpareGathering.OfAsync(reading, tenant, (await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding), ct);
        var positions = stored.Finding.Positions.Where(p => position is null || p.Position == position).ToList();
        var engines = await reading.LogsAsync(tenant, positions.Select(p => p.Engine?.Engine).OfType<string>().Select(StreamName.Engine), ct);

        return TaggedJson.Of(new Page<PositionFits>([.. positions.Select(p => new PositionFits(p.Position, spares.For(p, Facts(p, engines))))], null));
    }

    private static IReadOnlyList<IFact> Facts(PositionFinding position, IReadOnlyDictionary<string, FactLog> engines) =>
        position.Engine is { } engine ? Effective.Of(engines[StreamName.Engine(engine.Engine)].Facts).Facts : [];
}

/// <summary>Spares held against the engine at a position.</summary>
/// <param name="Position">The position.</param>
/// <param name="Fits">Which of them fit.</param>
public sealed record PositionFits(Logbook.Position Position, FitsNow Fits);
