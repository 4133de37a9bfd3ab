using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Api;

/// <summary>
/// A fleet that is read and hardly added to, so several classes share it: tern, struck, which lost her first prop; skua, sound, whose
/// prop is also said to be on tern; and boats with nothing but a name.
/// </summary>
[CollectionDefinition(Shared)]
public sealed class ReadingFleet(PostgresFixture postgres) : IAsyncLifetime, ICollectionFixture<ReadingFleet>
{
    public const string Shared = "a fleet that is read";

    /// <summary>Writes its records.</summary>
    public DockRecords Dock { get; } = new();

    /// <summary>Id of tern's first mounting.</summary>
    public Guid FirstMounting { get; private set; }

    /// <summary>The strike that was amended.</summary>
    public Guid AmendedStrike { get; private set; }

    public RunningFleet Fleet { get; private set; } = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>A clock that shows a day after every record, so that no test depends on the day it runs.</summary>
    public static TimeProvider Autumn() => ShiftedTime.From(new DateTimeOffset(2026, 9, 30, 0, 0, 0, TimeSpan.Zero));

    public async ValueTask InitializeAsync()
    {
        Fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("reading", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), Autumn(), ct: Ct);
        ICommand[] tern = [.. Dock.Outfit("tern", "Tern")];
        FirstMounting = tern[^1].Entry!.Id!.Value;
        var strike = new ReportStrike(Dock.At("2026-03-02T10:00:00"), "tern", "single", "rock", "scuffed");
        AmendedStrike = strike.Entry!.Id!.Value;
        await SendAsync(
        [
            .. tern, .. Dock.Outfit("skua", "Skua"),
            Dock.Trial("tern", "2026-01-20T10:00:00", 5600, 100), Dock.Trial("tern", "2026-02-20T10:00:00", 5640, 120),
            new Inspect(Dock.At("2026-08-31T16:00:00"), "skua", "single", "fit"),
            strike,
            new ReportStrike(Dock.At("2026-03-02T10:00:00") with { Amends = AmendedStrike, EnteredAt = "2026-03-02T12:00:00" }, "tern", "single", "rock", "bent"),
            new RemoveProp(Dock.At("2026-03-05T09:00:00"), "tern", "single", "struck", "p-tern"),
            new RegisterProp(Dock.At("2026-03-05T09:30:00"), "p-spare", 11.5, 13, 3, "aluminium", "right"),
            new MountProp(Dock.At("2026-03-05T10:00:00"), "tern", "single", "p-skua", 130),
            new OpenDock(Dock.At("2026-01-01T08:00:00"), "old-mole", "The Old Mole", RunningFleet.Zone),
            new StockPart(Dock.At("2026-01-01T08:00:00"), "pin", "cotter_pin", "old-mole", 50),
            new UsePart(Dock.At("2026-01-02T08:00:00"), "pin", 2, "old-mole"),
            new OpenClaim(Dock.At("2026-03-02T18:00:00"), "tern", "single", "hire-7"),
            .. Enumerable.Range(1, 5).Select(i => Named($"bare-{i}", $"Bare {i}")),
        ]);
    }

    public ValueTask DisposeAsync() => Fleet.DisposeAsync();

    /// <summary>A boat of another dock with nothing but a name.</summary>
    public RegisterBoat Named(string boat, string name) =>
        new(Dock.At("2026-01-01T09:00:00"), boat, name, "new-mole", RunningFleet.Zone, "fresh", ["single"]);

    /// <summary>Sends records and waits until they are in the findings.</summary>
    public async Task SendAsync(IEnumerable<ICommand> records)
    {
        Assert.All(await Fleet.SendAsync(records, Ct), r => Assert.Equal("recorded", r!["outcome"]!.GetValue<string>()));
        await RunningFleet.UntilAsync("the findings", () => Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    /// <summary>One thing.</summary>
    public async Task<JsonObject> OneAsync(string path) => (await Fleet.Http.GetFromJsonAsync<JsonObject>(path, Ct))!;

    /// <summary>The items of a list's page.</summary>
    public async Task<JsonArray> ItemsAsync(string path) => (await OneAsync(path))["items"]!.AsArray();

    /// <summary>The fields that a request is refused for, each with its first message.</summary>
    public async Task<IReadOnlyDictionary<string, string>> RefusedAsync(string path)
    {
        using var response = await Fleet.Http.GetAsync(path, Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
        var problem = (await response.Content.ReadFromJsonAsync<JsonObject>(Ct))!;
        return problem["errors"]!.AsObject().ToDictionary(e => e.Key, e => e.Value![0]!.GetValue<string>(), StringComparer.Ordinal);
    }
}
