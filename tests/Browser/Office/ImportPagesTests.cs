using System.Text;
using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class ImportPagesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private const string Header = "happened_at,boat,position,object,severity,hours";

    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoreRoom.StartAsync(chromium, postgres, "import_pages");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_table_is_looked_at_then_recorded_and_sent_again_it_changes_nothing()
    {
        var table = Table(
            "strike_reported.csv", Header,
            "2026-04-01 10:15,gannet,single,rock,chipped,",
            "2026-04-02 10:15,gannet,single,rock,very hard,",
            "2026-04-03 10:15,nobody-yet,single,wood,scuffed,",
            "2026-04-04 10:15,gannet,single,\"'><script>document.title='taken'</script>\",bent,");
        var page = await OpenAsync(Role.Operator, "/office/import");
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "import");
        await SendAsync(page, table);
        await page.WaitForSelectorAsync("text=Record them");
        Assert.Equal([("Recorded", "1"), ("Recorded, and held", "1"), ("Recorded before", "0"), ("Recorded before with other content", "0"), ("Refused", "2")], await CountsAsync(page));
        var bad = await page.InnerTextAsync("section:has(#bad)");
        foreach (var said in (string[])["line 3", "severity", "very hard", "line 5"]) Assert.Contains(said, bad, StringComparison.Ordinal);
        Assert.Contains("nobody-yet", await page.InnerTextAsync("section:has(#first)"), StringComparison.Ordinal);
        Assert.NotEqual("taken", await page.TitleAsync());
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "import-preview");

        await page.ClickAsync("text=Record them");
        await page.WaitForSelectorAsync("h1:has-text('Imported')");
        Assert.Equal(("Recorded", "1"), (await CountsAsync(page))[0]);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "import-done");

        await page.GotoAsync("/office/import");
        await SendAsync(page, table);
        await page.WaitForSelectorAsync("text=Record them");
        Assert.Equal([("Recorded", "0"), ("Recorded, and held", "0"), ("Recorded before", "2")], (await CountsAsync(page)).Take(3));
        Assert.True(await page.IsDisabledAsync("main button"));
    }

    [Fact]
    public async Task A_file_that_is_no_such_table_is_told_beside_the_field_and_what_was_typed_stays()
    {
        var page = await OpenAsync(Role.Operator, "/office/import");
        await page.FillAsync("#by", "old-logbook");
        await SendAsync(page, Table("strike_reported.csv", "happened_at,boat,wings", "2026-04-01 10:15,gannet,2"));
        await page.WaitForSelectorAsync("#table-why");
        Assert.Contains("\"wings\" is no column", await page.InnerTextAsync("#table-why"), StringComparison.Ordinal);
        Assert.Equal("old-logbook", await page.InputValueAsync("#by"));
        await Accessible.HoldsAsync(page);
        await SendAsync(page, new FilePayload { Name = "strike_reported.csv", MimeType = "text/csv", Buffer = [.. "PK\u0003\u0004"u8, 0, 1, 2] });
        await page.WaitForSelectorAsync("text=it is a picture, an archive or a document");
        await SendAsync(page, Table("holidays.csv", Header));
        await page.WaitForSelectorAsync("#kind-why");
        Assert.Equal(1, await page.Locator("a[href='/office/import/trial_run.csv']").CountAsync());
        var empty = await page.APIRequest.GetAsync("/office/import/trial_run.csv");
        Assert.Contains("runs.2.speed", await empty.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_table_goes_in_by_steps_with_and_without_script_and_larger_ones_are_refused()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => $"2026-04-01 10:15,gannet,single,rock,chipped,{100 + (i / 10.0):0.0},k{i}");
        var page = await OpenAsync(Role.Administrator, "/office/import", new BrowserNewContextOptions { JavaScriptEnabled = false });
        await SendAsync(page, Table("strike_reported.csv", [Header + ",key", .. rows]));
        await page.WaitForSelectorAsync("text=Record them");
        await page.ClickAsync("text=Record them");
        while (await page.Locator("#go-on").CountAsync() > 0) await page.ClickAsync("#go-on button");
        Assert.Equal(("Recorded", "3,000"), (await CountsAsync(page))[0]);

        await page.GotoAsync("/office/import");
        var folder = Directory.CreateTempSubdirectory("fleetwake-large-");
        try
        {
            var large = Path.Combine(folder.FullName, "strike_reported.csv");
            await File.WriteAllBytesAsync(large, new byte[(20 * 1024 * 1024) + 10], Ct);
            await page.SetInputFilesAsync("#table", large);
            await page.ClickAsync("text=Look at it", new PageClickOptions { Timeout = 60_000 });
            await page.WaitForSelectorAsync("text=more than 20 MB", new PageWaitForSelectorOptions { Timeout = 60_000 });
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Who_may_not_bring_in_tables_does_not_see_the_page_and_another_persons_table_is_not_there()
    {
        Assert.Equal(403, (await (await OpenAsync(Role.Mechanic, "/office")).GotoAsync("/office/import"))!.Status);
        var page = await OpenAsync(Role.Operator, "/office/import");
        await SendAsync(page, Table("strike_reported.csv", Header, "2026-04-01 10:15,gannet,single,rock,chipped,"));
        await page.WaitForSelectorAsync("text=Record them");
        var other = await OpenAsync(Role.Manager, new Uri(page.Url).AbsolutePath);
        Assert.Contains("not here any more", await other.InnerTextAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_role_may_not_record_it_may_not_bring_in_by_a_table()
    {
        var page = await OpenAsync(Role.Operator, "/office/import");
        Assert.Equal(0, await page.Locator("option[value=role_given], option[value=price_set]").CountAsync());
        await SendAsync(page, Table("price_set.csv", "happened_at,what,amount,currency", "2026-04-01 10:15,labour_hour,5,NZD"));
        await page.WaitForSelectorAsync("#kind-why");
        await SendAsync(page, Table("retracted.csv", "happened_at,retracts,why,office", $"2026-04-01 10:15,{Guid.AllBitsSet},did_not_happen,yes"));
        await page.WaitForSelectorAsync("text=not for your role to record");
    }

    private static FilePayload Table(string name, params string[] lines) => new() { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n") };

    private static async Task SendAsync(IPage page, FilePayload table)
    {
        await page.SetInputFilesAsync("#table", table);
        await page.ClickAsync("text=Look at it");
    }

    private static async Task<IReadOnlyList<(string What, string N)>> CountsAsync(IPage page) =>
        [.. (await page.Locator("dl.facts dt").AllInnerTextsAsync()).Zip(await page.Locator("dl.facts dd").AllInnerTextsAsync())];

    private async Task<IPage> OpenAsync(Role role, string path, BrowserNewContextOptions? options = null)
    {
        var page = await (await fleet.SignedInAsync(role, options)).NewPageAsync();
        await page.GotoAsync(path);
        return page;
    }
}
