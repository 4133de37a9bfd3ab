using FleetWake.Demo;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Tests.Program;
using Marten;
using Role = FleetWake.Logbook.People.Role;

namespace FleetWake.Browser.Tests.Pictures;

/// <summary>The demo's fleet behind the pages, with invented names for its invented people.</summary>
internal static class DemoInBrowser
{
    private static readonly string[] Names = ["Ada Holm", "Ben Tarn", "Cora Voe", "Dan Ness", "Effie Skaill", "Finn Geo", "Greta Wick", "Hugh Stack", "Isla Haaf"];

    public static async Task SendAsync(RunningFleet fleet, CancellationToken ct)
    {
        var time = TimeProvider.System;
        var operators = fleet.Service<FleetOperators>();
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(RunningFleet.Zone)).DateTime);
        using (var dock = new DemoDock(fleet.App.Urls.First(), await operators.MakeKeyAsync(RunningFleet.Operator, "demo", [KeyScope.Record, KeyScope.Read], ct), time))
            await dock.SendAsync(InventedFleet.Write(today), _ => { }, ct);

        await using (var session = fleet.Service<IDocumentStore>().LightweightSession())
        {
            foreach (var (i, name) in Names.Index())
            {
                var id = $"mech-{i + 1:00}";
                session.Store(new PersonCard(PersonCard.KeyOf(RunningFleet.Operator, id), RunningFleet.Operator, id, name, null, Role.Mechanic));
            }

            await session.SaveChangesAsync(ct);
        }

        // A fit counts on findings, and findings on a fit: as at night, one after the other.
        var patience = TimeSpan.FromMinutes(5);
        await RunningFleet.UntilAsync("the record", () => fleet.Service<FleetReading>().UpToDateAsync(ct), ct, patience);
        await fleet.Service<FleetFitStep>().FitAsync((await operators.FindAsync(RunningFleet.Operator, ct))!, FitWish.Now, ct);
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(ct), ct, patience);
    }
}
