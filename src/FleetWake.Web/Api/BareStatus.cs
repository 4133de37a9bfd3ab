using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Api;

/// <summary>What the routing itself refuses, with what to do about it.</summary>
internal static class BareStatus
{
    private const string Everything = "/openapi/v1.json describes every route.";

    public static Task AnswerAsync(StatusCodeContext context)
    {
        var http = context.HttpContext;
        var (type, detail) = http.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => ("not-found", $"There is nothing at this address. {(HttpMethods.IsGet(http.Request.Method) ? Readable : Recordable)}"),
            StatusCodes.Status405MethodNotAllowed => ("method-not-allowed", OtherMethod(http.Request.Method, http.Response.Headers.Allow.ToString())),
            StatusCodes.Status415UnsupportedMediaType => ("json-needed", "Send the body with the header \"Content-Type: application/json\"."),
            _ => ("refused", $"The request cannot be answered as it is; {Everything}"),
        };
        return Problems.Make(http.Response.StatusCode, type, detail, []).ExecuteAsync(http);
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
