using System.Text;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Tests.Digests;

namespace FleetWake.Reports.Tests.Templates;

/// <summary>A layout that fails never costs a digest: the last that served stands in, else the shipped one, else the plain form.</summary>
public class StandInTests
{
    private const string Html = "weekly-wear.html.liquid";
    private const string Text = "weekly-wear.txt.liquid";
    private static readonly DigestDraft Draft = SampleDigests.Of("weekly-wear")!;
    private static readonly DigestRenderer Renderer = new(p => Encoding.UTF8.GetBytes(p.Statement), TemplateFiles.Shipped, TemplateFiles.Shipped);

    private static RenderedDigest With(string html, string? lastGood = null) => Renderer.Render(
        Draft, new OperatorLayout(new Dictionary<string, string> { [Html] = html }, lastGood is null ? new Dictionary<string, string>() : new Dictionary<string, string> { [Html] = lastGood }));

    [Fact]
    public void What_served_is_told_so_that_it_can_be_kept()
    {
        var digest = With("<html><body><h1>Ours: {{ headline }}</h1></body></html>");
        Assert.Empty(digest.Faults);
        Assert.Equal([Html], digest.Served.Keys);
        Assert.Contains("Ours:", digest.Served[Html], StringComparison.Ordinal);
        Assert.Empty(Renderer.Render(Draft).Served); // the shipped one needs no keeping
    }

    [Fact]
    public void The_last_layout_that_served_stands_in_and_the_end_of_the_message_says_why()
    {
        var digest = With("<h1>{{ headlin }}</h1>", "<html><body><h1>Before: {{ headline }}</h1></body></html>");
        Assert.Contains("Before:", digest.Html, StringComparison.Ordinal);
        var end = DigestRendererTests.Flat(DigestRendererTests.Body(digest.Html));
        Assert.EndsWith("\"fleetwake templates check\" or the office's Templates page says more.", end, StringComparison.Ordinal);
        Assert.Contains("weekly-wear.html.liquid, line 1:", end, StringComparison.Ordinal);
        Assert.Contains("uses the last layout that served instead", end, StringComparison.Ordinal);
        Assert.DoesNotContain("Layout:", digest.Text, StringComparison.Ordinal); // the text's own template served
        Assert.DoesNotContain(Html, digest.Served.Keys);
    }

    [Fact]
    public void Without_one_or_when_that_fails_too_the_shipped_layout_stands_in()
    {
        foreach (var before in new[] { null, "{% for %}" })
        {
            var digest = With("{{ nothing_of_the_kind }}", before);
            Assert.Contains("uses the shipped layout instead", digest.Html, StringComparison.Ordinal);
            Assert.Contains("<h2", digest.Html, StringComparison.Ordinal);
            Assert.True(digest.UsedFallback);
            Assert.Equal(Html, Assert.Single(digest.Faults).File);
        }
    }

    [Fact]
    public void A_text_that_stands_in_says_so_in_the_text()
    {
        var digest = Renderer.Render(Draft, new OperatorLayout(new Dictionary<string, string> { [Text] = "{{ x" }, new Dictionary<string, string>()));
        Assert.Contains("Layout: weekly-wear.txt.liquid", DigestRendererTests.Flat(digest.Text), StringComparison.Ordinal);
        Assert.All(digest.Text.Split('\n').Where(l => !l.Contains("://", StringComparison.Ordinal)), l => Assert.True(l.Length <= 78, l));
    }

    // faults.md row 29: 500 fuzzed templates, 0 digests lost.
    [Fact]
    public void Of_500_templates_broken_by_chance_none_costs_a_digest()
    {
        var whole = TemplateText.Of(Html, TemplateFiles.Shipped).Text;
        var small = WeeklyWearDraft.Of(WeeklyWear.Build(SampleFleet.Name, "2026-W12", SampleFleet.Day, [.. SampleFleet.Findings.Take(2)]));
        var chance = new Random(20261130);
        string[] pieces = ["{% if", "{% endfor %}", "{{", "}}", "{% for i in (1..99999999) %}", "| append: x", "{% assign x = decisions %}", "{% partial 'gone' %}", "{% raw %}", "\0", "</body>", "{{ charts[0].cid }}", "{% cycle 'a', 'b' %}", "<script>", "{% include 'x' %}"];
        var stoodIn = 0;
        for (var i = 0; i < 500; i++)
        {
            var text = new StringBuilder(whole);
            for (var n = chance.Next(1, 6); n > 0; n--)
            {
                var at = chance.Next(text.Length);
                switch (chance.Next(4))
                {
                    case 0: text.Remove(at, Math.Min(chance.Next(1, 400), text.Length - at)); break;
                    case 1: text.Insert(at, pieces[chance.Next(pieces.Length)]); break;
                    case 2: text[at] = (char)chance.Next(32, 127); break;
                    default: text.Insert(at, text.ToString(at, Math.Min(200, text.Length - at))); break;
                }
            }

            var digest = Renderer.Render(small, new OperatorLayout(new Dictionary<string, string> { [Html] = text.ToString() }, new Dictionary<string, string>()));
            Assert.True(digest.Html.Length > 0 && digest.Text.Length > 0, $"template {i} gave nothing");
            if (digest.Faults.Count == 0) continue;
            stoodIn++;
            Assert.Contains(small.Pictures[0].Statement[..20], digest.Html, StringComparison.Ordinal);
            Assert.Contains("nothing is left out", digest.Html, StringComparison.Ordinal);
        }

        TestContext.Current.SendDiagnosticMessage($"500 fuzzed templates: {stoodIn} refused, another layout stood in each time");
        Assert.InRange(stoodIn, 100, 490);
    }
}
