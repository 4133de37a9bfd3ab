using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Rules;

/// <summary>By what the fleet is kept: rules of inspection, the hire table, docks, prices, when digests go out.</summary>
internal static class RulesRoutes
{
    public static void MapRulesPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("rules", (HttpContext http, Shown shown) => shown.PageAsync(http, FormState.Asked(http.Request))).NeedsTo(Verb.Read, Matter.Rules);
        Takes("rule", Verb.Decide, Matter.Rules, (f, _, stamp) => new SetInspectionRule(
            stamp, f.Text("rule"), f.Text("name"), f.Text("trigger"), f.Text("doneBy"), f.Whole("months"), f.Number("hours"), f.Text("water"), f.Text("material"), f.Text("dock"), f.Text("off") == "yes"));
        Takes("hire", Verb.Decide, Matter.Rules, (_, form, stamp) => new SetHireStates(stamp, HireGrid.Rows(form)));
        Takes("dock", Verb.Decide, Matter.Register, (f, _, stamp) => new OpenDock(stamp, f.Text("dock"), f.Text("name"), f.Text("zone"), f.Text("water"), f.Text("bottom")));
        Takes("price", Verb.Decide, Matter.Money, (f, _, stamp) => new SetPrice(stamp, f.Text("what"), f.Amount("amount"), f.Currency("currency"), f.Text("item")));
        Takes("schedule", Verb.Decide, Matter.Reports, Schedule);
        Takes("alerts", Verb.Decide, Matter.Reports, (f, _, stamp) => new SetAlerts(stamp, f.Whole("gatherMinutes"), f.Text("quietFrom"), f.Text("quietUntil"), f.Whole("exitWithinHours"), f.Text("off") == "yes"));
        office.MapPost("rules/holidays", HolidaysAsync).NeedsTo(Verb.Decide, Matter.Reports);

        void Takes<T>(string name, Verb verb, Matter matter, Func<FormReading, IFormCollection, Stamp, T> read)
            where T : ICommand<T> =>
            office.MapPost("rules/" + name, async (IFormCollection form, HttpContext http, Shown shown, OfficeForms forms, FleetOperators operators) =>
                await forms.TakeAsync(
                    http, name, form, (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!.Zone, "/office/rules",
                    (f, stamp) => read(f, form, stamp), state => shown.PageAsync(http, state)))
                .NeedsTo(verb, matter);
    }

    /// <summary>Only what goes with the rhythm that was chosen: a form shows the fields of all.</summary>
    private static TimeDigest Schedule(FormReading f, IFormCollection form, Stamp stamp)
    {
        var rhythm = f.Text("rhythm");
        var (weekly, cron) = (rhythm == Words.Of(DigestRhythm.Weekly), rhythm == Words.Of(DigestRhythm.Cron));
        return new TimeDigest(
            stamp, f.Text("digest"), rhythm,
            weekly ? [.. form["weekdays"].OfType<string>()] : null,
            rhythm == Words.Of(DigestRhythm.Monthly) ? f.Whole("monthDay") : null,
            cron ? null : f.Text("localTime"),
            cron ? f.Text("cron") : null,
            f.Text("dock"), f.Text("zone"), f.Text("holidays"), weekly ? f.Text("seasonFrom") : null, weekly ? f.Text("seasonUntil") : null, f.Text("missed"), f.Text("off") == "yes");
    }

    /// <summary>Takes the list of holidays as typed, and what a calendar file adds to it.</summary>
    private static async Task<IResult> HolidaysAsync(IFormCollection form, HttpContext http, Shown shown, OfficeForms forms, FleetOperators operators)
    {
        var zone = (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!.Zone;
        var dates = HolidayFile.Typed(form["dates"].ToString());
        if (form.Files.GetFile("file") is { Length: > 0 } file)
        {
            if (file.Length > HolidayFile.MostBytes) return await AgainAsync("too_large", "rules.ics-too-large");
            using var reader = new StreamReader(file.OpenReadStream());
            if (HolidayFile.Read(await reader.ReadToEndAsync(http.RequestAborted), forms.Today(zone)) is not { } read) return await AgainAsync("not_a_calendar", "rules.ics-not-readable");
            dates = [.. dates.Concat(read.Select(HolidayFile.Written)).Distinct(StringComparer.Ordinal)];
        }

        return await forms.TakeAsync(http, "holidays", form, zone, "/office/rules", (_, stamp) => new SetHolidays(stamp, dates), state => shown.PageAsync(http, state));

        Task<IResult> AgainAsync(string reason, string words) => shown.PageAsync(http, FormState.Of("holidays", form, [new Refusal("", reason, PageTexts.English[words])]));
    }

    /// <summary>Shows the page.</summary>
    internal sealed class Shown(FleetOperators operators, FleetReading reading, OfficeForms forms, TimeProvider time)
    {
        public async Task<IResult> PageAsync(HttpContext http, FormState state)
        {
            var scene = await Scene.OfAsync(http, operators);
            IReadOnlyList<BoatFinding> boats = [.. (await reading.FindingsAsync(scene.Operator.Id, http.RequestAborted)).Select(f => f.Finding)];
            return PageAnswer.Of<RulesPage>(
                http,
                new { Scene = scene, Office = await reading.OfficeAsync(scene.Operator.Id, http.RequestAborted), Boats = boats, State = state, Entry = forms.NewEntry(), Today = forms.Today(scene.Operator.Zone), Now = time.GetUtcNow() },
                state.Status);
        }
    }
}
