using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.Office;

public sealed class QuestionsPageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await BrowsedFleet.StartAsync(chromium, postgres, "questions_page");
        var dock = new DockRecords(23);
        await fleet.Fleet.SendAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 5500, 110), dock.Trial("tern", "2026-02-02T10:00:00", 550, 111)], Ct);
        await RunningFleet.UntilAsync("findings", () => fleet.Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_question_stands_with_the_records_it_is_about_until_somebody_answers_it()
    {
        var look = await (await fleet.SignedInAsync(Role.Mechanic)).NewPageAsync();
        await look.GotoAsync("/office/questions");
        Assert.Contains("Was it misread?", await look.InnerTextAsync("main"), StringComparison.Ordinal);
        Assert.Equal(0, await look.Locator("button[name=answer]").CountAsync());

        var page = await (await fleet.SignedInAsync(Role.Operator)).NewPageAsync();
        await page.GotoAsync("/office/questions");
        await Accessible.HoldsAsync(page);
        Assert.Contains("550 RPM", await page.InnerTextAsync(".entries"), StringComparison.Ordinal);
        await page.ClickAsync("button[value=corrected]");
        await page.WaitForSelectorAsync("text=it is not asked again");
        await page.WaitForSelectorAsync("text=No question is open");
        Assert.Contains("Question answered (rpm out of line): put right, or left out", await OnBoatAsync(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Somebody_reads_in_the_units_and_the_light_that_were_chosen()
    {
        var page = await (await fleet.SignedInAsync(Role.Operator)).NewPageAsync();
        await page.GotoAsync("/office/me");
        await Accessible.HoldsAsync(page);
        await page.SelectOptionAsync("#speed", "kilometres_per_hour");
        await page.SelectOptionAsync("#dates", "day_first");
        await page.SelectOptionAsync("#theme", "dark");
        await page.ClickAsync("main button");
        await page.WaitForSelectorAsync("text=Kept.");
        Assert.Equal("dark", await page.GetAttributeAsync("html", "data-theme"));
        var boat = await OnBoatAsync(page);
        Assert.Contains("48.2\u00A0km/h", boat, StringComparison.Ordinal);
        Assert.Contains("1 Feb 2026", boat, StringComparison.Ordinal);
        Assert.DoesNotContain("2026-02-01", boat, StringComparison.Ordinal);
    }

    private static async Task<string> OnBoatAsync(Microsoft.Playwright.IPage page)
    {
        await page.GotoAsync("/office/boats/tern");
        return (await page.TextContentAsync("main"))!;
    }
}
