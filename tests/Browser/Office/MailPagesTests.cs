using FleetWake.Logbook.People;

namespace FleetWake.Browser.Tests.Office;

/// <summary>The pages about what goes out by mail, and those that a link in a mail leads to.</summary>
[Collection(SeenOffice.Name)]
public sealed class MailPagesTests(SeenOffice seen)
{
    private readonly BrowsedFleet fleet = seen.Fleet;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_page_is_accessible_and_fits_a_small_phone()
    {
        await fleet.Fleet.SubscribeAsync("a.manager.with.a.very.long.name@skerry-bay-hire-and-charter.example", Ct);
        var page = await (await fleet.SignedInAsync(Role.Administrator)).NewPageAsync();
        foreach (var path in (string[])["/office/mail", "/office/templates", "/office/templates/due-list.html.liquid", "/office/analyst", "/office/analyst/2026-01", "/unsubscribe/of-no-matter", "/confirm/of-no-matter"])
        {
            await page.GotoAsync(path);
            await Looks.AtAsync(page, "mail" + path.Replace('/', '-'));

            // Nothing runs in the frame that shows a mail, and axe would wait for it without end.
            await page.EvaluateAsync("document.querySelector('iframe')?.remove()");
            await Accessible.HoldsAsync(page);
        }
    }

    [Fact]
    public async Task The_months_lead_to_a_pack_of_which_a_file_is_taken()
    {
        var page = await (await fleet.SignedInAsync(Role.Analyst)).NewPageAsync();
        await page.GotoAsync("/office");
        await page.ClickAsync("nav a:has-text('Month packs')");
        await page.ClickAsync("main li a >> nth=0");
        await page.WaitForURLAsync("**/office/analyst/2*");
        Assert.Equal(1, await page.Locator("nav a[aria-current=page]:has-text('Month packs')").CountAsync());
        var download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("main a:has-text('dictionary.csv')"));
        Assert.EndsWith("-dictionary.csv", download.SuggestedFilename, StringComparison.Ordinal);
    }
}
