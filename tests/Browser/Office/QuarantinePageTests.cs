using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Histories;
using FleetWake.Store.Quarantine;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

/// <summary>Somebody in the office decides on each entry that a revoked phone brought.</summary>
public sealed class QuarantinePageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await BrowsedFleet.StartAsync(chromium, postgres, "quarantine_page");
        await fleet.Fleet.SendAsync(dock.Outfit("tern", "Tern"), Ct);
        await RunningFleet.UntilAsync("the boat", () => fleet.Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        await KeepAsync(new ReportStrike(dock.At("2026-06-06T10:00:00"), "tern", "single", "rock", "bent"));
        await KeepAsync(new ReportStrike(dock.At("2026-06-07T10:00:00"), "tern", "single", "wood", "very_hard"));
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task Each_entry_is_told_in_words_and_let_through_or_left_out()
    {
        var page = await (await fleet.SignedInAsync(Role.Operator)).NewPageAsync();
        await page.GotoAsync("/office/quarantine");
        await Assertions.Expect(page.GetByText("2 entries wait.")).ToBeVisibleAsync();
        await Accessible.HoldsAsync(page);

        var rock = page.Locator(".kept > li").Filter(new LocatorFilterOptions { HasText = "rock" });
        await Assertions.Expect(rock.GetByRole(AriaRole.Heading)).ToHaveTextAsync("Strike reported: Tern");
        await Assertions.Expect(rock).ToContainTextAsync("Told by mech-1 for 2026-06-06 10:00:00");
        await rock.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Let through" }).ClickAsync();
        await Assertions.Expect(rock).ToContainTextAsync("Let through by Some Operator");
        await Assertions.Expect(rock.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);

        var wood = page.Locator(".kept > li").Filter(new LocatorFilterOptions { HasText = "wood" });
        await wood.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Let through" }).ClickAsync();
        await Assertions.Expect(wood.Locator(".wrong")).ToContainTextAsync("It could not be let through: severity");
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "quarantine");
        await wood.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Leave out" }).ClickAsync();
        await Assertions.Expect(wood).ToContainTextAsync("It can still be let through.");
        await Assertions.Expect(page.GetByText("Nothing waits.")).ToBeVisibleAsync();

        await RunningFleet.UntilAsync("the log", () => fleet.Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        Assert.Single((await fleet.Fleet.Service<FleetReading>().LogAsync(RunningFleet.Operator, "tern", Ct))!.Facts.OfType<StrikeReported>());
    }

    [Fact]
    public async Task Another_sites_form_is_not_heard()
    {
        var window = await fleet.SignedInAsync(Role.Operator);
        var entry = (await fleet.Fleet.Service<QuarantineBook>().OfAsync(RunningFleet.Operator, 1, Ct))[0].Entry;
        var answer = await window.APIRequest.PostAsync($"{fleet.Url}/office/quarantine/{entry}/release");
        Assert.Equal(400, answer.Status);
        Assert.Equal(2, await fleet.Fleet.Service<QuarantineBook>().WaitingAsync(RunningFleet.Operator, Ct));
    }

    private async Task KeepAsync(ICommand record)
    {
        var answer = await fleet.Fleet.Service<QuarantineBook>().KeepAsync(
            RunningFleet.Operator, RecordKind.Find(BatchJson.Kind(record))!, record, BatchJson.Write(record).ToJsonString(), new Arrival("phone-9", TimeProvider.System.GetUtcNow(), null), Ct);
        Assert.Equal(Store.Records.Outcome.KeptBack, answer.Outcome);
    }
}
