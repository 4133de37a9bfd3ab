using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Mail;

/// <summary>
/// What a link in a mail leads to, without signing in: leaving a digest (RFC 8058) and saying yes to one. Only a POST acts, for
/// scanners follow links; a mail program that leaves by one click sends that POST itself, without cookie or token (RFC 8058, 3.1 and 3.2).
/// </summary>
public static class LinkRoutes
{
    private static PageTexts T => PageTexts.English;

    /// <summary>Maps the pages.</summary>
    public static void MapMailLinks(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/unsubscribe/{token}", AskAsync).ExcludeFromDescription();
        routes.MapPost("/unsubscribe/{token}", async (string token, HttpContext http, FleetOperators operators, FleetReading reading) =>
        {
            var left = await operators.UnsubscribeAsync(token, http.RequestAborted, byItself: true);
            return await LeaveAsync(token, http, operators, reading, left ? "leave.done" : null);
        })
            .ExcludeFromDescription()
            .DisableAntiforgery();
        routes.MapPost("/unsubscribe/{token}/back", async (string token, HttpContext http, FleetOperators operators, FleetReading reading) =>
        {
            var back = await operators.ComeBackAsync(token, http.RequestAborted);
            return await LeaveAsync(token, http, operators, reading, back ? "leave.back-done" : "leave.too-late");
        })
            .ExcludeFromDescription()
            .DisableAntiforgery();
        routes.MapGet("/confirm/{secret}", async (string secret, HttpContext http, FleetOperators operators, FleetReading reading) =>
            await operators.AskedAsync(secret, http.RequestAborted) is var (card, recipient)
                ? Page(http, "confirm.title", About(card, recipient, await reading.OfficeAsync(card.Id, http.RequestAborted)), recipient.Subscribed ? null : "confirm.do")
                : Unknown(http))
            .ExcludeFromDescription();
        routes.MapPost("/confirm/{secret}", async (string secret, HttpContext http, FleetOperators operators) =>
            await operators.ConfirmAsync(secret, http.RequestAborted) ? Page(http, "confirm.title", PageTexts.English["confirm.done"]) : Unknown(http))
            .ExcludeFromDescription()
            .DisableAntiforgery();
    }

    private static Task<IResult> AskAsync(string token, HttpContext http, FleetOperators operators, FleetReading reading) => LeaveAsync(token, http, operators, reading, null);

    /// <summary>Names what the link ends and what stays, and shows the way that is open: out, or back.</summary>
    private static async Task<IResult> LeaveAsync(string token, HttpContext http, FleetOperators operators, FleetReading reading, string? done)
    {
        if (await operators.LinkedAsync(token, http.RequestAborted) is not var (card, recipient, _, others, mayComeBack)) return Page(http, "leave.title", T["leave.unknown"], status: StatusCodes.Status404NotFound);
        if (recipient is null) return Page(http, "leave.title", T.With("leave.forgotten", ("fleet", card.Name)));
        if (done == "leave.back-done" && !recipient.TakesMail()) done = "leave.back-no-mail";
        var office = await reading.OfficeAsync(card.Id, http.RequestAborted);
        List<string> lines =
        [
            T.With(done ?? (recipient.Subscribed ? "leave.about" : recipient.ConfirmHash is not null ? "leave.asked" : "leave.left"), ("what", What(recipient, office)), ("fleet", card.Name)),
            others.Count == 0 ? T.With("leave.nothing-else", ("fleet", card.Name)) : T.With("leave.stays", ("others", string.Join(", ", others.Select(o => What(o, office)))), ("fleet", card.Name)),
        ];
        if (recipient.Subscribed) return Page(http, "leave.title", lines, done is null ? "leave.do" : null);

        // Asked, and has not answered: to refuse is to say so once, and nobody has to wait until the question is too old.
        if (recipient.ConfirmHash is not null) return Page(http, "leave.title", lines, done is null ? "leave.refuse" : null);
        if (mayComeBack) lines.Add(T.With("leave.back", ("days", (int)FleetOperators.ComeBackWithin.TotalDays)));
        return Page(http, "leave.title", lines, mayComeBack ? "leave.back-do" : null, $"/unsubscribe/{Uri.EscapeDataString(token)}/back");
    }

    private static string About(OperatorCard card, Recipient recipient, OfficeState office) =>
        T.With(recipient.Subscribed ? "confirm.already" : "confirm.about", ("what", What(recipient, office)), ("fleet", card.Name));

    private static string What(Recipient recipient, OfficeState office) =>
        T["mail.digest-" + recipient.Digest] + (recipient.Dock is { } dock ? T.With("confirm.of", ("dock", office.DockName(dock))) : "");

    private static IResult Unknown(HttpContext http) => Page(http, "confirm.title", PageTexts.English["confirm.unknown"], status: StatusCodes.Status404NotFound);

    private static IResult Page(HttpContext http, string title, string text, string? button = null, int status = StatusCodes.Status200OK) => Page(http, title, [text], button, status: status);

    private static IResult Page(HttpContext http, string title, IReadOnlyList<string> lines, string? button, string? action = null, int status = StatusCodes.Status200OK) =>
        PageAnswer.Of<LinkPage>(http, new { Title = T[title], Lines = lines, Button = button, Action = action }, status);
}
