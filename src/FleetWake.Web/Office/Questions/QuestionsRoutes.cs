using FleetWake.Logbook.Boats;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Questions;

/// <summary>Records that cannot both be so, as questions.</summary>
internal static class QuestionsRoutes
{
    public static void MapQuestionsPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("questions", (HttpContext http, FleetOperators operators, QuestionReading questions, OfficeRecords records) =>
            PageAsync(http, operators, questions, records, [])).NeedsTo(Verb.Read, Matter.Questions);
        office.MapPost("questions", SettleAsync).NeedsTo(Verb.Decide, Matter.Questions);
    }

    private static async Task<IResult> SettleAsync(HttpContext http, FleetOperators operators, FleetReading reading, QuestionReading questions, OfficeRecords records)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (form["question"].ToString().Split('|') is not [var boat, var kind, var entries] || await reading.FindingAsync(tenant, boat, ct) is not { } stored)
            return Results.Redirect("/office/questions");
        var zone = stored.Finding.Registered?.DockZone ?? (await operators.FindAsync(tenant, ct))!.Zone;
        Guid[] named = [.. entries.Split(',').Select(e => Guid.TryParse(e, out var id) ? id : Guid.Empty)];
        var answer = await records.TakeAsync(http, form, zone, stamp => new SettleContradiction(stamp, boat, kind, named, form["answer"]));
        if (answer.Outcome is Outcome.Refused or Outcome.Conflict) return await PageAsync(http, operators, questions, records, answer.Refusals);
        await records.WaitAsync(http, boat, reading);
        return Results.Redirect("/office/questions?done=settled");
    }

    private static async Task<IResult> PageAsync(HttpContext http, FleetOperators operators, QuestionReading questions, OfficeRecords records, IReadOnlyList<Logbook.Entries.Refusal> refusals)
    {
        var scene = await Scene.OfAsync(http, operators);
        var (open, more) = await questions.OfAsync(http, scene.Measures);
        return PageAnswer.Of<QuestionsPage>(
            http,
            new { Scene = scene, Open = open, More = more, MaySettle = http.User.May(Verb.Decide, Matter.Questions), NewEntry = (Func<Guid>)records.NewEntry, Refusals = refusals },
            PageAnswer.StatusOf(refusals));
    }
}
