using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class RulesPageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "rules_page");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task The_usual_rules_are_shown_as_such_and_one_is_switched_off_and_changed()
    {
        var page = await OpenAsync(Role.Manager);
        var row = page.Locator("tr:has-text('six-monthly')");
        Assert.Contains("usual", await row.InnerTextAsync(), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "rules");
        await row.Locator("text=Switch off").ClickAsync();
        await page.WaitForURLAsync("**form=rule*");
        Assert.DoesNotContain("Switched off", await row.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("due nowhere", await page.InnerTextAsync("#form-rule"), StringComparison.Ordinal);
        await page.ClickAsync("#form-rule form button");
        await page.WaitForURLAsync("**done=rule*");
        Assert.Contains("Switched off", await row.InnerTextAsync(), StringComparison.Ordinal);

        await row.Locator("text=Change").ClickAsync();
        await page.WaitForURLAsync("**form=rule*");
        Assert.Equal("6", await page.InputValueAsync("#rule-months"));
        await page.FillAsync("#rule-months", "99");
        await page.SelectOptionAsync("#rule-off", "");
        await page.ClickAsync("#form-rule form button");
        Assert.Equal("99", await page.InputValueAsync("#rule-months"));
        Assert.NotEqual("", await page.InnerTextAsync("#rule-months-why"));
        await page.FillAsync("#rule-months", "3");
        await page.ClickAsync("#form-rule form button");
        await page.WaitForURLAsync("**done=rule*");
        Assert.Contains("every 3 months", await row.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("set by you", await row.InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hire_table_a_dock_a_price_and_a_schedule_are_set()
    {
        var page = await OpenAsync(Role.Manager);
        await page.SelectOptionAsync("select[name='strike.scuffed.stainless']", "out");
        await page.ClickAsync("text=Set this table");
        await page.WaitForURLAsync("**done=hire*");
        Assert.Equal("out", await page.InputValueAsync("select[name='strike.scuffed.stainless']"));
        Assert.Equal("look_first", await page.InputValueAsync("select[name='strike.scuffed.aluminium']"));

        await page.ClickAsync("summary:has-text('Add or change a dock')");
        await page.FillAsync("#dock-dock", "slip");
        await page.FillAsync("#dock-name", "The Slip");
        await page.FillAsync("#dock-zone", "Pacific/Nowhere");
        await page.ClickAsync("#form-dock form button");
        Assert.NotEqual("", await page.InnerTextAsync("#dock-zone-why"));
        Assert.Equal("The Slip", await page.InputValueAsync("#dock-name"));
        await page.FillAsync("#dock-zone", "Pacific/Auckland");
        await page.ClickAsync("#form-dock form button");
        await page.WaitForURLAsync("**done=dock*");
        Assert.Contains("The Slip", await page.InnerTextAsync("section:has(#docks)"), StringComparison.Ordinal);

        await page.ClickAsync("tr:has-text('An hour of labour') >> text=New price");
        await page.WaitForURLAsync("**form=price*");
        await page.FillAsync("#price-amount", "92.5");
        await page.ClickAsync("#form-price form button");
        await page.WaitForURLAsync("**done=price*");
        Assert.Contains("92.50 NZD", (await page.InnerTextAsync("section:has(#prices)")).Replace('\u00A0', ' '), StringComparison.Ordinal);

        await page.ClickAsync("summary:has-text('Other days or times')");
        await page.UncheckAsync("input[name=weekdays][value=monday]");
        await page.CheckAsync("input[name=weekdays][value=friday]");
        await page.FillAsync("#schedule-localTime", "07:15");
        await page.ClickAsync("#form-schedule form button");
        await page.WaitForURLAsync("**done=schedule*");
        Assert.Contains("Friday at 07:15", await page.InnerTextAsync("section:has(#schedules)"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_may_only_read_them_is_offered_no_form()
    {
        var page = await OpenAsync(Role.Mechanic);
        Assert.Equal(0, await page.Locator("main form").CountAsync());
        Assert.Equal(0, await page.Locator("#prices, #schedules").CountAsync());
        Assert.NotEqual("taken", await page.TitleAsync());
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task On_a_phone_each_part_is_folded_under_its_name_and_opens_where_a_form_is_asked_for()
    {
        var page = await OpenAsync(Role.Manager);
        Assert.True(await page.IsVisibleAsync("#docks"));
        await page.SetViewportSizeAsync(390, 780);
        Assert.False(await page.IsVisibleAsync("form[action='/office/rules/hire']"));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollHeight") < 1200);
        await page.ClickAsync("summary:has-text('Docks')");
        await page.ClickAsync("tr:has-text('Old Mole') >> text=Change");
        await page.WaitForURLAsync("**form=dock*");
        Assert.True(await page.IsVisibleAsync("#dock-zone"));
        await Accessible.HoldsAsync(page);
    }

    private async Task<IPage> OpenAsync(Role role)
    {
        var page = await (await fleet.SignedInAsync(role)).NewPageAsync();
        await page.GotoAsync("/office/rules");
        return page;
    }
}
