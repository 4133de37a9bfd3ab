using System.Diagnostics;
using System.Text;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>A template that somebody broke, or wrote to do harm: the digest still goes out, whole, and says why it looks bare.</summary>
public class FallbackTests
{
    // Which template lays a picture out does not depend on what it shows: its sentence stands in for the image.
    private static readonly Func<DraftPicture, byte[]> Pictures = p => Encoding.UTF8.GetBytes(p.Statement);
    private static readonly WeeklyWearContent Fleet = WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, SkerryBay.Fleet());

    private static RenderedDigest With(string? html, string? text = "{{ headline }}")
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        if (html is not null) File.WriteAllText(Path.Combine(folder, DigestRenderer.HtmlTemplate(WeeklyWear.Digest)), html);
        if (text is not null) File.WriteAllText(Path.Combine(folder, DigestRenderer.TextTemplate(WeeklyWear.Digest)), text);
        return new DigestRenderer(Pictures, TemplateFiles.Folder(folder), TemplateFiles.Folder(folder)).Render(WeeklyWearDraft.Of(Fleet));
    }

    private static void IsWholeAndSaysWhy(RenderedDigest digest, string why)
    {
        Assert.True(digest.UsedFallback);
        Assert.Contains(why, digest.WhyFallback, StringComparison.Ordinal);
        var body = DigestRendererTests.Flat(DigestRendererTests.Body(digest.Html));
        Assert.Contains("Plain form", body, StringComparison.Ordinal);
        Assert.Contains(why, body, StringComparison.Ordinal);
        foreach (var said in DigestRendererTests.Everything(Fleet)) Assert.Contains(DigestRendererTests.Flat(said), body, StringComparison.Ordinal);
        Assert.Equal(5, digest.Pictures.Count);
        Assert.All(digest.Pictures, p => Assert.Contains($"cid:{p.ContentId}", digest.Html, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{% if decisions.size > 0 %}never closed", "'{% endif %}' was expected")]
    [InlineData("{{ no_such_thing }}", "no_such_thing")]
    [InlineData("{{ operator.length_of_it }}", "Undefined variable")]
    [InlineData("{{ decisions | no_such_filter }}", "'no_such_filter' is not allowed")]
    [InlineData("{{ headline | raw }}", "'raw' is not allowed")]
    [InlineData("{% assign x = 'aaaa' %}{% for i in (1..40) %}{% assign x = x | append: x %}{% endfor %}", "'append' is not allowed")]
    [InlineData("{% if true %}{% unless false %}{% for b in boats %}{{ b.name | upcase | replace: 'a', 'b' }}{% endfor %}{% endunless %}{% endif %}", "'replace' is not allowed")]
    [InlineData("{% capture x %}a{% endcapture %}", "Unknown tag")]
    [InlineData("{% include 'other' %}", "Unknown tag")]
    [InlineData("{% raw %}x{% endraw %}", "Unknown tag")]
    [InlineData("{% for i in (1..100000000) %}{% endfor %}", "a range is longer than 500")]
    [InlineData("{% for i in (1..boats.size) %}{% endfor %}", "two numbers written out")]
    [InlineData("{% for a in (1..500) %}{% for b in (1..500) %}{% for c in (1..500) %}{% assign x = 1 %}{% endfor %}{% endfor %}{% endfor %}", "more than 200000 steps")]
    [InlineData("{% for a in (1..500) %}{% for b in (1..300) %}{{ boats[0].exit }}{% endfor %}{% endfor %}", "wrote more than 1000000 characters")]
    [InlineData(null, "the file is missing")]
    public void A_template_that_cannot_serve_is_replaced_by_the_plain_form(string? template, string why)
    {
        var clock = Stopwatch.StartNew();
        IsWholeAndSaysWhy(With(template), why);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10), $"took {clock.Elapsed}");
    }

    [Fact]
    public void A_broken_text_template_leaves_the_html_as_it_is()
    {
        var digest = With("<html><body>{{ headline }}</body></html>", "{% for %}");
        Assert.True(digest.UsedFallback);
        Assert.DoesNotContain("Plain form", digest.Html, StringComparison.Ordinal);
        Assert.StartsWith("Plain form", digest.Text, StringComparison.Ordinal);
        foreach (var said in DigestRendererTests.Everything(Fleet))
            Assert.Contains(DigestRendererTests.Flat(said), DigestRendererTests.Flat(digest.Text), StringComparison.Ordinal);
        Assert.All(digest.Text.Split('\n'), line => Assert.True(line.Length <= 78, line));
    }

    [Fact]
    public void A_template_without_charts_sends_no_pictures_along()
    {
        var digest = With("<html><body>{{ headline }}</body></html>");
        Assert.False(digest.UsedFallback);
        Assert.Empty(digest.Pictures);
    }

    [Fact]
    public void A_template_reaches_nothing_but_what_it_was_given()
    {
        IsWholeAndSaysWhy(With("{{ charts[0].get_type }}"), "get_type");
        IsWholeAndSaysWhy(With("{{ decisions[0].points[0].equality_contract }}"), "equality_contract");
    }

    [Fact]
    public void The_reason_names_no_folder_of_the_machine()
    {
        Assert.DoesNotContain(Path.GetTempPath(), With(null).Html, StringComparison.Ordinal);
    }
}
