using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Office;
using Ical.Net;

namespace FleetWake.Journey.Tests.Api;

/// <summary>
/// Two strikes of one position, day and severity on tern; and skua, struck once, whose prop and engine both went to knot. What looks
/// alike is still shown one by one.
/// </summary>
public sealed class StrikesAlikeTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("alike", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ReadingFleet.Autumn(), ct: Ct);
        await fleet.SendAsync(
        [
            .. dock.Outfit("tern", "Tern"), .. dock.Outfit("skua", "Skua"), .. dock.Outfit("knot", "Knot"),
            new ReportStrike(dock.At("2026-03-02T10:00:00"), "tern", "single", "rock", "bent"),
            new ReportStrike(dock.At("2026-03-02T15:00:00"), "tern", "single", "rock", "bent"),
            new ReportStrike(dock.At("2026-03-02T10:00:00"), "skua", "single", "rock", "bent"),
            new RemoveProp(dock.At("2026-03-05T09:00:00"), "skua", "single", "struck"),
            new RemoveProp(dock.At("2026-03-05T09:00:00"), "knot", "single", "other_size"),
            new RemoveEngine(dock.At("2026-03-05T09:10:00"), "skua", "single"),
            new RemoveEngine(dock.At("2026-03-05T09:10:00"), "knot", "single"),
            new FitEngine(dock.At("2026-03-05T09:30:00"), "knot", "single", "e-skua", 90),
            new MountProp(dock.At("2026-03-05T10:00:00"), "knot", "single", "p-skua", 90),
        ], Ct);
        await RunningFleet.UntilAsync("the findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task Pages_of_one_hold_both_strikes_and_the_calendar_holds_what_a_prop_and_an_engine_brought()
    {
        var seen = new List<string>();
        for (string? after = ""; after is not null;)
        {
            var page = (await fleet.Http.GetFromJsonAsync<JsonObject>($"/api/due?kind=after_strike_inspection&boat=tern&limit=1{after}", Ct))!;
            seen.AddRange(page["items"]!.AsArray().Select(i => i!["strike"]!.GetValue<string>()));
            after = page["next"] is { } next ? "&after=" + next.GetValue<string>() : null;
        }

        Assert.Equal(2, seen.Distinct(StringComparer.Ordinal).Count());

        var key = await fleet.Service<FleetOperators>().MakeKeyAsync(RunningFleet.Operator, "calendar", [KeyScope.Calendar], Ct);
        var events = Calendar.Load(await fleet.Http.GetStringAsync(DueCalendar.PathOf(key), Ct))!.Events;
        Assert.Equal(2, events.Count(e => e.Summary!.EndsWith("Knot: inspection after a strike", StringComparison.Ordinal)));
        Assert.Equal(events.Count, events.Select(e => e.Uid).Distinct().Count());
        Assert.All(events, e => Assert.StartsWith(RunningFleet.Operator, e.Uid, StringComparison.Ordinal));
    }
}
