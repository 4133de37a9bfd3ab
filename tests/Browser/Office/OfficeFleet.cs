using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.Office;

/// <summary>A small fleet with something of everything: a boat that drifts, one that struck, one without a prop, one with a hostile name.</summary>
internal static class OfficeFleet
{
    /// <summary>What a name may hold, if somebody means harm: markup, quotes, and a sign that turns the reading direction.</summary>
    public const string Hostile = "\"'><script>document.title='taken'</script>\u202Eevil";

    public const string LongName = "Little Ringed Plover of the Far Skerries";

    public static IEnumerable<ICommand> Records()
    {
        var dock = new DockRecords(21);
        foreach (var record in dock.Outfit("gannet", "Gannet")) yield return record;
        for (var i = 0; i < 8; i++) yield return dock.Trial("gannet", $"2026-0{1 + i}-20T10:00:00", 5650 + (40 * i), 100 + (25 * i));
        foreach (var record in dock.Outfit("razorbill", "Razorbill")) yield return record;
        yield return dock.Trial("razorbill", "2026-02-01T10:00:00", 5500, 110);
        yield return new ReportStrike(dock.At("2026-03-01T16:00:00"), "razorbill", "single", "rock", "bent");
        foreach (var record in dock.Outfit("plover", LongName)) yield return record;
        yield return dock.Trial("plover", "2026-02-01T10:00:00", 5500, 110);
        yield return new RegisterBoat(dock.At("2026-01-01T09:00:00"), "evil", Hostile, "new-mole", RunningFleet.Zone, "fresh", ["single"]);
    }

    /// <summary>The program on a fleet to which all this was sent and of which every boat is assessed.</summary>
    public static Task<BrowsedFleet> StartAsync(ChromiumFixture chromium, PostgresFixture postgres, string hint) =>
        BrowsedFleet.StartWithAsync(chromium, postgres, hint, "office_fleet", async (fleet, ct) =>
        {
            await fleet.SendAsync(Records(), ct);
            await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(ct), ct);
        });
}

/// <summary>The small fleet behind one running program, for tests that look and change nothing that another one reads.</summary>
[CollectionDefinition(Name)]
public sealed class SeenOffice(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime, ICollectionFixture<SeenOffice>
{
    public const string Name = "Seen office";

    public BrowsedFleet Fleet { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Fleet = await OfficeFleet.StartAsync(chromium, postgres, "seen_office");

    public ValueTask DisposeAsync() => Fleet.DisposeAsync();
}
