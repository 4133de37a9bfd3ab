using System.Text;
using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Tests.Digests;

public class DigestRendererTests
{
    private static readonly DigestRenderer Renderer = new(new PngRenderer());
    private static readonly WeeklyWearContent Fleet = WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, SkerryBay.Fleet());

    [Fact]
    public void The_fleet_is_laid_out_by_the_templates()
    {
        var digest = Renderer.Render(WeeklyWearDraft.Of(Fleet));
        Assert.Null(digest.WhyFallback);
        Assert.False(digest.UsedFallback);
        Assert.Equal(Fleet.Subject, digest.Subject);
        foreach (var said in Everything(Fleet))
        {
            Assert.Contains(Flat(said), Flat(Body(digest.Html)), StringComparison.Ordinal);
            Assert.Contains(Flat(said), Flat(digest.Text), StringComparison.Ordinal);
        }

        LookAt(digest);
    }

    [Fact]
    public void Every_picture_has_its_statement_as_alternative_text_and_is_shown_once()
    {
        var digest = Renderer.Render(WeeklyWearDraft.Of(Fleet));
        var images = new HtmlParser().ParseDocument(digest.Html).QuerySelectorAll("img");
        Assert.Equal(digest.Pictures.Select(p => ("cid:" + p.ContentId, p.Alt)), images.Select(i => (i.GetAttribute("src")!, i.GetAttribute("alt")!)));
        Assert.Equal(5, images.Length); // four boats, and the strip of all
        Assert.All(images, i => Assert.Equal("560", i.GetAttribute("width")));
        Assert.Equal(5, digest.Pictures.Select(p => p.ContentId).Distinct().Count());
    }

    [Fact]
    public void What_needs_a_person_comes_before_the_long_table()
    {
        string[] order = ["WHAT CHANGES MONDAY", "TO DECIDE", "SKERRY BAY HIRE: EVERY ENGINE IN ITS RATED BAND", "WHAT STRIKES AND WORK DID", "OVERDUE", "DRIFTING, OR NEAR AN EDGE", "TRIALS WORTH RUNNING", "WHAT THE RECORD LACKS", "CHARTS, IN WORDS", "CAUTION", "METHOD"];
        var text = Renderer.Render(WeeklyWearDraft.Of(Fleet)).Text;
        var places = order.Select(o => text.IndexOf(o, StringComparison.Ordinal)).ToList();
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain(-1, places);
        Assert.Equal(
            ["What changes Monday", "To decide", "Skerry Bay Hire: every engine in its rated band", "What strikes and work did", "Overdue", "Drifting, or near an edge", "Trials worth running", "What the record lacks"],
            new HtmlParser().ParseDocument(Renderer.Render(WeeklyWearDraft.Of(Fleet)).Html).QuerySelectorAll("h2").Select(h => h.TextContent));
    }

    [Fact]
    public void Nothing_is_fetched_from_elsewhere()
    {
        var html = Renderer.Render(WeeklyWearDraft.Of(Fleet)).Html;
        Assert.DoesNotMatch(new Regex("https?://|url\\(|@import|<link|<script|<form", RegexOptions.IgnoreCase), html);
    }

    [Fact]
    public void Styles_stand_on_the_elements_and_the_rules_for_phones_and_the_dark_are_kept()
    {
        var html = Renderer.Render(WeeklyWearDraft.Of(Fleet)).Html;
        Assert.Contains("prefers-color-scheme: dark", html, StringComparison.Ordinal);
        Assert.Contains("max-width: 480px", html, StringComparison.Ordinal);
        Assert.Matches("<h1 style=\"[^\"]*font-size", html);
        Assert.Contains("role=\"presentation\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_digest_of_a_thousand_boats_stays_under_100_kilobytes()
    {
        BoatFinding[] all = [.. Enumerable.Range(1, 1000).Select(i => (i % 2 == 0 ? SkerryBay.StruckBoat() : SkerryBay.WornSkiff()) is var boat ? boat with { Boat = $"boat-{i}", Registered = boat.Registered! with { Name = $"Boat {i:0000}" } } : null!)];
        var content = WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, all);
        var digest = Renderer.Render(WeeklyWearDraft.Of(content));
        Assert.False(digest.UsedFallback, digest.WhyFallback);
        Assert.InRange(Encoding.UTF8.GetByteCount(digest.Html), 10_000, 100_000);
    }

    [Fact]
    public void Forty_boats_that_all_need_a_decision_stay_under_100_kilobytes()
    {
        var names = Enumerable.Range(1, 40).Select(i => $"Boat with a long name {i:00}");
        var boats = names.Select(n => SkerryBay.StruckBoat() is var b && n.EndsWith('1') ? SkerryBay.Quiet(n, 200) : b with { Boat = n, Registered = b.Registered! with { Name = n } }).ToList();
        var digest = Renderer.Render(WeeklyWearDraft.Of(WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, boats)));
        var bytes = Encoding.UTF8.GetByteCount(digest.Html);
        TestContext.Current.SendDiagnosticMessage($"40 boats: {bytes} bytes of HTML");
        Assert.InRange(bytes, 10_000, 100_000);
        Assert.False(digest.UsedFallback);
    }

    [Fact]
    public void A_boat_named_as_markup_is_shown_as_its_name()
    {
        var digest = Renderer.Render(WeeklyWearDraft.Of(WeeklyWear.Build("<b>Hire</b>", "2026-W47", SkerryBay.Monday, [SkerryBay.Boat("<script>alert(1)</script>\" onload=\"x", SkerryBay.WornSkiff().Positions[0])])));
        var page = new HtmlParser().ParseDocument(digest.Html);
        Assert.Empty(page.QuerySelectorAll("script"));
        Assert.Empty(page.QuerySelectorAll("[onload]"));
        Assert.Contains("<script>alert(1)</script>", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("<script>alert(1)</script>", digest.Text, StringComparison.Ordinal);
        Assert.Contains(page.QuerySelectorAll("img"), i => i.GetAttribute("alt")!.Contains("<script>alert(1)</script>", StringComparison.Ordinal));
    }

    [Fact]
    public void The_plain_text_keeps_to_78_columns()
    {
        var long78 = SkerryBay.Boat(new string('n', 200), SkerryBay.StruckBoat().Positions[0]);
        var text = Renderer.Render(WeeklyWearDraft.Of(WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, [.. SkerryBay.Fleet(), long78]))).Text;
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 78, line));
        Assert.DoesNotContain("\n\n\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chart_that_cannot_be_drawn_leaves_its_sentence()
    {
        var broken = new DigestRenderer(_ => throw new InvalidOperationException("no surface"), TemplateFiles.Shipped, TemplateFiles.Shipped).Render(WeeklyWearDraft.Of(Fleet));
        Assert.Empty(broken.Pictures);
        Assert.DoesNotContain("<img", broken.Html, StringComparison.Ordinal);
        Assert.Contains("The chart could not be drawn", broken.Html, StringComparison.Ordinal);
        Assert.Contains(Flat(Fleet.Charts[0].Statement), Flat(Body(broken.Html)), StringComparison.Ordinal);
    }

    internal static IEnumerable<string> Everything(WeeklyWearContent c) =>
    [
        c.Headline,
        .. c.Decisions.SelectMany(d => d.Points.SelectMany(p => new[] { p.Sentence, p.Settles }).Append(d.Boat)),
        .. c.Boats.SelectMany(b => new[] { b.Name, b.Margin, b.Drift, b.Exit, b.Alarm }),
        c.Waiting, c.OtherBoats ?? "", c.WithoutTrials ?? "", c.Questions ?? "", c.LaidUp ?? "", c.DueLeftOut ?? "",
        .. c.Monday.Select(m => m.Sentence),
        .. c.Decisions.SelectMany(d => new[] { d.Exit, d.Waiting }),
        .. c.Changes, .. c.InShop, .. c.SparesToOrder, .. c.StrikesByDock, .. c.DataQuality,
        .. c.Overdue.SelectMany(d => new[] { d.Boat, d.What, d.When }),
        .. c.Steps,
        .. c.Trials.SelectMany(t => new[] { t.Name, t.Dock, t.Decides }),
        c.TrialsLeftOut ?? "",
        .. c.Caution,
        .. c.Method,
    ];

    internal static string Flat(string s) => Regex.Replace(s, @"\s+", " ");

    internal static string Body(string html) => new HtmlParser().ParseDocument(html.Replace("<br>", " ", StringComparison.Ordinal)).Body!.TextContent;

    // LOOK_AT names a folder to put the digest in, for a person who wants to see it.
    private static void LookAt(RenderedDigest digest)
    {
        if (Environment.GetEnvironmentVariable("LOOK_AT") is not { } folder) return;
        var html = digest.Html;
        foreach (var p in digest.Pictures)
        {
            File.WriteAllBytes(Path.Combine(folder, p.FileName), p.Png);
            html = html.Replace("cid:" + p.ContentId, p.FileName, StringComparison.Ordinal);
        }

        File.WriteAllText(Path.Combine(folder, "digest.html"), html);
        File.WriteAllText(Path.Combine(folder, "digest.txt"), digest.Text);
    }
}
