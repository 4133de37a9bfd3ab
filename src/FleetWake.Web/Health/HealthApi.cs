using System.Net;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Health;

/// <summary>
/// Probes for whoever watches the program. <c>live</c> asks nothing of anybody: a service manager restarts on it, and a
/// restart mends no database. <c>ready</c> says what is wrong: 503 when nothing can be done here, 200 with
/// "degraded" when work is late or a boat could not be assessed, for taking the program out of service would not help.
/// </summary>
public static class HealthApi
{
    private static readonly string[] ProxyHeaders = ["X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-IP", "Forwarded", "Via"];

    /// <summary>Adds what the probes answer with.</summary>
    public static IServiceCollection AddFleetHealth(this IServiceCollection services) =>
        services.AddSingleton<HealthLook>().ConfigureHttpJsonOptions(o => LogbookJson.Configure(o.SerializerOptions));

    /// <summary>Maps the probes.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => Results.Text("live\n")).ExcludeFromDescription();
        routes.MapGet("/health/ready", ReadyAsync).ExcludeFromDescription();
    }

    private static async Task<IResult> ReadyAsync(HttpContext http, HealthLook look, CancellationToken ct)
    {
        // A proxy must not answer for us.
        http.Response.Headers.CacheControl = "no-store";
        var health = await look.NowAsync(ct);
        var code = health.Status == HealthStatus.NotReady ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status200OK;
        return IsNear(http) ? Results.Json(health, statusCode: code) : Results.Json(new HealthWord(health.Status), statusCode: code);
    }

    /// <summary>
    /// Asked on this machine, and not through a proxy on it. Anybody else is told the status alone: names of machines and
    /// versions are nobody's business.
    /// </summary>
    private static bool IsNear(HttpContext http) =>
        (http.Connection.RemoteIpAddress is not { } from || IPAddress.IsLoopback(from)) && !ProxyHeaders.Any(http.Request.Headers.ContainsKey);
}

/// <summary>What somebody far away is answered.</summary>
/// <param name="Status">ready, degraded or not_ready.</param>
public sealed record HealthWord(HealthStatus Status);

/// <summary>What a probe is answered.</summary>
/// <param name="Status">ready, degraded or not_ready.</param>
/// <param name="Node">This process.</param>
/// <param name="Roles">What it does.</param>
/// <param name="Version">Version of the program.</param>
/// <param name="Complaints">What is wrong, and what to do about it.</param>
public sealed record HealthAnswer(HealthStatus Status, string Node, string Roles, string Version, IReadOnlyList<Complaint> Complaints);

/// <summary>Whether the program can do its work.</summary>
public enum HealthStatus
{
    /// <summary>All is well.</summary>
    Ready,

    /// <summary>It works, but something needs a person or is late.</summary>
    Degraded,

    /// <summary>Nothing can be done here.</summary>
    NotReady,
}
