using FleetWake.Logbook.Entries;
using FleetWake.Store.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetWake.Web.Health;

/// <summary>
/// Probes for whoever watches the program. <c>live</c> asks nothing of anybody: a service manager restarts on it, and a
/// restart mends no database. <c>ready</c> says what is wrong: 503 when nothing can be done here, 200 with
/// "degraded" when work is late or a boat could not be assessed, for taking the program out of service would not help.
/// </summary>
public static class HealthApi
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Adds what the probes answer with.</summary>
    public static IServiceCollection AddFleetHealth(this IServiceCollection services) =>
        services.ConfigureHttpJsonOptions(o => LogbookJson.Configure(o.SerializerOptions));

    /// <summary>Maps the probes.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => Results.Text("live\n")).ExcludeFromDescription();
        routes.MapGet("/health/ready", ReadyAsync).ExcludeFromDescription();
    }

    private static async Task<IResult> ReadyAsync(HttpContext http, WorkStateReading state, NodeSettings node, TimeProvider time, CancellationToken ct)
    {
        // A proxy must not answer for us.
        http.Response.Headers.CacheControl = "no-store";
        var health = await LookAsync(state, node, time, ct);
        return Results.Json(health, statusCode: health.Status == HealthStatus.NotReady ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status200OK);
    }

    private static async Task<HealthAnswer> LookAsync(WorkStateReading state, NodeSettings node, TimeProvider time, CancellationToken ct)
    {
        try
        {
            var complaints = (await state.NowAsync(ct).WaitAsync(Patience, time, ct)).Complaints();
            return new HealthAnswer(complaints.Count == 0 ? HealthStatus.Ready : HealthStatus.Degraded, node.Node.Value, node.Roles, node.Version, complaints);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InvalidSchemaName or PostgresErrorCodes.UndefinedColumn)
        {
            return NotReady("schema", "the database does not have this version's tables: run \"fleetwake schema\"");
        }
        catch (Exception e) when (e is NpgsqlException or TimeoutException)
        {
            return NotReady("database", "the database does not answer");
        }

        HealthAnswer NotReady(string part, string says) => new(HealthStatus.NotReady, node.Node.Value, node.Roles, node.Version, [new Complaint(part, says)]);
    }
}

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
