using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>Old Mole with a phone that is enrolled, a boat that struck, and one of another dock.</summary>
public sealed class TodayFleet(PostgresFixture postgres) : IAsyncLifetime
{
    internal DockRecords Dock { get; } = new();

    internal ShiftedTime Time { get; } = ShiftedTime.From(new DateTimeOffset(2026, 6, 6, 20, 0, 0, TimeSpan.Zero));

    internal RunningFleet Fleet { get; private set; } = null!;

    internal DockPhone Phone { get; private set; } = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        Fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("today", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), Time, ct: Ct);
        await SendAsync(
        [
            new OpenDock(Dock.At("2026-01-01T08:00:00"), "old-mole", "Old Mole", RunningFleet.Zone, "salt", "rock"),
            .. Dock.Outfit("tern", "Tern"),
            new StateFastening(Dock.At("2026-01-01T09:10:00"), "e-tern", "castle_nut_cotter_pin", 25, 30, "pound_force_foot", 2, true),
            new StateEngineFit(Dock.At("2026-01-01T09:10:00"), "e-tern", SplineTeeth: 13, Rotation: "right", LargestDiameterInches: 12),
            .. Enumerable.Range(1, 4).Select(i => Dock.Trial("tern", $"2026-0{i}-20T10:00:00", 5600 + (10 * i), 95 + (10 * i)) with { AirTemperatureCelsius = 18, PressureHectopascals = 1009, HumidityPercent = 70 }),
            new RegisterProp(Dock.At("2026-03-01T09:00:00"), "spare-13", 11.5, 13, 3, "stainless", "right"),
            new StoreProp(Dock.At("2026-03-01T09:05:00"), "spare-13", "old-mole"),
            new StockPart(Dock.At("2026-01-01T08:00:00"), "pin-3x25", "cotter_pin", "old-mole", 12),
            new ReportStrike(Dock.At("2026-06-05T10:00:00"), "tern", "single", "rock", "bent"),
            new RegisterBoat(Dock.At("2026-01-01T09:00:00"), "far", "Fulmar", "new-mole", RunningFleet.Zone, "fresh", ["single"]),
        ]);
        Phone = await DockPhone.EnrolledAsync(Fleet);
    }

    public async ValueTask DisposeAsync()
    {
        Phone.Dispose();
        await Fleet.DisposeAsync();
    }

    internal async Task<JsonObject> TodayAsync() => (await Phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/today", Ct))!;

    internal async Task SendAsync(IEnumerable<ICommand> records)
    {
        Assert.All(await Fleet.SendAsync(records, Ct), r => Assert.Equal("recorded", r!["outcome"]!.GetValue<string>()));
        await RunningFleet.UntilAsync("the findings", () => Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }
}
