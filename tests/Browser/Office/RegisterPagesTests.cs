using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class RegisterPagesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "register_pages");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_boat_comes_in_with_its_engine_and_what_was_wrong_is_reached_at_once()
    {
        var page = await OpenAsync("/office");
        await page.ClickAsync("text=New boat");
        await Accessible.HoldsAsync(page);
        await page.FillAsync("#registered-name", "Skua");
        await page.SelectOptionAsync("#registered-dock", "old-mole");
        await page.ClickAsync("main button");
        await page.WaitForURLAsync("**/office/boats/skua?done=registered");
        Assert.Contains("the boat is registered", await page.InnerTextAsync("[role=status]"), StringComparison.Ordinal);
        await page.ClickAsync("summary:has-text('An engine is hung')");
        await page.FillAsync("#engine-engine", "e-skua");
        await page.FillAsync("#engine-model", "Skerry 50");
        await page.FillAsync("#engine-bandLowRpm", "5000");
        await page.FillAsync("#engine-bandHighRpm", "600");
        await page.FillAsync("#engine-gearRatio", "2.08");
        await page.ClickAsync("#form-engine form button");
        Assert.Equal("engine-bandHighRpm", await page.EvaluateAsync<string>("document.activeElement.id"));
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "boat-refused");
        await page.FillAsync("#engine-bandHighRpm", "6000");
        await page.ClickAsync("#form-engine form button");
        await page.WaitForURLAsync("**done=engine*");
        Assert.Contains("5,000–6,000 RPM", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_prop_and_the_page_that_puts_a_record_right_are_usable_by_everybody()
    {
        var page = await OpenAsync("/office/props");
        await page.ClickAsync("text=New prop");
        await Accessible.HoldsAsync(page);
        await page.GotoAsync("/office/boats/razorbill");
        await page.ClickAsync(".timeline tr:has-text('Strike on rock') a.mend");
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "mend");
        await page.SelectOptionAsync("#take-back-why", "wrong_subject");
        await page.ClickAsync("#form-take-back button");
        await page.WaitForURLAsync("**/office/boats/razorbill?done=taken-back");
        Assert.Contains("it counts no more", await page.InnerTextAsync("[role=status]"), StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator(".timeline del:has-text('Strike on rock')").CountAsync());
        await Looks.AtAsync(page, "boat-mended");
    }

    private async Task<IPage> OpenAsync(string path)
    {
        var page = await (await fleet.SignedInAsync(Role.Manager)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
