using FleetWake.Logbook.People;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

[Collection(SeenOffice.Name)]
public sealed class FleetPageTests(SeenOffice seen)
{
    private readonly BrowsedFleet fleet = seen.Fleet;

    [Fact]
    public async Task Every_boat_is_one_row_and_what_must_not_go_out_stands_first()
    {
        var page = await OpenAsync("/office");
        Assert.Equal("Fleet", await page.InnerTextAsync("h1"));
        Assert.Equal(4, await page.Locator("table.fleet tbody tr").CountAsync());
        var first = await page.InnerTextAsync("table.fleet tbody tr >> nth=0");
        Assert.Contains("Out", first, StringComparison.Ordinal);
        Assert.Contains("no prop on record", await page.InnerTextAsync("table.fleet tr:has-text('evil')"), StringComparison.Ordinal);
        var gannet = await page.InnerTextAsync("table.fleet tr:has-text('Gannet')");
        Assert.Contains("below the top", gannet, StringComparison.Ordinal);
        Assert.Contains("Skerry 50", gannet, StringComparison.Ordinal);
        Assert.Contains("1 open strike", await page.InnerTextAsync("table.fleet tr:has-text('Razorbill')"), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task Boats_are_chosen_by_dock_state_and_name_with_no_script_and_the_address_keeps_the_choice()
    {
        var page = await OpenAsync("/office", new BrowserNewContextOptions { JavaScriptEnabled = false });
        await page.FillAsync("#q", "gan");
        await page.ClickAsync("form.filter button");
        Assert.Equal(1, await page.Locator("table.fleet tbody tr").CountAsync());
        Assert.Contains("q=gan", page.Url, StringComparison.Ordinal);
        Assert.Equal("gan", await page.InputValueAsync("#q"));

        await page.GotoAsync("/office");
        await page.SelectOptionAsync("#hire", "out");
        await page.PressAsync("form.filter button", "Enter");
        Assert.Contains("Razorbill", await page.InnerTextAsync("table.fleet"), StringComparison.Ordinal);
        Assert.DoesNotContain("Gannet", await page.InnerTextAsync("table.fleet"), StringComparison.Ordinal);

        await page.GotoAsync("/office?dock=nowhere");
        Assert.Contains("No boat is like that", await page.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hostile_name_is_shown_and_does_nothing()
    {
        var page = await OpenAsync("/office");
        Assert.StartsWith("Fleet", await page.TitleAsync(), StringComparison.Ordinal);
        Assert.Contains("<script>", await page.InnerTextAsync("table.fleet"), StringComparison.Ordinal);
        await page.GotoAsync("/office?q=%22%3E%3Cscript%3Edocument.title%3D%27x%27%3C/script%3E");
        Assert.StartsWith("Fleet", await page.TitleAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_paper_it_is_a_table_without_the_places_and_the_form()
    {
        var page = await OpenAsync("/office");
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.False(await page.IsVisibleAsync("header.top"));
        Assert.False(await page.IsVisibleAsync("form.filter"));
        Assert.True(await page.IsVisibleAsync("table.fleet thead"));
    }

    [Fact]
    public async Task On_a_sheet_of_paper_a_boat_is_a_row_and_twenty_fit_on_a_page()
    {
        var page = await OpenAsync("/office");
        await page.SetViewportSizeAsync(1050, 720); // A4 lying, at 96 px an inch
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.Equal("table-row", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('table.fleet tbody tr')).display"));
        Assert.Equal("table-header-group", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('table.fleet thead')).display"));
        var height = await page.EvaluateAsync<double>("Math.min(...[...document.querySelectorAll('table.fleet tbody tr')].map(r => r.getBoundingClientRect().height))");
        Assert.True(height < 36, $"the row of a quiet boat is {height:0} px high on paper");
        await page.SetViewportSizeAsync(740, 1050);
        Assert.Equal("table-row", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('table.fleet tbody tr')).display"));
    }

    [Fact]
    public async Task On_a_phone_the_places_stand_in_one_line()
    {
        var page = await OpenAsync("/office");
        await page.SetViewportSizeAsync(360, 700);
        Assert.True(await page.EvaluateAsync<double>("document.querySelector('.top nav').getBoundingClientRect().height") < 60);
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task Nobody_sees_it_without_signing_in()
    {
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync("/office");
        Assert.Contains("/sign-in", page.Url, StringComparison.Ordinal);
    }

    private async Task<IPage> OpenAsync(string path, BrowserNewContextOptions? options = null)
    {
        var page = await (await fleet.SignedInAsync(Role.Manager, options)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
