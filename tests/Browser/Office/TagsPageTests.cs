using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

/// <summary>Tags for boats, engines and props come out of a printer on the paper that it has.</summary>
public sealed class TagsPageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await BrowsedFleet.StartAsync(chromium, postgres, "tags_page");
        var dock = new DockRecords();
        await fleet.Fleet.SendAsync([.. dock.Outfit("tern", "Tern"), .. dock.Outfit("skua", "Skua")], Ct);
        await RunningFleet.UntilAsync("the boats", () => fleet.Fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("Letter", 215.9, 279.4)]
    public async Task A_sheet_has_a_code_and_a_name_for_each_that_was_chosen_and_fits_its_paper(string paper, double width, double height)
    {
        var page = await (await fleet.SignedInAsync(Role.Mechanic)).NewPageAsync();
        await page.GotoAsync("/office/tags");
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "tags");
        await page.GetByLabel(paper).CheckAsync();
        await page.GetByLabel("All boats (2)").CheckAsync();
        await page.GetByText("Single ones").ClickAsync();
        await page.GetByLabel("11.5 x 13 in p-tern").CheckAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make the sheet" }).ClickAsync();

        await Assertions.Expect(page.Locator(".tags li")).ToHaveCountAsync(3);
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "QR code of boat Tern, tern" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".tags strong")).ToHaveTextAsync(["Skua", "Tern", "p-tern"]);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "tag-sheet");
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Print" })).ToBeHiddenAsync();
        var pdf = await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true });
        var box = System.Text.RegularExpressions.Regex.Match(System.Text.Encoding.Latin1.GetString(pdf), @"/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]");
        Assert.Equal((width, height), (Millimetres(box.Groups[1].Value), Millimetres(box.Groups[2].Value)), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.6 && Math.Abs(a.Item2 - b.Item2) < 0.6);
    }

    [Fact]
    public async Task Nothing_chosen_is_said_so()
    {
        var page = await (await fleet.SignedInAsync(Role.Mechanic)).NewPageAsync();
        await page.GotoAsync("/office/tags/sheet?paper=a4");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Nothing was chosen");
    }

    private static double Millimetres(string points) => double.Parse(points, System.Globalization.CultureInfo.InvariantCulture) / 72 * 25.4;
}
