using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.Office;

/// <summary>A small fleet with something of everything in store: spares, props at a shop, a loaner, small parts, bills.</summary>
internal static class StoreRoom
{
    /// <summary>What a name may hold, if somebody means harm.</summary>
    public const string Hostile = "\"'><script>document.title='taken'</script>\u202Eevil";

    public static IEnumerable<ICommand> Records()
    {
        var dock = new DockRecords(31);
        yield return new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "Old Mole", RunningFleet.Zone, "salt", "rock");
        yield return new OpenDock(dock.At("2026-01-01T08:00:00"), "new-mole", Hostile, RunningFleet.Zone);
        foreach (var record in dock.Outfit("gannet", "Gannet")) yield return record;
        foreach (var record in dock.Outfit("razorbill", "Razorbill")) yield return record;
        for (var i = 0; i < 4; i++) yield return dock.Trial("gannet", $"2026-0{1 + i}-20T10:00:00", 5650, 100 + (25 * i));
        yield return new RegisterBoat(dock.At("2026-01-01T09:00:00"), "evil", Hostile, "new-mole", RunningFleet.Zone, "fresh", ["single"]);
        yield return new ReportStrike(dock.At("2026-03-01T16:00:00"), "razorbill", "single", "rock", "bent");
        yield return new LookOver(dock.At("2026-03-01T15:50:00"), "razorbill", "single", "after_hire", "damage", "hire-90");

        yield return new RegisterProp(dock.At("2026-01-02T09:00:00"), "sk-11", 11.5, 13, 3, "aluminium", "right");
        yield return new StoreProp(dock.At("2026-01-02T09:10:00"), "sk-11", "old-mole");
        yield return new RegisterProp(dock.At("2026-01-02T09:00:00"), "sk-12", 13.25, 17, 3, "stainless", "right");
        yield return new SendPropToShop(dock.At("2026-06-12T11:00:00"), "sk-12", "skerry-props", "repitch", 16, "2026-06-26");
        yield return new RegisterProp(dock.At("2026-01-02T09:00:00"), "sk-13", 13.25, 17, 4, "stainless", "left");
        yield return new RepitchProp(dock.At("2026-02-02T09:00:00"), "sk-13", 16, 16.9, 13.1);
        yield return new MeasureProp(dock.At("2026-02-03T09:00:00"), "sk-13", [16.1, 15.9, 16, 16.2], "pitch_gauge", 13.1);
        yield return new TellPropCost(dock.At("2026-02-04T09:00:00"), "sk-13", "shop", 145.5m, "NZD");
        yield return new SendPropToShop(dock.At("2026-11-12T11:00:00"), "sk-13", "skerry-props", "polish", null, "2027-12-20");
        yield return new RegisterProp(dock.At("2026-05-02T09:00:00"), "lent-1", 11.5, 12, 3, "aluminium", "right");
        yield return new TakeLoaner(dock.At("2026-05-02T09:10:00"), "lent-1", "skerry-props", "2026-08-01");
        yield return new StockPart(dock.At("2026-01-03T09:00:00"), "pin-3x25", "cotter_pin", "old-mole", 50, "Cotter pin 3 x 25 mm");
        yield return new StockPart(dock.At("2026-01-03T09:00:00"), "evil-part", "other", "new-mole", 2, Hostile);
        yield return new SetPrice(dock.At("2026-01-03T09:00:00"), "labour_hour", 85, "NZD");
    }

    /// <summary>The program on a fleet to which all this was sent and of which every boat is assessed.</summary>
    public static Task<BrowsedFleet> StartAsync(ChromiumFixture chromium, PostgresFixture postgres, string hint) =>
        BrowsedFleet.StartWithAsync(chromium, postgres, hint, "store_room", SendAsync);

    private static async Task SendAsync(RunningFleet fleet, CancellationToken ct)
    {
        var results = await fleet.SendAsync(Records(), ct);
        Assert.DoesNotContain(results, r => (string?)r!["outcome"] == "refused");
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(ct), ct);
    }
}
