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
    /// <summary>Maps the pages.</summary>
    public static void MapMailLinks(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/unsubscribe/{token}", (HttpContext http) => Page(http, "leave.title", PageTexts.English["leave.about"], "leave.do")).ExcludeFromDescription();
        routes.MapPost("/unsubscribe/{token}", async (string token, HttpContext http, FleetOperators operators) =>
            await operators.UnsubscribeAsync(token, http.RequestAborted)
                ? Page(http, "leave.title", PageTexts.English["leave.done"])
                : Page(http, "leave.title", PageTexts.English["leave.unknown"], status: StatusCodes.Status404NotFound))
            .ExcludeFromDescription()
            .DisableAntiforgery();
        routes.MapGet("/confirm/{secret}", async (string secret, HttpContext http, FleetOperators operators) =>
            await operators.AskedAsync(secret, http.RequestAborted) is var (card, recipient)
                ? Page(http, "confirm.title", About(card, recipient), recipient.Subscribed ? null : "confirm.do")
                : Unknown(http))
            .ExcludeFromDescription();
        routes.MapPost("/confirm/{secret}", async (string secret, HttpContext http, FleetOperators operators) =>
            await operators.ConfirmAsync(secret, http.RequestAborted) ? Page(http, "confirm.title", PageTexts.English["confirm.done"]) : Unknown(http))
            .ExcludeFromDescription()
            .DisableAntiforgery();
    }

    private static string About(OperatorCard card, Recipient recipient) => PageTexts.English.With(
        recipient.Subscribed ? "confirm.already" : "confirm.about",
        ("what", PageTexts.English["mail.digest-" + recipient.Digest]), ("fleet", card.Name), ("of", recipient.Dock is { } dock ? PageTexts.English.With("confirm.of", ("dock", dock)) : ""));

    private static IResult Unknown(HttpContext http) => Page(http, "confirm.title", PageTexts.English["confirm.unknown"], status: StatusCodes.Status404NotFound);

    private static IResult Page(HttpContext http, string title, string text, string? button = null, int status = StatusCodes.Status200OK) =>
        PageAnswer.Of<LinkPage>(http, new { Title = PageTexts.English[title], Text = text, Button = button }, status);
}
