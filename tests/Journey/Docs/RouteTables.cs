using System.Text;
using FleetWake.Hosting;
using FleetWake.Logbook.Entries;
using FleetWake.Settings;
using FleetWake.Store.Schema;
using FleetWake.Web;
using FleetWake.Web.Api.Reading;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>The routes of the API as the code declares them; nothing is asked of them, so no database is needed.</summary>
internal static class RouteTables
{
    /// <summary>Every route under <c>/api</c>, in the order in which they are mapped.</summary>
    public static IReadOnlyList<RouteEndpoint> Routes()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Services.AddFleetStore(NpgsqlDataSource.Create("Host=nowhere.example"), daemon: false);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddFleetWeb();
        var settings = FleetSettings.From(new ConfigurationBuilder().Build());
        builder.Services.AddFleetLayouts(settings);
        builder.Services.AddFleetSender(settings);
        var app = builder.Build();
        app.UseFleetWeb();
        return [.. ((IEndpointRouteBuilder)app).DataSources.SelectMany(d => d.Endpoints).OfType<RouteEndpoint>().Where(e => e.RoutePattern.RawText!.StartsWith("/api", StringComparison.Ordinal))];
    }

    /// <summary>The table of reading routes.</summary>
    public static string Reading()
    {
        var text = new StringBuilder("| route | answers | parameters |\n|---|---|---|\n");
        foreach (var route in Routes().Where(r => Method(r) == "GET"))
        {
            var fields = route.Metadata.GetOrderedMetadata<QueryField>();
            text.Append($"| `{route.RoutePattern.RawText!.Replace(":guid", "", StringComparison.Ordinal)}` | {route.Metadata.GetMetadata<IEndpointSummaryMetadata>()!.Summary} | {string.Join(", ", fields.Select(f => $"`{f.Name}`"))} |\n");
        }

        return text.ToString();
    }

    /// <summary>The table of parameters, each with the routes that take it where not all mean the same.</summary>
    public static string Parameters()
    {
        var text = new StringBuilder("| parameter | of | meaning |\n|---|---|---|\n");
        var fields = Routes().SelectMany(r => r.Metadata.GetOrderedMetadata<QueryField>().Select(f => (Route: r.Metadata.GetMetadata<IEndpointNameMetadata>()!.EndpointName, Field: f)));
        foreach (var same in fields.GroupBy(f => (f.Field.Name, f.Field.Meaning)).OrderBy(g => g.Key.Name, StringComparer.Ordinal))
            text.Append($"| `{same.Key.Name}` | {string.Join(", ", same.Select(f => Words(f.Route)))} | {same.Key.Meaning}{Limits(same.First().Field)} |\n");
        return text.ToString();
    }

    public static string Method(RouteEndpoint route) => route.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods[0];

    private static string Limits(QueryField field) =>
        field.Schema is { Minimum: { } least, Maximum: { } most, Default: { } usual } ? $" {least} to {most}, {usual} unless given."
        : field.Schema is { Enum.Count: > 0 and < 12 } ? $" One of {string.Join(", ", field.Schema.Enum!.Select(w => $"`{w}`"))}."
        : "";

    private static string Words(string name) => name.Replace('_', ' ');
}
