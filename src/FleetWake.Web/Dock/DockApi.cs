using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Dock;

/// <summary>What the phones at the docks talk to. It is no public interface: phones and server are of one version, or the phone reloads itself.</summary>
internal static class DockApi
{
    public static IServiceCollection AddDock(this IServiceCollection services)
    {
        services.AddAuthentication().AddScheme<Microsoft.AspNetCore.Authentication.AuthenticationSchemeOptions, DeviceHandler>(DeviceHandler.SchemeName, null);
        services.AddSingleton<FailureLimit>();
        services.AddSingleton<DockPlaces>();
        services.AddSingleton<TodayReading>();
        services.AddSingleton<PhotoEncoding>();
        services.AddSingleton<Office.Devices.Desk>();
        services.AddSingleton<Office.Tags.TagGathering>();
        return services;
    }

    public static void MapDockApi(this IEndpointRouteBuilder routes)
    {
        var open = routes.MapGroup("/dock/api").ExcludeFromDescription();
        open.MapEnrol();

        // What time it is: a phone asks before it sends, so that the error of its clock is known and not remembered.
        open.MapGet("clock", (TimeProvider time) => Results.Json(new { now = time.GetUtcNow() }));
        var dock = open.MapGroup("").RequireAuthorization(p => DeviceHandler.Policy(p));
        dock.MapToday();
        dock.MapSign();
        dock.MapEntries();
        var late = open.MapGroup("").RequireAuthorization(p => DeviceHandler.Policy(p, orRevoked: true));
        late.MapDockRecords();
    }
}
