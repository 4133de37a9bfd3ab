using System.Text.RegularExpressions;
using FleetWake.Logbook.People;
using FleetWake.Store.Photos;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Photos;

/// <summary>Photos of entries, for people who may read the fleet.</summary>
internal static partial class PhotoRoutes
{
    public static void MapPhotos(this IEndpointRouteBuilder office) => office.MapGet("photos/{hash}", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);

    private static async Task<IResult> ShowAsync(string hash, HttpContext http, EntryPhotos photos)
    {
        if (!Sha256().IsMatch(hash) || await photos.FindAsync(http.User.OperatorOf(), hash, http.RequestAborted) is not { } jpeg) return Problems.NotFound("There is no such photo.");

        // It is named by its content and cannot change; but only this browser may keep it, and not for long: it can be erased.
        http.Response.Headers.CacheControl = "private, max-age=3600";
        return Results.Bytes(jpeg, "image/jpeg");
    }

    [GeneratedRegex(@"\A[0-9a-f]{64}\z")]
    private static partial Regex Sha256();
}
