using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Boat;

/// <summary>One boat: whether it goes out and what releases it, how it wears, what was recorded of it.</summary>
internal static class BoatRoutes
{
    public static void MapBoatPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("boats/{boat}", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);
        office.MapPost("boats/{boat}/out-of-hire", TakeOutAsync).NeedsTo(Verb.Record, Matter.Hire);
        office.MapPost("boats/{boat}/back-in-hire", PutBackAsync).NeedsTo(Verb.Decide, Matter.Hire);
    }

    private static Task<IResult> ShowAsync(string boat, HttpContext http, BoatReading reading) => PageAsync(boat, http, reading, FormState.Asked(http.Request));

    private static Task<IResult> TakeOutAsync(string boat, HttpContext http, IFormCollection form, BoatReading reading, OfficeRecords records) =>
        RecordAsync(boat, http, reading, zone => records.TakeAsync(http, form, zone, stamp => new TakeOutOfHire(stamp, boat, form["why"])), form);

    /// <summary>Lifts what keeps a boat, if that is still what its reader saw: a strike that came in meanwhile is nobody's yet to lift.</summary>
    private static async Task<IResult> PutBackAsync(string boat, HttpContext http, IFormCollection form, BoatReading reading, OfficeRecords records)
    {
        await reading.WaitAsync(http, boat);
        var view = await reading.OfAsync(http, await reading.SceneAsync(http), boat);
        if (view is not null && (!view.UpToDate || (view.Hire.Reasons.Count > 0 && view.HireMark != form["seen"].ToString())))
            return await PageAsync(boat, http, reading, [new Refusal("", "changed_meanwhile", PageTexts.English["boat.put-back-changed"])], form["why"]);
        return await RecordAsync(boat, http, reading, zone => records.TakeAsync(http, form, zone, stamp => new ReturnToHire(stamp, boat, form["why"])), form);
    }

    private static async Task<IResult> RecordAsync(string boat, HttpContext http, BoatReading reading, Func<string, Task<Answer>> take, IFormCollection form)
    {
        if (await reading.ZoneAsync(http, boat) is not { } zone) return await PageAsync(boat, http, reading, [], null);
        var answer = await take(zone);
        if (answer.Outcome is Outcome.Refused or Outcome.Conflict) return await PageAsync(boat, http, reading, answer.Refusals, form["why"]);
        await reading.WaitAsync(http, boat);
        if (await reading.OfAsync(http, await reading.SceneAsync(http), boat) is { } view)
        {
            Handed.Line.Give(http, view.Hire.Reasons is [var still, ..]
                ? PageTexts.English.With(answer.Repeat ? "boat.recorded-before" : "boat.recorded-still", ("why", still.Sentence))
                : PageTexts.English["boat.recorded-in-hire"]);
        }

        return Results.Redirect($"/office/boats/{boat}");
    }

    private static Task<IResult> PageAsync(string boat, HttpContext http, BoatReading reading, IReadOnlyList<Refusal> refusals, string? typed) =>
        PageAsync(boat, http, reading, FormState.None, refusals, typed);

    /// <summary>A boat's page, with a form of it that was not taken.</summary>
    public static async Task<IResult> PageAsync(string boat, HttpContext http, BoatReading reading, FormState state, IReadOnlyList<Refusal>? hire = null, string? typed = null)
    {
        var refusals = hire ?? [];
        var scene = await reading.SceneAsync(http);
        if (await reading.OfAsync(http, scene, boat) is not { } view)
            return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English.With("boat.unknown", ("boat", boat)) }, StatusCodes.Status404NotFound);
        return PageAnswer.Of<BoatPage>(
            http,
            new
            {
                Scene = scene,
                View = view,
                Timeline = await reading.TimelineAsync(http, scene, view),
                MayTakeOut = http.User.May(Verb.Record, Matter.Hire),
                MayPutBack = http.User.May(Verb.Decide, Matter.Hire),
                Entry = reading.NewEntry(),
                Refusals = refusals,
                Typed = typed ?? "",
                Line = Handed.Line.Take(http),
                Zoom = Zoom.Of(http.Request),
                State = state,
                Office = await reading.OfficeAsync(http),
                Today = reading.Today(view.Zone),
            },
            refusals.Count == 0 ? state.Status : StatusCodes.Status422UnprocessableEntity);
    }
}

/// <summary>Which part of a chart somebody looks at.</summary>
/// <param name="Position">At which position; null for none.</param>
/// <param name="From">Left [h].</param>
/// <param name="To">Right [h].</param>
public sealed record Zoom(string? Position, double? From, double? To)
{
    /// <summary>What stands in the address where hours should: neither empty nor a number.</summary>
    public bool Unreadable { get; init; }

    /// <summary>What of the wish cannot be drawn, as a key of texts; null when all of it can.</summary>
    /// <param name="first">First hours of the whole chart [h].</param>
    /// <param name="last">Its last [h].</param>
    public string? Wrong(double first, double last) =>
        Unreadable ? "boat.zoom-no-number"
        : From >= To ? "boat.zoom-order"
        : From >= last || To <= first ? "boat.zoom-beyond"
        : null;

    internal static Zoom Of(HttpRequest request)
    {
        bool Odd(string name) => request.Query[name].ToString() is { Length: > 0 } && Read(name) is null;
        double? Read(string name) => double.TryParse(request.Query[name], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var h) && h < 1e6 ? h : null;
        var at = request.Query["at"].ToString();
        return new Zoom(at.Length is > 0 and < 20 ? at : null, Read("from"), Read("to")) { Unreadable = Odd("from") || Odd("to") };
    }
}
