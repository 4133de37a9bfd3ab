using FleetWake.Logbook.Entries;
using FleetWake.Store.Findings;
using FleetWake.Store.Operators;
using FleetWake.Web.Api;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.Dock;
using FleetWake.Web.Frame;
using FleetWake.Web.Office;
using FleetWake.Web.Office.Mail;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web;

/// <summary>The web room: its services and its routes.</summary>
public static class FleetWeb
{
    /// <summary>Largest body that is read [bytes]: a full batch with room to spare.</summary>
    public const long MostBodyBytes = 4 * 1024 * 1024;

    /// <summary>Adds the web room's services.</summary>
    /// <param name="services">The services.</param>
    /// <param name="publicUrl">Address under which people reach it, when that is told.</param>
    public static IServiceCollection AddFleetWeb(this IServiceCollection services, Uri? publicUrl = null)
    {
        services.ConfigureHttpJsonOptions(o => LogbookJson.Configure(o.SerializerOptions));
        services.AddProblemDetails();
        services.AddOpenApi("v1", Description.Describe);
        services.AddAuthentication(ApiKeyHandler.SchemeName)
            .AddScheme<AuthenticationSchemeOptions, ApiKeyHandler>(ApiKeyHandler.SchemeName, null)
            .AddScheme<AuthenticationSchemeOptions, SessionHandler>(SessionHandler.SchemeName, null);
        services.AddDock();
        services.AddRazorComponents();
        services.AddSignIn(publicUrl);
        services.AddOffice();
        var authorization = services.AddAuthorizationBuilder();
        foreach (var scope in Enum.GetValues<KeyScope>())
            authorization.AddPolicy(Words.Of(scope), p => p.RequireClaim(Claims.Scope, Words.Of(scope)));
        services.Configure<Microsoft.AspNetCore.Server.Kestrel.Core.KestrelServerOptions>(o =>
        {
            o.Limits.MaxRequestBodySize = MostBodyBytes;
            o.AddServerHeader = false;
        });
        return services;
    }

    /// <summary>Maps the web room's routes.</summary>
    public static void UseFleetWeb(this WebApplication app)
    {
        app.UseExceptionHandler(errors => errors.Run(AnswerFailureAsync));
        app.UseStatusCodePages(BareStatus.AnswerAsync);
        app.UseProxyInFront();
        app.Use(AnswerHeadAsGetAsync);
        app.UsePageGuard();

        // Behind the line above, which would else come too late to choose another route.
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseFormGuard();
        app.UsePersonHere();
        app.UseAntiforgery();
        app.MapOpenApi();
        app.MapGet("/", (HttpContext http) => BareStatus.WantsPage(http.Request) ? Results.Redirect("/office") : Results.Text("FleetWake keeps the record. API description: /openapi/v1.json\n")).ExcludeFromDescription();
        app.MapRecords();
        app.MapReading();
        app.MapBounces();
        app.MapMailLinks();
        app.MapDueCalendar();
        app.MapAssets();
        app.MapSignIn();
        app.MapInvitations();
        app.MapOfficePages();
        app.MapDockApi();
        app.MapDockShell();
    }

    /// <summary>A HEAD is a GET whose body the server keeps back by itself (RFC 9110, 9.3.2).</summary>
    private static Task AnswerHeadAsGetAsync(HttpContext http, RequestDelegate next)
    {
        if (HttpMethods.IsHead(http.Request.Method)) http.Request.Method = HttpMethods.Get;
        return next(http);
    }

    private static async Task AnswerFailureAsync(HttpContext http)
    {
        var error = http.Features.Get<IExceptionHandlerFeature>()?.Error;
        if (error is BadHttpRequestException bad)
        {
            await Problems.Make(bad.StatusCode, bad.StatusCode == 413 ? "too-large" : "bad-request", bad.StatusCode == 413 ? $"Send at most {(http.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize ?? MostBodyBytes) / (1024 * 1024)} MB a request." : bad.Message, []).ExecuteAsync(http);
            return;
        }

        if (error is not null && FindingStep.IsDatabaseDown(error))
        {
            http.Response.Headers.RetryAfter = "5";
            await Problems.Unavailable().ExecuteAsync(http);
            return;
        }

        await Problems.Make(500, "failure", "Something broke on our side; the log says what. Nothing of this request is certain: send it again, a repeat is harmless.", []).ExecuteAsync(http);
    }
}
