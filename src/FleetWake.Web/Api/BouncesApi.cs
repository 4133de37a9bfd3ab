using FleetWake.Logbook.Entries;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api;

/// <summary>Where a mail server hands in reports of undeliverable mail.</summary>
internal static class BouncesApi
{
    public static void MapBounces(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/api/mail/bounces", TakeAsync).RequireAuthorization(Words.Of(Store.Operators.KeyScope.Bounce)).WithTags("Fleet")
            .WithName("mail_bounces")
            .WithSummary("Takes a report of undeliverable mail (RFC 3464): the message stands as come back, and an address that takes no mail is left out from then on.")
            .WithDescription("The body is the report as it came, message/rfc822. A report of no message of yours changes nothing.")
            .Accepts<string>("message/rfc822")
            .Produces<BouncesTaken>()
            .ProducesProblem(401).ProducesProblem(403).ProducesProblem(413).Produces<RefusalProblem>(422, Problems.MediaType).ProducesProblem(503);

    private static async Task<IResult> TakeAsync(HttpContext http, MailBounces bounces)
    {
        using var body = new MemoryStream();
        await http.Request.Body.CopyToAsync(body, http.RequestAborted);
        var reports = BounceReading.Of(body.ToArray());
        if (reports.Count == 0) return Problems.Field("", "no_report", "The body is no report of undeliverable mail: send it as it came, multipart/report with its message/delivery-status.");
        var unknown = 0;
        foreach (var report in reports)
        {
            if (await bounces.TakeAsync(http.User.OperatorOf(), report, http.RequestAborted) == BounceOutcome.Unknown) unknown++;
        }

        return Results.Json(new BouncesTaken(reports.Count - unknown, unknown));
    }
}

/// <summary>What came of a report.</summary>
/// <param name="Taken">How many of its recipients are of messages of yours.</param>
/// <param name="Unknown">How many are not: nothing was changed for them.</param>
public sealed record BouncesTaken(int Taken, int Unknown);
