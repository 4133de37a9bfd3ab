using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>The record of a boat, an engine or a prop, in the order of things.</summary>
internal static class HistoryApi
{
    private static readonly QueryField<string> Kind =
        Query.OneOf("kind", "Only facts of this name.", [.. LogbookJson.StoredNames.Values.Order(StringComparer.Ordinal)]);

    private static readonly QueryField<DateOnly?> From = Query.Date("from", "Only what happened on this day of the dock's calendar or later.");
    private static readonly QueryField<DateOnly?> To = Query.Date("to", "Only what happened on this day of the dock's calendar or earlier.");
    private static readonly Paged<HistoryItem> Items = new("history", i => Place(i.Record.Entry));

    public static void MapBoatHistory(this IEndpointRouteBuilder read) =>
        read.MapGet("boats/{boat}/history", (string boat, HttpContext http, FleetReading reading) => HistoryAsync("boat", StreamName.Boat(boat), boat, http, reading))
            .Record("boat", "/api/boats/linnet/history", "/api/boats/linnet/history?kind=strike_reported&from=2026-05-01&to=2026-12-31");

    public static void MapEngineHistory(this IEndpointRouteBuilder read) =>
        read.MapGet("engines/{engine}/history", (string engine, HttpContext http, FleetReading reading) => HistoryAsync("engine", StreamName.Engine(engine), engine, http, reading))
            .Record("engine", "/api/engines/engine-7/history");

    public static void MapPropHistory(this IEndpointRouteBuilder read) =>
        read.MapGet("props/{prop}/history", (string prop, HttpContext http, FleetReading reading) => HistoryAsync("prop", StreamName.Prop(prop), prop, http, reading))
            .Record("prop", "/api/props/lin-13/history");

    private static void Record(this RouteHandlerBuilder route, string what, params string[] requests) =>
        route.Lists(Items, Kind, From, To).ProducesProblem(404)
            .Is($"{what}_history", $"The record of one {what} in the order of things, corrections and what they corrected included.", requests);

    private static async Task<IResult> HistoryAsync(string what, string stream, string id, HttpContext http, FleetReading reading)
    {
        if (await reading.SettledLogAsync(http.User.OperatorOf(), stream, http.RequestAborted) is not { } settled)
            return ReadingRoutes.OrUnknown<HistoryItem>(null, what, id);
        var (kind, from, to) = (Kind.In(http), From.In(http), To.In(http));
        var counting = settled.Counting.Facts.Select(f => f.Entry.Id).ToHashSet();
        return Items.Answer(http, settled.Log.Facts
            .Where(f => kind is null || LogbookJson.StoredNames[f.GetType()] == kind)
            .Where(f => !(f.Entry.Date() < from) && !(f.Entry.Date() > to))
            .Select(f => new HistoryItem(f is Retracted || counting.Contains(f.Entry.Id), f)));
    }

    /// <summary>The place of an entry in <see cref="EntryOrder"/>, in parts whose ordinal order is that order.</summary>
    private static string[] Place(Entry e) =>
    [
        e.Happened().UtcTicks.ToString("D20", CultureInfo.InvariantCulture), e.Device,
        // A counter may be negative: shifted, so that the sign does not turn the order round.
        unchecked((ulong)e.Count ^ (1UL << 63)).ToString("D20", CultureInfo.InvariantCulture), e.Id.ToString(),
    ];
}

/// <summary>One fact of a record.</summary>
/// <param name="Counts">Whether it counts: false once it was amended or taken back.</param>
/// <param name="Record">The fact as it was told, named by <c>fact</c>.</param>
public sealed record HistoryItem(bool Counts, IFact Record);
