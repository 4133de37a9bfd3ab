using FleetWake.Web.Api;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>What a phone reads.</summary>
internal static class TodayApi
{
    /// <summary>Header: when an answer was so, by the server's clock.</summary>
    internal const string MadeAt = "FleetWake-Made-At";

    public static void MapToday(this IEndpointRouteBuilder dock)
    {
        dock.MapGet("today", TodayAsync);
        dock.MapGet("boats/{boat}", BoatAsync);
    }

    private static async Task<IResult> TodayAsync(HttpContext http, TodayReading reading)
    {
        var today = await reading.OfAsync(http.User.OperatorOf(), http.User.DockOf(), http.RequestAborted);
        http.Response.Headers[MadeAt] = today.MadeAt.ToString("o");
        return TaggedJson.Of(today, today with { MadeAt = default, Now = default });
    }

    private static async Task<IResult> BoatAsync(string boat, HttpContext http, TodayReading reading) =>
        await reading.OfBoatAsync(http.User.OperatorOf(), http.User.DockOf(), boat, http.RequestAborted) is { } found
            ? Made(found.Card, found.MadeAt, http)
            : Problems.NotFound($"Nothing is on record of boat \"{boat}\", or it is not assessed yet. What you enter of it is kept all the same.");

    private static TaggedJson Made(Card card, DateTimeOffset at, HttpContext http)
    {
        http.Response.Headers[MadeAt] = at.ToString("o");
        return TaggedJson.Of(card);
    }
}
