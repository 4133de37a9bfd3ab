using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Api;

/// <summary>What the routing itself refuses, with what to do about it.</summary>
internal static class BareStatus
{
    private const string Everything = "/openapi/v1.json describes every route.";

    public static async Task AnswerAsync(StatusCodeContext context)
    {
        var http = context.HttpContext;
        if (WantsPage(http.Request) && http.Response.StatusCode is StatusCodes.Status404NotFound or StatusCodes.Status405MethodNotAllowed)
        {
            await (await NoPageAsync(http)).ExecuteAsync(http);
            return;
        }

        var (type, detail) = http.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => ("not-found", $"There is nothing at this address. {(HttpMethods.IsGet(http.Request.Method) ? Readable : Recordable)}"),
            StatusCodes.Status405MethodNotAllowed => ("method-not-allowed", OtherMethod(http.Request.Method, http.Response.Headers.Allow.ToString())),
            StatusCodes.Status415UnsupportedMediaType => ("json-needed", "Send the body with the header \"Content-Type: application/json\"."),
            _ => ("refused", $"The request cannot be answered as it is; {Everything}"),
        };
        await Problems.Make(http.Response.StatusCode, type, detail, []).ExecuteAsync(http);
    }

    /// <summary>Whether somebody at a browser asks for a page, rather than a program for data.</summary>
    public static bool WantsPage(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && !request.Path.StartsWithSegments("/api") && request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    /// <summary>A page in place of one that is not there, with the office's places for whoever is signed in.</summary>
    private static async Task<IResult> NoPageAsync(HttpContext http)
    {
        var t = PageTexts.English;
        if (http.Request.Path.StartsWithSegments("/office") && (await http.AuthenticateAsync(SessionHandler.SchemeName)).Principal is { } somebody)
        {
            http.User = somebody;
            return PageAnswer.Of<NotHerePage>(http, new { Scene = await Scene.OfAsync(http, http.RequestServices.GetRequiredService<FleetOperators>()), Sentence = t["common.no-page"] }, StatusCodes.Status404NotFound);
        }

        return PageAnswer.Of<NoticePage>(http, new { Title = t["common.not-here"], Text = t["common.no-page"] }, StatusCodes.Status404NotFound);
    }

    private static string Readable => $"What can be read begins with /api/, such as /api/boats and /api/due; {Everything}";

    private static string Recordable => $"Records go to /api/records/KIND, where KIND is one of {string.Join(", ", RecordKind.All.Select(k => k.Name))}; {Everything}";

    private static string OtherMethod(string method, string allowed)
    {
        var takes = $"This address takes {allowed}, not {method}";
        return HttpMethods.IsGet(method) ? $"{takes}. {Readable}"
            : HttpMethods.IsPost(method) ? $"{takes}. {Recordable}"
            : $"{takes}: facts are added by POST and never changed or deleted; a wrong one is amended or retracted.";
    }
}
