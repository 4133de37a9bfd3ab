using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FleetWake.Web.Frame;

/// <summary>Answers with a page. A page shows an operator's own data, so that nobody in between keeps it.</summary>
public static class PageAnswer
{
    /// <summary>The page with its parameters, e.g. <c>new { Scene = scene }</c>.</summary>
    public static IResult Of<TPage>(HttpContext http, object parameters, int status = StatusCodes.Status200OK)
        where TPage : IComponent
    {
        http.Response.Headers.CacheControl = "no-store";
        return new RazorComponentResult<TPage>(parameters) { StatusCode = status, PreventStreamingRendering = true };
    }

    /// <summary>The status of a page that shows why a form was not taken, if it was not: a refused form is no success.</summary>
    public static int StatusOf(IReadOnlyList<Refusal> refusals) => refusals.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
}
