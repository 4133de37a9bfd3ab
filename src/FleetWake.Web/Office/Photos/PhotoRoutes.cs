using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Logbook.People;
using FleetWake.Store.Devices;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Photos;
using FleetWake.Web.Api;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Photos;

/// <summary>Photos of entries, for people who may read the fleet; and what lies beside entries, for whoever may erase it.</summary>
internal static partial class PhotoRoutes
{
    public static void MapPhotos(this IEndpointRouteBuilder office)
    {
        office.MapGet("photos/{hash}", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);
        office.MapGet("photos", ListAsync).NeedsTo(Verb.Read, Matter.Devices);

        // Evidence goes with it: whoever answers for people's data decides.
        office.MapPost("photos/erase", EraseAsync).NeedsTo(Verb.Decide, Matter.People);
    }

    private static async Task<IResult> ListAsync(HttpContext http, FleetOperators operators, BesideBook beside, FleetDevices devices)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        var page = int.TryParse(http.Request.Query["page"], NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? Math.Clamp(asked, 1, 10_000) : 1;
        return PageAnswer.Of<PhotosPage>(http, new
        {
            Scene = scene,
            Beside = await beside.OfAsync(scene.Operator.Id, page, ct),
            Room = await beside.RoomAsync(scene.Operator.Id, ct),
            Page = page,
            Phones = (IReadOnlyDictionary<string, string>)(await devices.OfAsync(scene.Operator.Id, ct)).ToDictionary(d => d.Id, d => d.Name, StringComparer.Ordinal),
            MayErase = http.User.May(Verb.Decide, Matter.People),
            Line = Handed.Line.Take(http),
        });
    }

    private static async Task<IResult> EraseAsync(HttpContext http, IFormCollection form, BesideBook beside, FleetPeople people, SignInNotes notes)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (!Guid.TryParse(form["entry"], out var entry) || !int.TryParse(form["n"], NumberStyles.None, CultureInfo.InvariantCulture, out var n)) return Results.LocalRedirect("/office/photos");
        var erased = n == 0 ? await beside.EraseNoteAsync(tenant, entry, ct) : await beside.ErasePhotoAsync(tenant, entry, n, ct);
        if (erased && await people.FindAsync(tenant, http.User.PersonOf()!, ct) is { } me)
            await notes.AddAsync(me, SignInEvent.Erased, http.Whence(), ct, n == 0 ? $"note of {entry}" : $"photo {n} of {entry}");
        Handed.Line.Give(http, PageTexts.English[erased ? "photos.erased" : "photos.gone"]);
        return Results.LocalRedirect("/office/photos");
    }

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
