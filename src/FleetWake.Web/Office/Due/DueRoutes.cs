using System.Globalization;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Due;

/// <summary>What is due: who takes it, what was done, and a calendar of it.</summary>
internal static class DueRoutes
{
    public static void MapDuePages(this IEndpointRouteBuilder office)
    {
        office.MapGet("due", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);
        office.MapPost("due/take", TakeAsync).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapPost("due/give-back", GiveBackAsync).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapGet("due/done", AskDoneAsync).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapPost("due/done", DoneAsync).NeedsTo(Verb.Record, Matter.DockWork);
        office.MapPost("due/calendar", CalendarAsync).NeedsTo(Verb.Read, Matter.Fleet);
    }

    private static Task<IResult> ShowAsync(HttpContext http, FleetOperators operators, DueReading reading, OfficeRecords records) =>
        PageAsync(http, operators, reading, records, [], null);

    private static async Task<IResult> TakeAsync(HttpContext http, FleetOperators operators, DueReading due, FleetReading reading, OfficeRecords records)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var parts = form["take"].ToString().Split('|');
        if (parts is not [var boat, var rule, var position] || await due.ZoneAsync(http, boat) is not { } zone) return Results.Redirect("/office/due");
        var answer = await records.TakeAsync(http, form, zone, stamp => new TakeDuty(stamp, boat, rule, position.Length == 0 ? null : position));
        if (answer.Outcome is Outcome.Refused or Outcome.Conflict) return await PageAsync(http, operators, due, records, answer.Refusals, null);
        await records.WaitAsync(http, boat, reading);
        return Results.Redirect(DueFilter.Of(http.Request).Address());
    }

    /// <summary>Whoever took a duty gives it back by taking that record back: it stays in the history, and counts no more.</summary>
    private static async Task<IResult> GiveBackAsync(HttpContext http, FleetOperators operators, DueReading due, FleetReading reading, OfficeRecords records)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var parts = form["take"].ToString().Split('|');
        if (parts is not [var boat, var rule, var position] || await due.ZoneAsync(http, boat) is not { } zone) return Results.Redirect("/office/due");
        var me = http.User.PersonOf();
        var settled = await reading.SettledLogAsync(http.User.OperatorOf(), StreamName.Boat(boat), http.RequestAborted);
        var taken = settled?.Counting.Facts.OfType<DutyTaken>().LastOrDefault(t => t.Rule == rule && t.Entry.By == me && (t.Position is null || DueLine.Word(t.Position) == position));
        if (taken is not null)
        {
            var answer = await records.TakeAsync(http, form, zone, stamp => new Retract(stamp, taken.Entry.Id, "did_not_happen", boat));
            if (answer.Outcome is Outcome.Refused or Outcome.Conflict) return await PageAsync(http, operators, due, records, answer.Refusals, null);
            await records.WaitAsync(http, boat, reading);
        }

        return Results.Redirect(DueFilter.Of(http.Request).Address());
    }

    private static async Task<IResult> AskDoneAsync(HttpContext http, FleetOperators operators, DueReading due, OfficeRecords records)
    {
        string Read(string name) => http.Request.Query[name].ToString();
        return await DonePageAsync(http, operators, due, records, Read("boat"), Read("rule"), Read("position"), new DoneForm("", "", "1"), []);
    }

    private static async Task<IResult> DoneAsync(HttpContext http, FleetOperators operators, DueReading due, FleetReading reading, OfficeRecords records)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (boat, rule, position) = (form["boat"].ToString(), form["rule"].ToString(), form["position"].ToString());
        var typed = new DoneForm(form["hours"].ToString().Trim(), form["part"].ToString(), form["quantity"].ToString().Trim()) { Sure = form["sure"] == "yes" };
        if (await due.ZoneAsync(http, boat) is not { } zone) return Results.Redirect("/office/due");
        var (hours, quantity, wrong) = typed.Read();
        if (wrong.Count == 0 && hours is { } read && !typed.Sure && await due.FindAsync(http, boat, rule, position) is { Line: var line } && DoneForm.Doubt(read, line, due.Today(zone)) is { } doubt) wrong = [doubt];
        if (wrong.Count == 0)
        {
            IReadOnlyList<PartSent>? parts = typed.Part.Length > 0 ? [new PartSent(typed.Part, quantity)] : null;
            var answer = await records.TakeAsync(http, form, zone, stamp => new DoDuty(stamp, boat, rule, position.Length == 0 ? null : position, hours, parts));
            if (answer.Outcome is not (Outcome.Refused or Outcome.Conflict))
            {
                await records.WaitAsync(http, boat, reading);
                return Results.Redirect("/office/due");
            }

            wrong = answer.Refusals;
        }

        return await DonePageAsync(http, operators, due, records, boat, rule, position, typed, wrong);
    }

    private static async Task<IResult> CalendarAsync(HttpContext http, FleetOperators operators, DueReading due, OfficeRecords records, SiteAddress site)
    {
        // Whoever asks anew has lost the old address, or somebody else has it: it ends.
        var (tenant, person, ct) = (http.User.OperatorOf(), http.User.PersonOf()!, http.RequestAborted);
        var name = ApiKey.CalendarOf(person);
        foreach (var old in (await operators.KeysAsync(tenant, ct)).Where(k => k.Name == name && k.RevokedAt is null)) await operators.RevokeKeyAsync(old.Id, ct);
        var key = await operators.MakeKeyAsync(tenant, name, [KeyScope.Calendar], ct);
        return await PageAsync(http, operators, due, records, [], site.Of(http.Request) + DueCalendar.PathOf(key));
    }

    private static async Task<IResult> PageAsync(HttpContext http, FleetOperators operators, DueReading due, OfficeRecords records, IReadOnlyList<Refusal> refusals, string? calendar) =>
        PageAnswer.Of<DuePage>(
            http,
            new
            {
                Scene = (await Scene.OfAsync(http, operators)) with { Path = "/office/due" },
                List = await due.OfAsync(http),
                MayRecord = http.User.May(Verb.Record, Matter.DockWork),
                Entry = records.NewEntry(),
                Calendar = calendar,
                Refusals = refusals,
            },
            PageAnswer.StatusOf(refusals));

    private static async Task<IResult> DonePageAsync(
        HttpContext http, FleetOperators operators, DueReading due, OfficeRecords records, string boat, string rule, string position, DoneForm form, IReadOnlyList<Refusal> refusals)
    {
        var scene = (await Scene.OfAsync(http, operators)) with { Path = "/office/due" };
        if (await due.FindAsync(http, boat, rule, position) is not { } found)
            return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["due.not-due"] }, StatusCodes.Status404NotFound);
        return PageAnswer.Of<DonePage>(
            http,
            new { Scene = scene, Line = found.Line, Form = form, Parts = await due.PartsAsync(http), Entry = records.NewEntry(), Refusals = refusals },
            PageAnswer.StatusOf(refusals));
    }
}

/// <summary>What was typed of a duty done.</summary>
/// <param name="Hours">Hour-meter reading.</param>
/// <param name="Part">A part used.</param>
/// <param name="Quantity">How many of it.</param>
public sealed record DoneForm(string Hours, string Part, string Quantity)
{
    /// <summary>Whoever typed it says that the hours are right though they look wrong.</summary>
    public bool Sure { get; init; }

    /// <summary>A reading that goes back, or on faster than the clock, is asked about once; null when it does neither.</summary>
    internal static Refusal? Doubt(double hours, DueLine line, DateOnly today)
    {
        if (line.LastReading is not { } last) return null;
        var most = last.Hours + (24.0 * (last.On is { } on ? Math.Max(1, today.DayNumber - on.DayNumber + 1) : 365));
        return hours >= last.Hours - 0.05 && hours <= most
            ? null
            : new Refusal("/hours", "unsure", PageTexts.English.With("due.hours-unsure", ("last", last.Hours.ToString("0.#", CultureInfo.InvariantCulture)), ("hours", hours.ToString("0.#", CultureInfo.InvariantCulture))));
    }

    internal (double? Hours, int? Quantity, IReadOnlyList<Refusal> Wrong) Read()
    {
        var wrong = new List<Refusal>();
        double? hours = null;
        int? quantity = null;
        if (Hours.Length > 0)
        {
            if (double.TryParse(Hours.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var h)) hours = h;
            else wrong.Add(new Refusal("/hours", "not_a_number", PageTexts.English["due.hours-wrong"]));
        }

        if (Part.Length > 0)
        {
            if (int.TryParse(Quantity, NumberStyles.None, CultureInfo.InvariantCulture, out var n)) quantity = n;
            else wrong.Add(new Refusal("/parts/0/quantity", "not_a_number", PageTexts.English["due.quantity-wrong"]));
        }

        return (hours, quantity, wrong);
    }
}
