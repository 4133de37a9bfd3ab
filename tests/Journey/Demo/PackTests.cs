using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.AnalystPack;
using FleetWake.Reports.Digests.DueList;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Pictures;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>The analyst's pack and the due list of the demo's fleet, made without a database.</summary>
public class PackTests
{
    private static readonly DateOnly February = new(2026, 2, 1);

    [Fact]
    public async Task The_month_holds_its_own_records_and_the_figures_that_go_with_them()
    {
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(DemoDays.Records[DemoDays.Usual]));
        var month = AnalystMonth.Of(logs, February, _ => FleetPriors.Trade);
        var records = month.Tables.Single(t => t.Name == "records");
        Assert.InRange(records.Rows.Count, 100, 20_000);
        Assert.All(records.Rows, r => Assert.Equal((2026, 2), (((DateOnly)r[3]!).Year, ((DateOnly)r[3]!).Month)));
        Assert.All(month.Tables, t => Assert.All(t.Rows, r => Assert.Equal(t.Columns.Count, r.Length)));
        Assert.Equal(month.Tables.Where(t => t.Name != "dictionary").Sum(t => t.Columns.Count), month.Tables[^1].Rows.Count);
        Assert.Equal(AnalystMonth.MonthsBack, month.Calibrations.Count);
        Assert.Equal(new DateOnly(2026, 1, 31), month.Calibrations[0].Made);

        var draft = await AnalystPackDigest.DraftAsync("Skerry Bay Hire", month, new Uri("https://office.example/"), TestContext.Current.CancellationToken);
        Assert.InRange(draft.Attachments.Sum(a => a.Bytes.Length), 1, AnalystPackDigest.MostBytes);
        var digest = new DigestRenderer(new PngRenderer(), null).Render(draft);
        Assert.Null(digest.WhyFallback);
        Look("analyst-pack", digest);
    }

    [Fact]
    public void The_due_list_holds_what_is_due()
    {
        IReadOnlyList<FleetWake.Logbook.Findings.BoatFinding> boats = [.. AssessedFleet.Of(DemoDays.Records[DemoDays.Usual]).Values];
        var content = DueListDigest.Build("Skerry Bay Hire", "2026-W12", DemoDays.Usual, boats, MailNames.None);
        var sections = content.Docks.SelectMany(d => d.Sections).ToList();
        Assert.Equal(DueListDigest.Items(DemoDays.Usual, boats, null).Count, sections.Where(s => s.Title != "Stays until released").Sum(s => s.Tasks.Count));
        Assert.Contains(sections, s => s.Title == "Stays until released" && s.Tasks.Any(t => t.Boat == "Cormorant"));
        Look("due-list", new DigestRenderer(new PngRenderer(), null).Render(DueListDraft.Of(content, "skerry-bay", "Pacific/Auckland", DueListDigest.Items(DemoDays.Usual, boats, null).Select(d => d.Item), DateTimeOffset.UnixEpoch, MailNames.None)));
    }

    // LOOK_AT names a folder to put them in, for a person who wants to see them.
    private static void Look(string name, FleetWake.Reports.Digests.RenderedDigest digest)
    {
        if (Environment.GetEnvironmentVariable("LOOK_AT") is not { } folder) return;
        var html = digest.Html;
        foreach (var p in digest.Pictures)
        {
            File.WriteAllBytes(Path.Combine(folder, $"{name}-{p.FileName}"), p.Png);
            html = html.Replace("cid:" + p.ContentId, $"{name}-{p.FileName}", StringComparison.Ordinal);
        }

        File.WriteAllText(Path.Combine(folder, $"{name}.html"), html);
        File.WriteAllText(Path.Combine(folder, $"{name}.txt"), digest.Text);
        foreach (var file in digest.Attachments) File.WriteAllBytes(Path.Combine(folder, $"{name}-{file.FileName}"), file.Bytes);
    }
}
