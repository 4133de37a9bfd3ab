using FleetWake.Store.Nodes;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace FleetWake.Hosting;

/// <summary>
/// Sends metrics and traces to a collector, when one is named by the usual variable of OpenTelemetry; the others of them
/// (protocol, headers, sampler, resource attributes) hold as its documentation says. Nothing is sent anywhere else.
/// </summary>
internal static class Telemetry
{
    /// <summary>The variable that turns it on.</summary>
    public const string Endpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";

    public static void AddFleetTelemetry(this IServiceCollection services, IConfiguration set, NodeId node, string version)
    {
        if (string.IsNullOrWhiteSpace(set[Endpoint])) return;
        services.AddOpenTelemetry()
            .ConfigureResource(r => r.AddService("fleetwake", serviceVersion: version, serviceInstanceId: node.Value))
            .WithMetrics(m => m.AddMeter(FleetMeter.Name, "Marten", "Npgsql").AddAspNetCoreInstrumentation().AddRuntimeInstrumentation())
            .WithTracing(t => t
                // Marten's spans name operators; they stay off.
                .AddSource(FleetMeter.Name)
                .AddNpgsql()
                .AddAspNetCoreInstrumentation(o =>
                {
                    // A probe every few seconds would be most of what is seen.
                    o.Filter = http => !http.Request.Path.StartsWithSegments("/health");

                    // A path may hold a boat, a calendar's key or a token to unsubscribe; http.route says enough.
                    o.EnrichWithHttpRequest = (span, _) => span.SetTag("url.path", null);
                }))
            .UseOtlpExporter();
    }
}
