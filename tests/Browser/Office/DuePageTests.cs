using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class DuePageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await OfficeFleet.StartAsync(chromium, postgres, "due_page");
        await fleet.Fleet.SendAsync([new SetInspectionRule(new DockRecords(22).At("2026-01-01T08:00:00"), "grease", "grease the shaft", "interval", "duty_done", 1)], Ct);
        await RunningFleet.UntilAsync("the rule", async () => (await fleet.Fleet.Service<FleetReading>().PolicyAsync(RunningFleet.Operator, Ct)).Rules.Any(r => r.Id == "grease"), Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task What_is_due_stands_by_dock_and_somebody_takes_it_and_does_it()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/due");
        await Accessible.HoldsAsync(page);
        Assert.Contains("inspection after a strike", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.ClickAsync("button[aria-label='Take: inspection after a strike, Razorbill']");
        await page.WaitForSelectorAsync("text=Taken by you");

        await page.SelectOptionAsync("#whose", "mine");
        await page.ClickAsync("form.filter button");
        Assert.Equal(1, await page.Locator(".duties li").CountAsync());

        await page.GotoAsync("/office/due?boat=gannet");
        var before = await page.Locator(".duties li:has-text('grease the shaft')").CountAsync();
        Assert.Equal(1, before);
        await page.ClickAsync(".duties li:has-text('grease the shaft') a.button");
        await Accessible.HoldsAsync(page);
        await page.FillAsync("#hours", "many");
        await page.ClickAsync("main button");
        Assert.Equal("many", await page.InputValueAsync("#hours"));
        Assert.Contains("as the meter shows", await page.InnerTextAsync("#hours-wrong"), StringComparison.Ordinal);
        await page.FillAsync("#hours", "300.5");
        await page.ClickAsync("main button");
        await page.WaitForURLAsync("**/office/due");
        await page.GotoAsync("/office/due?boat=gannet&when=overdue");
        Assert.Equal(0, await page.Locator(".duties li:has-text('grease the shaft')").CountAsync());
    }

    [Fact]
    public async Task A_calendar_has_an_address_that_opens_nothing_else_and_a_new_one_ends_the_old()
    {
        var page = await OpenAsync(Role.Analyst, "/office/due");
        Assert.Equal(0, await page.Locator("button[name=take]").CountAsync());
        await page.ClickAsync("text=Make my address");
        var address = await page.InputValueAsync("#cal-all");
        Assert.Contains("Razorbill", await (await page.APIRequest.GetAsync(address)).TextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("Razorbill", await (await page.APIRequest.GetAsync(await page.InputValueAsync("#cal-mine"))).TextAsync(), StringComparison.Ordinal);
        await page.GotoAsync("/office/due");
        await page.ClickAsync("text=Make my address");
        Assert.Equal(404, (await page.APIRequest.GetAsync(address)).Status);
    }

    private async Task<IPage> OpenAsync(Role role, string path)
    {
        var page = await (await fleet.SignedInAsync(role)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
