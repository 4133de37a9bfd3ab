using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Devices;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>The dock that all tests of its pages share: each takes boats of its own.</summary>
[CollectionDefinition(Name)]
public sealed class AtOldMole : ICollectionFixture<OldMole>
{
    public const string Name = "Old Mole";
}

/// <summary>Old Mole on a busy Saturday: single-engine boats with a spare that fits, a twin, and one that was struck.</summary>
public sealed class OldMole(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    /// <summary>Boats with one engine; Linnet was struck.</summary>
    private static readonly string[] Singles = ["tern", "linnet", "auk", "dunlin", "eider", "fulmar", "godwit", "knot", "plover", "ruff", "sanderling", "scoter", "shag", "skua", "smew", "whimbrel"];

    /// <summary>Boats of the other dock, so that the list of the first stays as long as a dock's is.</summary>
    private static readonly string[] Norths =
    [
        "avocet", "brant", "crake", "curlew", "diver", "gadwall", "garganey", "grebe", "heron", "jaeger", "pintail", "pochard", "rail",
        "scaup", "snipe", "stint", "teal", "turnstone", "bittern", "dotterel", "dipper", "egret", "gull", "kite", "lapwing", "noddy", "osprey",
    ];

    /// <summary>Id of the other dock.</summary>
    public const string North = "north-mole";

    /// <summary>The program.</summary>
    public BrowsedFleet Fleet { get; private set; } = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        Fleet = await BrowsedFleet.StartAsync(chromium, postgres, "old_mole");
        var running = Fleet.Fleet;
        await using (var session = running.Service<IDocumentStore>().LightweightSession())
        {
            foreach (var (person, name, role) in new[] { ("mech-1", "Ana", Role.Mechanic), ("mech-2", "Bo", Role.Operator), ("mech-3", "Cy", Role.Mechanic) })
                session.Store(new Store.People.PersonCard(Store.People.PersonCard.KeyOf(RunningFleet.Operator, person), RunningFleet.Operator, person, name, null, role));
            await session.SaveChangesAsync(Ct);
        }

        foreach (var answer in await running.SendAsync(Records(), Ct)) Assert.Equal("recorded", answer!["outcome"]!.GetValue<string>());
        await RunningFleet.UntilAsync("a card of each boat", async () => (await running.Http.GetStringAsync("/api/boats?limit=200", Ct)).Split("\"notForHire\":").Length > Singles.Length + Norths.Length + 1, Ct);
    }

    /// <summary>What the office shows for ten minutes.</summary>
    public async Task<string> CodeAsync(string at = "old-mole") => (await Fleet.Fleet.Service<FleetDevices>().MakeCodeAsync(RunningFleet.Operator, at, "blue phone", "boss", Ct)).Code;

    public ValueTask DisposeAsync() => Fleet.DisposeAsync();

    private static List<ICommand> Records()
    {
        var dock = new DockRecords();
        List<ICommand> records = [new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "Old Mole", RunningFleet.Zone, "salt", "rock"), new OpenDock(dock.At("2026-01-01T08:00:00"), North, "North Mole", RunningFleet.Zone, "salt", "rock")];
        foreach (var boat in Singles.Concat(Norths))
        {
            var home = Norths.Contains(boat) ? North : "old-mole";
            records.AddRange(dock.Outfit(boat, char.ToUpperInvariant(boat[0]) + boat[1..]).Select(r => r is RegisterBoat b ? b with { Dock = home } : r));
            records.Add(new StateFastening(dock.At("2026-01-01T11:00:00"), "e-" + boat, "castle_nut_cotter_pin", 25, 30, "pound_force_foot", 2, false));
            records.Add(new StateEngineFit(dock.At("2026-01-01T11:00:00"), "e-" + boat, null, 13));
        }

        records.Add(new RegisterBoat(dock.At("2026-01-01T09:00:00"), "gannet", "Gannet", "old-mole", RunningFleet.Zone, "salt", ["port", "starboard"]));
        foreach (var (position, rotation) in new[] { ("port", "left"), ("starboard", "right") })
        {
            records.Add(new RegisterEngine(dock.At("2026-01-01T09:00:00"), "e-g-" + position, "Skerry 90", 5000, 6000, 2.33, 90, "hp", 55, "newton_metre", 50));
            records.Add(new RegisterProp(dock.At("2026-01-01T09:00:00"), "p-g-" + position, 13.5, 17, 3, "stainless", rotation));
            records.Add(new FitEngine(dock.At("2026-01-01T09:30:00"), "gannet", position, "e-g-" + position, 200));
            records.Add(new MountProp(dock.At("2026-01-01T10:00:00"), "gannet", position, "p-g-" + position, 200));
        }

        records.Add(new RegisterProp(dock.At("2026-01-01T11:00:00"), "spare-12", 11.5, 12, 3, "aluminium", "right"));
        records.Add(new StatePropFit(dock.At("2026-01-01T11:00:00"), "spare-12", null, 13));
        records.Add(new StoreProp(dock.At("2026-01-01T11:05:00"), "spare-12", "old-mole"));
        records.Add(new StockPart(dock.At("2026-01-01T11:10:00"), "pin-3", "cotter_pin", "old-mole", 12, "Cotter pin 3 mm"));
        records.Add(dock.Trial("tern", "2026-10-12T10:00:00", 5650, 180));
        records.Add(new ReportStrike(dock.At("2026-11-20T10:00:00"), "linnet", "single", "sand", "scuffed"));
        records.Add(new ReportStrike(dock.At("2026-11-20T10:00:00"), "bittern", "single", "rock", "bent"));
        return records;
    }
}
