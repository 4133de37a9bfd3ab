using FleetWake.Logbook.Boats;
using FleetWake.Store.Devices;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Boat;

/// <summary>Gathers what the page of a boat shows.</summary>
internal sealed class BoatReading(FleetReading reading, FleetOperators operators, FleetPeople people, EntryBeside beside, FleetDevices devices, OfficeRecords records, TimeProvider time)
{
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
        return BoatView.Of(stored, await reading.OfficeAsync(tenant, ct), today, scene.Operator.Zone, MountingSheet.Of(history), upToDate, scene.Measures) with { Namings = await NamingsAsync(http) };
    }

    /// <summary>The boat's records.</summary>
    public async Task<Timeline> TimelineAsync(HttpContext http, Scene scene, BoatView view)
    {
        var tenant = http.User.OperatorOf();
        return await Timeline.OfAsync(http.Request, tenant, view.Boat, view.Zone, reading, beside, scene.Measures, await people.NamesAsync(tenant, http.RequestAborted), await NamingsAsync(http));
    }

    /// <summary>What the office decided: docks and rules.</summary>
    public Task<OfficeState> OfficeAsync(HttpContext http) => reading.OfficeAsync(http.User.OperatorOf(), http.RequestAborted);

    /// <summary>Today by a zone's clock.</summary>
    public DateOnly Today(string zone) => DueApi.TodayAt(zone, time);

    /// <summary>Names of what records call by id.</summary>
    public Task<Namings> NamingsAsync(HttpContext http) => Namings.OfAsync(reading, devices, http.User.OperatorOf(), http.RequestAborted);

    /// <summary>Waits a moment for the finding that counts what was just recorded.</summary>
    public Task WaitAsync(HttpContext http, string boat) => records.WaitAsync(http, boat, reading);
}
