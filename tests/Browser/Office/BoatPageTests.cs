using FleetWake.Logbook.People;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

[Collection(SeenOffice.Name)]
public sealed class BoatPageTests(SeenOffice seen)
{
    private readonly BrowsedFleet fleet = seen.Fleet;

    [Fact]
    public async Task A_boat_tells_how_it_wears_in_words_and_in_a_drawing_that_is_words_too()
    {
        var page = await OpenAsync(Role.Manager, "/office/boats/gannet");
        Assert.Equal("Gannet", await page.InnerTextAsync("h1"));
        var text = (await page.InnerTextAsync("main")).Replace('\u00A0', ' ');
        foreach (var said in (string[])["Margin", "Drift", "RPM per 100 h", "Band exit", "Nut torque", "25 lbf ft (33.9 N m)", "Mountings", "still on"]) Assert.Contains(said, text, StringComparison.Ordinal);
        var chart = page.Locator("svg.wide-chart");
        Assert.True(await chart.IsVisibleAsync());
        Assert.Contains("Gannet", (await page.TextContentAsync("svg.wide-chart desc"))!, StringComparison.Ordinal);
        Assert.True(await chart.Locator("g.point").CountAsync() >= 8);
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task A_part_of_the_chart_is_shown_with_and_without_script()
    {
        foreach (var script in (bool[])[false, true])
        {
            var page = await OpenAsync(Role.Analyst, "/office/boats/gannet", new BrowserNewContextOptions { JavaScriptEnabled = script });
            await page.FillAsync("form.zoom input[name=from]", "150");
            await page.FillAsync("form.zoom input[name=to]", "220");
            await page.ClickAsync("form.zoom button");
            await page.WaitForURLAsync(u => u.Contains("from=150", StringComparison.Ordinal), new PageWaitForURLOptions { WaitUntil = WaitUntilState.Commit });
            await page.WaitForSelectorAsync("form.zoom a");
            Assert.Equal(3, await page.Locator("svg.wide-chart g.point").CountAsync());
            await page.ClickAsync("form.zoom a");
            await page.WaitForSelectorAsync("form.zoom a", new PageWaitForSelectorOptions { State = WaitForSelectorState.Detached });
            Assert.Equal(8, await page.Locator("svg.wide-chart g.point").CountAsync());
        }
    }

    [Fact]
    public async Task The_keyboard_alone_takes_a_boat_out_of_hire_and_puts_it_back()
    {
        var page = await OpenAsync(Role.Mechanic, "/office/boats/gannet");
        Assert.Contains("In hire", await page.InnerTextAsync(".boat-head"), StringComparison.Ordinal);
        await TabToAsync(page, "Take out of hire");
        await page.Keyboard.PressAsync("Enter");
        await TabToAsync(page, "Why");
        await page.Keyboard.TypeAsync("Service");
        await TabToAsync(page, "Take out of hire");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForSelectorAsync(".boat-head .state.out");
        Assert.Contains("Taken out of hire", await page.InnerTextAsync(".timeline"), StringComparison.Ordinal);
        Assert.Contains("(service)", await page.InnerTextAsync(".boat-head"), StringComparison.Ordinal);

        await TabToAsync(page, "Put back in hire");
        await page.Keyboard.PressAsync("Enter");
        await TabToAsync(page, "On what grounds");
        await TabToAsync(page, "Put back in hire");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForSelectorAsync(".boat-head .state.in");
    }

    [Fact]
    public async Task Who_may_only_look_is_offered_no_button_and_cannot_send_one()
    {
        var page = await OpenAsync(Role.Analyst, "/office/boats/razorbill");
        Assert.Contains("Released by", await page.InnerTextAsync(".boat-head"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator(".hire-forms").CountAsync());
        var sent = await page.APIRequest.PostAsync("/office/boats/razorbill/back-in-hire", new APIRequestContextOptions { Headers = [new("content-type", "application/x-www-form-urlencoded")], Data = "why=office", MaxRedirects = 0 });
        Assert.Equal(403, sent.Status);
    }

    [Fact]
    public async Task Names_that_mean_harm_and_long_ones_are_shown_as_they_are_and_do_nothing()
    {
        foreach (var boat in (string[])["evil", "plover"])
        {
            var page = await OpenAsync(Role.Operator, $"/office/boats/{boat}");
            Assert.NotEqual("taken", await page.TitleAsync());
            await Accessible.HoldsAsync(page);
        }

        var nowhere = await OpenAsync(Role.Operator, "/office/boats/nowhere");
        Assert.Contains("Nothing is on record", await nowhere.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task As_known_on_a_day_leaves_out_what_came_later_and_says_so()
    {
        var page = await OpenAsync(Role.Analyst, "/office/boats/gannet?known=2026-01-15");
        Assert.Contains("As known on 2026-01-15", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator(".timeline tbody tr").CountAsync());
        await page.ClickAsync("form.known a");
        Assert.NotEqual(0, await page.Locator(".timeline tbody tr").CountAsync());
    }

    private static async Task TabToAsync(IPage page, string name)
    {
        for (var i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            var at = await page.EvaluateAsync<string>("(() => { const e = document.activeElement; return (e.labels?.[0] ?? e).innerText?.trim() ?? ''; })()");
            if (at == name) return;
        }

        Assert.Fail($"\"{name}\" is not reached by the keyboard");
    }

    private async Task<IPage> OpenAsync(Role role, string path, BrowserNewContextOptions? options = null)
    {
        var page = await (await fleet.SignedInAsync(role, options)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
