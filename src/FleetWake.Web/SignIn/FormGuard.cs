using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.SignIn;

/// <summary>Says that a route is used from our own pages: what changes something there must carry the page's token.</summary>
public sealed record FromOurPages;

/// <summary>
/// The one place that asks for the token: another site can make a browser send its cookie along, but cannot read a page of ours.
/// Forms carry it as a field, scripts as a header.
/// </summary>
public static class FormGuard
{
    /// <summary>Name of the field.</summary>
    public const string Field = "form-token";

    /// <summary>Name of the header.</summary>
    public const string Header = "FleetWake-Form-Token";

    /// <summary>Only from our own pages.</summary>
    public static TBuilder OnlyFromOurPages<TBuilder>(this TBuilder route)
        where TBuilder : IEndpointConventionBuilder =>
        route.WithMetadata(new FromOurPages());

    /// <summary>Adds it, behind authorization: a token belongs to who is signed in.</summary>
    public static void UseFormGuard(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        if (http.GetEndpoint()?.Metadata.GetMetadata<FromOurPages>() is not null && Changes(http.Request.Method))
        {
            var antiforgery = (IAntiforgery)http.RequestServices.GetService(typeof(IAntiforgery))!;
            if (!await antiforgery.IsRequestValidAsync(http))
            {
                await PageAnswer.Of<NoticePage>(http, new { Title = PageTexts.English["signin.stale_title"], Text = PageTexts.English["signin.stale"] }, StatusCodes.Status400BadRequest).ExecuteAsync(http);
                return;
            }
        }

        await next(http);
    });

    /// <summary>Whether a method changes anything (RFC 9110, 9.2.1).</summary>
    public static bool Changes(string method) =>
        !HttpMethods.IsGet(method) && !HttpMethods.IsHead(method) && !HttpMethods.IsOptions(method) && !HttpMethods.IsTrace(method);
}
