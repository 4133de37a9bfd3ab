using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class ClaimsPagesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "claims_pages");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_claim_is_opened_costed_and_closed_and_its_statement_says_what_the_record_holds()
    {
        var page = await OpenAsync(Role.Manager, "/office/claims");
        Assert.Contains("No claim was ever opened", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await page.SelectOptionAsync("#boat", "razorbill");
        await page.ClickAsync("text=Go on");
        await page.WaitForURLAsync("**boat=razorbill*");
        await page.FillAsync("#opened-hire", "no blanks please");
        await page.SelectOptionAsync("#opened-strike", new SelectOptionValue { Index = 1 });
        await page.FillAsync("#opened-deposit", "500");
        Assert.Equal("NZD", await page.InputValueAsync("#opened-depositCurrency"));
        await page.FillAsync("#opened-depositCurrency", "");
        await page.ClickAsync("text=Open this claim");
        Assert.Equal("no blanks please", await page.InputValueAsync("#opened-hire"));
        Assert.Contains("give the currency", await page.InnerTextAsync("#opened-depositCurrency-why"), StringComparison.Ordinal);
        Assert.NotEqual("", await page.InputValueAsync("#opened-strike"));
        await Accessible.HoldsAsync(page);
        await page.FillAsync("#opened-hire", "hire-90");
        await page.FillAsync("#opened-depositCurrency", "NZD");
        await page.FillAsync("#opened-deadline", "2030-06-01");
        await page.ClickAsync("text=Open this claim");
        await page.WaitForURLAsync("**done=opened*");
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "claims");

        await page.ClickAsync("tbody a:has-text('Razorbill')");
        await page.WaitForURLAsync("**/statement");
        var text = await page.InnerTextAsync("article");
        foreach (var said in (string[])["Found at return of hire hire-90 on 2026-03-01", "bent", "the fitting of prop p-razorbill", "A short look after a hire that saw damage", "No estimate or invoice is on record"])
            Assert.Contains(said, text, StringComparison.OrdinalIgnoreCase);

        await page.ClickAsync("summary:has-text('Estimate or invoice')");
        await page.FillAsync("#costed-amount", "640");
        await page.ClickAsync("#form-costed form button");
        await page.WaitForURLAsync("**done=costed*");
        Assert.Contains("640 NZD", (await page.InnerTextAsync("article")).Replace('\u00A0', ' '), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "statement");

        await page.ClickAsync("summary:has-text('Close it')");
        await page.ClickAsync("#form-closed form button");
        Assert.Contains("give the amount", await page.InnerTextAsync("#closed-amount-why"), StringComparison.Ordinal);
        await page.FillAsync("#closed-amount", "500");
        await page.ClickAsync("#form-closed form button");
        await page.WaitForURLAsync("**done=closed*");
        Assert.Contains("500 NZD", (await page.InnerTextAsync("article")).Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mechanic_sees_no_claims_and_an_unknown_one_is_not_here()
    {
        Assert.Equal(403, (await (await OpenAsync(Role.Mechanic, "/office")).GotoAsync("/office/claims"))!.Status);
        var page = await OpenAsync(Role.Analyst, "/office/claims");
        Assert.Equal(0, await page.Locator("main form").CountAsync());
        var nowhere = (await page.GotoAsync($"/office/claims/{Guid.AllBitsSet}/statement"))!;
        Assert.Equal(404, nowhere.Status);
        await page.GotoAsync("/office/claims?boat=evil");
        Assert.NotEqual("taken", await page.TitleAsync());
    }

    private async Task<IPage> OpenAsync(Role role, string path)
    {
        var page = await (await fleet.SignedInAsync(role)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
