using FleetWake.Logbook.Boats;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Boat;

/// <summary>Gathers what the page of a boat shows.</summary>
internal sealed class BoatReading(FleetReading reading, FleetOperators operators, OfficeRecords records, TimeProvider time)
{
    /// <summary>A finding is usually made again within a second; a page that waits longer says so instead.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    public Task<Scene> SceneAsync(HttpContext http) => Scene.OfAsync(http, operators);

    public Guid NewEntry() => records.NewEntry();

    /// <summary>The zone that a record of a boat is stamped with; null when there is no such boat.</summary>
    public async Task<string?> ZoneAsync(HttpContext http, string boat)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        return await reading.FindingAsync(tenant, boat, ct) is not { } stored ? null : stored.Finding.Registered?.DockZone ?? (await operators.FindAsync(tenant, ct))?.Zone;
    }

    /// <summary>The boat; null when nothing is known of it.</summary>
    public async Task<BoatView?> OfAsync(HttpContext http, Scene scene, string boat)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var upToDate = await reading.IsUpToDateAsync(tenant, boat, ct);
        if (await reading.FindingAsync(tenant, boat, ct) is not { } stored) return null;
        var history = (await reading.HistoriesAsync(tenant, [boat], ct)).SingleOrDefault();
        var today = DueApi.TodayAt(stored.Finding.Registered?.DockZone ?? scene.Operator.Zone, time);
        return BoatView.Of(stored, await reading.OfficeAsync(tenant, ct), today, scene.Operator.Zone, MountingSheet.Of(history), upToDate, scene.Measures);
    }

    /// <summary>The boat's records.</summary>
    public Task<Timeline> TimelineAsync(HttpContext http, Scene scene, BoatView view) =>
        Timeline.OfAsync(http.Request, http.User.OperatorOf(), view.Boat, view.Zone, reading, scene.Measures, new Dictionary<string, string>(StringComparer.Ordinal));

    /// <summary>Waits a moment for the finding that counts what was just recorded, so that the page tells the new state.</summary>
    public async Task WaitAsync(HttpContext http, string boat)
    {
        var until = time.GetTimestamp();
        while (time.GetElapsedTime(until) < Patience && !await reading.IsUpToDateAsync(http.User.OperatorOf(), boat, http.RequestAborted))
            await Task.Delay(TimeSpan.FromMilliseconds(100), http.RequestAborted);
    }
}
