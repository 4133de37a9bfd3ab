using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class StorePagesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "store_pages");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task What_is_overdue_at_a_shop_stands_first_and_leads_to_the_form_for_its_return()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/shop");
        var away = await page.Locator("section:has(#away) tbody tr").AllInnerTextsAsync();
        Assert.Equal(2, away.Count);
        Assert.Contains("sk-12", away[0], StringComparison.Ordinal);
        Assert.Contains("days overdue", away[0], StringComparison.Ordinal);
        Assert.Contains("lent-1", await page.InnerTextAsync("section:has(#loaners)"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator("#costs").CountAsync());
        await Accessible.HoldsAsync(page);

        var operatorsPage = await OpenAsync(Role.Operator, "/office/shop");
        Assert.Contains("145.50 NZD", (await operatorsPage.InnerTextAsync("section:has(#costs)")).Replace('\u00A0', ' '), StringComparison.Ordinal);
        await Looks.AtAsync(operatorsPage, "shop");
        await page.ClickAsync("tr:has-text('sk-12') >> text=It is back");
        await page.WaitForURLAsync("**form=from-shop*");
        Assert.True(await page.Locator("#from-shop-pitchInches").IsVisibleAsync());
    }

    [Fact]
    public async Task Spares_stand_by_size_and_dock_with_what_to_hold_for_the_lead_time_asked_for()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/spares?days=21&level=90&season=2");
        Assert.Equal("21", await page.InputValueAsync("#days"));
        var row = await page.InnerTextAsync("table.spares tr:has-text('11.5 × 13')");
        Assert.Contains("Old Mole", row, StringComparison.Ordinal);
        Assert.Contains("sk-11", row, StringComparison.Ordinal);
        Assert.NotEqual("taken", await page.TitleAsync());
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "spares");

        await page.GotoAsync("/office/spares?days=9000");
        Assert.Equal("true", await page.GetAttributeAsync("#days", "aria-invalid"));
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task A_part_is_counted_and_a_wrong_number_is_told_beside_its_field()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/spares");
        await page.ClickAsync("tr:has-text('Cotter pin') >> text=Count it");
        await page.WaitForURLAsync("**form=counted*");
        Assert.Equal("pin-3x25", await page.InputValueAsync("#counted-part"));
        Assert.Equal("old-mole", await page.InputValueAsync("#counted-dock"));
        await page.FillAsync("#counted-quantity", "many");
        await page.ClickAsync("#form-counted form button");
        Assert.Equal("many", await page.InputValueAsync("#counted-quantity"));
        Assert.Contains("no whole number", await page.InnerTextAsync("#counted-quantity-why"), StringComparison.Ordinal);
        await page.FillAsync("#counted-quantity", "41");
        await page.ClickAsync("#form-counted form button");
        await page.WaitForURLAsync("**/office/spares?done=counted*");
        Assert.Contains("41", await page.InnerTextAsync("tr:has-text('Cotter pin')"), StringComparison.Ordinal);
        Assert.Contains("counted 20", await page.InnerTextAsync("tr:has-text('Cotter pin')"), StringComparison.Ordinal);
    }

    private async Task<IPage> OpenAsync(Role role, string path)
    {
        var page = await (await fleet.SignedInAsync(role)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
