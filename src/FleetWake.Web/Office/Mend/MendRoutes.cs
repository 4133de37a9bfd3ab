using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Mend;

/// <summary>Putting a record right: corrected by one that takes its place, or taken back. The first stays in the history.</summary>
internal static class MendRoutes
{
    public static void MapMendPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("mend/{kind}/{id}/{entry:guid}", (string kind, string id, Guid entry, HttpContext http, Shown shown) =>
            shown.PageAsync(http, MendSubject.Read(kind, id), entry, http.Request.Query["to"], FormState.None)).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapPost("mend/{kind}/{id}/{entry:guid}/take-back", TakeBackAsync).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapPost("mend/{kind}/{id}/{entry:guid}/correct", CorrectAsync).NeedsTo(Verb.Record, Matter.DockWork);
    }

    private static async Task<IResult> TakeBackAsync(string kind, string id, Guid entry, IFormCollection form, HttpContext http, Shown shown, MendReading mend, OfficeRecords records)
    {
        var about = MendSubject.Read(kind, id);
        if (await mend.FindAsync(http, about, entry) is not { Counts: true } found || !MendReading.May(http, found.Fact)) return await shown.PageAsync(http, about, entry, form["to"], FormState.None);
        var answer = await records.TakeAsync(http, form, await mend.ZoneAsync(http, found), stamp => new Retract(
            stamp, entry, form["why"], found.About.Kind == "boat" ? id : null, found.About.Kind == "engine" ? id : null, found.About.Kind == "prop" ? id : null));
        return answer.Outcome is Outcome.Refused or Outcome.Conflict
            ? await shown.PageAsync(http, about, entry, form["to"], FormState.Of("take-back", form, answer.Refusals))
            : await shown.BackAsync(http, found.About, form["to"], "taken-back");
    }

    private static async Task<IResult> CorrectAsync(
        string kind, string id, Guid entry, IFormCollection form, HttpContext http, Shown shown, MendReading mend, OfficeRecords records, TimeProvider time)
    {
        var about = MendSubject.Read(kind, id);
        if (await mend.FindAsync(http, about, entry) is not { Counts: true } found || !MendReading.May(http, found.Fact)) return await shown.PageAsync(http, about, entry, form["to"], FormState.None);
        var typed = new FormReading(form);
        var numbers = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var number in Amendment.NumbersOf(found.Fact).Where(n => form.ContainsKey(n.Field)))
            if (typed.Number(number.Field) is { } value) numbers[number.Field] = value;

        var zone = await mend.ZoneAsync(http, found);
        var now = Stamp.At(records.NewEntry(), http.User.PersonOf(), time.GetUtcNow(), zone);
        var stamp = now with
        {
            Id = Guid.TryParse(form[OfficeRecords.EntryField], out var told) && told != Guid.Empty ? told : now.Id,
            HappenedAt = WhenOf(found.Fact, typed),
            EnteredAt = now.HappenedAt,
            Amends = entry,
        };
        var (command, refusals) = Amendment.Of(found.Fact, await mend.PartsAsync(http, found.Fact), stamp, numbers, form.ContainsKey("prop") ? typed.Text("prop") : null);
        refusals = [.. typed.Refusals, .. refusals];
        if (command is not null && refusals.Count == 0)
        {
            var answer = await records.TakeAsync(http, Amendment.KindOf(found.Fact)!, command);
            if (answer.Outcome is not (Outcome.Refused or Outcome.Conflict)) return await shown.BackAsync(http, found.About, form["to"], "corrected");
            refusals = answer.Outcome == Outcome.Conflict ? [new Refusal("", "sent_before", PageTexts.English["forms.sent-before"])] : answer.Refusals;
        }

        // Fields of a trial's runs are named here by their place, as the form has them.
        return await shown.PageAsync(http, about, entry, form["to"], FormState.Of("correct", form, [.. refusals.Select(r => r with { Field = "/" + r.Field.TrimStart('/').Replace('/', '-') })]));
    }

    /// <summary>When it happened: as it was told, unless another minute was typed.</summary>
    private static string WhenOf(IFact fact, FormReading typed)
    {
        var was = fact.Entry.Happened();
        return typed.Text("entry-happenedAt") is { } text && text != WhenField(was) ? text : was.ToString("yyyy-MM-ddTHH:mm:ss.fffzzz", CultureInfo.InvariantCulture);
    }

    /// <summary>A moment as a browser's field for date and time has it.</summary>
    public static string WhenField(DateTimeOffset moment) => moment.ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);

    /// <summary>Shows the page of a record, and leads back.</summary>
    internal sealed class Shown(FleetOperators operators, FleetPeople people, FleetReading reading, MendReading mend, OfficeRecords records)
    {
        public async Task<IResult> PageAsync(HttpContext http, MendSubject? about, Guid entry, string? to, FormState state)
        {
            var scene = await Scene.OfAsync(http, operators);
            if (await mend.FindAsync(http, about, entry) is not { } found)
                return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["mend.unknown"] }, StatusCodes.Status404NotFound);
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var names = await people.NamesAsync(tenant, ct);
            http.Features.Set(state);
            return PageAnswer.Of<MendPage>(
                http,
                new
                {
                    Scene = scene,
                    Record = found,
                    Name = found.About.Kind == "boat" ? (await BoatNames.OfAsync(reading, tenant, [found.About.Id], ct))[found.About.Id] : Phrases.Plain(found.About.Id),
                    By = names.GetValueOrDefault(found.Fact.Entry.By, found.Fact.Entry.By),
                    MayMend = found.Counts && MendReading.May(http, found.Fact),
                    To = Back(to, found.About),
                    State = state,
                    NewEntry = (Func<Guid>)records.NewEntry,
                },
                state.Status);
        }

        public async Task<IResult> BackAsync(HttpContext http, MendSubject about, string? to, string done)
        {
            await records.WaitAsync(() => reading.UpToDateAsync(http.RequestAborted, http.User.OperatorOf()), http.RequestAborted);
            var there = Back(to, about);
            return Results.Redirect($"{there}{(there.Contains('?', StringComparison.Ordinal) ? '&' : '?')}done={done}");
        }

        // The field is anybody's: it leads to a page of the office and nowhere else.
        private static string Back(string? to, MendSubject about) =>
            to is { Length: < 300 } && to.StartsWith("/office/", StringComparison.Ordinal) && !to.Any(c => char.IsControl(c) || c is '\\' or '#') ? to : about.Page;
    }
}
