using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class PropPagesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "prop_pages");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task The_list_tells_where_each_prop_is_and_is_narrowed_by_dock_standing_size_and_material()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/props");
        Assert.Equal(6, await page.Locator("table.list tbody tr").CountAsync());
        Assert.Contains("Gannet", await page.InnerTextAsync("tr:has-text('p-gannet')"), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "props");

        await page.SelectOptionAsync("#dock", "old-mole");
        await page.ClickAsync("form.filter button");
        Assert.Equal(["sk-11"], await TagsAsync(page));
        await page.GotoAsync("/office/props?standing=at_shop&material=stainless");
        Assert.Equal(["sk-12", "sk-13"], await TagsAsync(page));
        await page.GotoAsync("/office/props?size=11.5+%C3%97+12");
        Assert.Equal(["lent-1"], await TagsAsync(page));
        await page.GotoAsync("/office/props?q=nothing");
        Assert.Contains("No prop is like that", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task A_prop_tells_its_numbers_blade_by_blade_its_repitch_and_what_it_cost_to_who_may_know()
    {
        var page = await OpenAsync(Role.Manager, "/office/props/sk-13");
        var text = (await page.InnerTextAsync("main")).Replace('\u00A0', ' ');
        foreach (var said in (string[])["16.1 / 15.9 / 16 / 16.2 in", "repitched from 16.9 in to 16 in", "145.50 NZD", "Due back", "Not enough has worn out yet"])
            Assert.Contains(said, text, StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "prop");

        var mechanic = await OpenAsync(Role.Mechanic, "/office/props/sk-13");
        Assert.DoesNotContain("145", await mechanic.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(0, await mechanic.Locator("#form-cost, #form-retired").CountAsync());
        var mounted = await OpenAsync(Role.Mechanic, "/office/props/p-razorbill");
        Assert.Contains("bent, rock", await mounted.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Contains("Nothing is on record of a prop", await (await OpenAsync(Role.Analyst, "/office/props/nowhere")).InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_goes_to_the_shop_and_comes_back_and_nothing_typed_is_lost_on_the_way()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/props/sk-11");
        await page.ClickAsync("summary:has-text('Sent to a shop')");
        await page.FillAsync("#to-shop-shop", "skerry props");
        await page.FillAsync("#to-shop-pitchWantedInches", "13,000");
        await page.FillAsync("#to-shop-dueBackOn", "2030-01-01");
        await page.ClickAsync("#form-to-shop form button");
        Assert.Equal("13,000", await page.InputValueAsync("#to-shop-pitchWantedInches"));
        Assert.Contains("may be 13000 or 13.000", await page.InnerTextAsync("#to-shop-pitchWantedInches-why"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator("#to-shop-shop-why").CountAsync());
        Assert.Equal("to-shop-pitchWantedInches", await page.EvaluateAsync<string>("document.activeElement.id"));
        Assert.StartsWith("Not recorded", await page.TitleAsync(), StringComparison.Ordinal);
        Assert.True(await page.IsVisibleAsync(".not-recorded a[href='#to-shop-pitchWantedInches']"));
        Assert.Equal("2030-01-01", await page.InputValueAsync("#to-shop-dueBackOn"));
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "prop-refused");

        await page.FillAsync("#to-shop-shop", "skerry-props");
        await page.FillAsync("#to-shop-pitchWantedInches", "12,5");
        await page.ClickAsync("#form-to-shop form button");
        await page.WaitForURLAsync("**/office/props/sk-11?done=to-shop*");
        Assert.Contains("it is at the shop", await page.InnerTextAsync("[role=status]"), StringComparison.Ordinal);
        Assert.Contains("12.5 in wanted", await page.InnerTextAsync("main"), StringComparison.Ordinal);

        await page.ClickAsync("summary:has-text('Back from the shop')");
        await page.FillAsync("#from-shop-pitchInches", "12.6");
        await page.ClickAsync("#form-from-shop form button");
        await page.WaitForURLAsync("**done=from-shop*");
        Assert.Contains("11.5 × 12.6 in", (await page.InnerTextAsync("main")).Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Costs_are_told_and_a_prop_is_retired_by_who_may_decide()
    {
        var page = await OpenAsync(Role.Operator, "/office/props/sk-12?form=cost");
        await page.FillAsync("#cost-amount", "99,50");
        await page.FillAsync("#cost-currency", "nzd");
        await page.ClickAsync("#form-cost form button");
        await page.WaitForURLAsync("**done=cost*");
        Assert.Contains("99.50 NZD", (await page.InnerTextAsync("main")).Replace('\u00A0', ' '), StringComparison.Ordinal);
        await page.ClickAsync("summary:has-text('Retire it')");
        await page.SelectOptionAsync("#retired-why", "corroded");
        await page.ClickAsync("#form-retired form button");
        await page.WaitForURLAsync("**done=retired*");
        Assert.Equal(0, await page.Locator("#form-to-shop").CountAsync());

        var analyst = await OpenAsync(Role.Analyst, "/office/props/sk-11");
        Assert.Equal(0, await analyst.Locator("main form").CountAsync());
        foreach (var (role, status) in ((Role, int)[])[(Role.Analyst, 403), (Role.Operator, 400)])
        {
            // May not; and may, but from no form of ours.
            var other = await OpenAsync(role, "/office/props");
            var sent = await other.APIRequest.PostAsync("/office/props/sk-11/retired", new APIRequestContextOptions { Headers = [new("content-type", "application/x-www-form-urlencoded")], Data = "why=worn", MaxRedirects = 0 });
            Assert.Equal(status, sent.Status);
        }
    }

    private static async Task<IReadOnlyList<string>> TagsAsync(IPage page) => await page.Locator("table.list tbody th a").AllInnerTextsAsync();

    private async Task<IPage> OpenAsync(Role role, string path)
    {
        var page = await (await fleet.SignedInAsync(role)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
