using FleetWake.Store.Operators;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office;

/// <summary>Leaving a digest without signing in (RFC 8058). Only a POST acts: scanners follow links.</summary>
public static class UnsubscribePage
{
    /// <summary>Maps the page.</summary>
    public static void MapUnsubscribe(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/unsubscribe/{token}", () => Page(
            "<p>You are about to stop receiving this digest.</p><form method=\"post\"><button>Stop sending it to me</button></form>"))
            .ExcludeFromDescription();
        routes.MapPost("/unsubscribe/{token}", async (string token, FleetOperators operators, CancellationToken ct) =>
            await operators.UnsubscribeAsync(token, ct)
                ? Page("<p>Done: no further digest is sent to this address.</p>")
                : Page("<p>This link is not known here. Ask whoever runs your fleet's record to take the address off.</p>", StatusCodes.Status404NotFound))
            .ExcludeFromDescription()
            .DisableAntiforgery();
    }

    private static IResult Page(string body, int status = StatusCodes.Status200OK) => Results.Content(
        $"<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>FleetWake</title><body style=\"font:16px/1.5 system-ui,sans-serif;max-width:34rem;margin:3rem auto;padding:0 1rem\"><h1>FleetWake</h1>{body}",
        "text/html; charset=utf-8",
        statusCode: status);
}
