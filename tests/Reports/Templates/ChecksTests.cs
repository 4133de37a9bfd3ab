using System.Text;
using AngleSharp.Html.Parser;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Digests.Templates.Checks;

namespace FleetWake.Reports.Tests.Templates;

/// <summary>What is looked at before a template is used, and what whoever wrote it is told.</summary>
public class ChecksTests
{
    private static readonly DigestRenderer Renderer = new(p => Encoding.UTF8.GetBytes(p.Statement), TemplateFiles.Shipped, TemplateFiles.Shipped);

    public static TheoryData<string> Digests => [.. SampleDigests.All.Select(d => d.Digest)];

    private static IReadOnlyList<TemplateFault> Faults(string file, string text, string digest = "weekly-wear") =>
        TemplateCheck.Of(Renderer, SampleDigests.Of(digest)!, new OperatorLayout(new Dictionary<string, string> { [file] = text }, new Dictionary<string, string>())).Faults;

    private static string Shipped(string file) => TemplateFiles.Shipped.Read(file)!;

    [Theory]
    [MemberData(nameof(Digests))]
    public void The_shipped_templates_pass_every_check_and_leave_nothing_out_of_the_text(string digest)
    {
        var check = TemplateCheck.Of(Renderer, SampleDigests.Of(digest)!);
        Assert.Empty(check.Faults);
        Assert.Empty(check.Advice);
    }

    [Fact]
    public void A_name_that_does_not_exist_is_told_with_its_line_and_the_name_that_may_be_meant()
    {
        var fault = Assert.Single(Faults("weekly-wear.html.liquid", "<p>\n{{ headline }}\n{{ decisoins.size }}</p>"));
        Assert.Equal(("weekly-wear.html.liquid", 3), (fault.File, fault.Line));
        Assert.StartsWith("Perhaps decisions is meant", fault.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("one\n{% if decisions.size > 0 %}\nnever closed", "is not closed")]
    [InlineData("one\n{{ headline | replace: 'a', 'b' }}", "Filters that serve: abs, capitalize")]
    [InlineData("one\n{% capture x %}a{% endcapture %}", "Tags that serve: break")]
    public void How_to_mend_it_is_said(string text, string mend) => Assert.Contains(mend, Assert.Single(Faults("weekly-wear.html.liquid", text)).Mend, StringComparison.Ordinal);

    [Fact]
    public void A_fault_in_a_partial_is_told_of_the_partial()
    {
        var fault = Assert.Single(Faults("_charts.html.liquid", "<p>\n{{ c.titel }}</p>{% for c in charts %}{{ c.titel }}{% endfor %}", "analyst-pack"));
        Assert.Equal(("_charts.html.liquid", 2), (fault.File, fault.Line));
    }

    [Fact]
    public async Task Nothing_is_fetched_while_a_template_is_tried()
    {
        using var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        listener.Start();
        var there = $"http://127.0.0.1:{((System.Net.IPEndPoint)listener.LocalEndpoint).Port}/a.css";
        foreach (var wish in (string[])[$"<link rel=\"stylesheet\" href=\"{there}\">", $"<style>@import url('{there}');</style>", $"<LINK rel=stylesheet href=file:///etc/hostname>", "<base href=\"http://x.example/\">"])
            Assert.Contains("has no place in a mail", Assert.Single(Faults("weekly-wear.html.liquid", $"<p>{{{{ headline }}}}</p>{wish}")).Why, StringComparison.Ordinal);
        await Task.Delay(200, TestContext.Current.CancellationToken);
        Assert.False(listener.Pending());
    }

    [Fact]
    public void Partials_that_multiply_each_other_are_stopped()
    {
        var many = string.Concat(Enumerable.Repeat("{% partial 'end' %}", 300));
        Assert.Contains("more than 200 partials", Assert.Single(Faults("weekly-wear.html.liquid", many)).Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<img src=\"https://elsewhere.example/logo.png\" alt=\"logo\">", "is loaded from elsewhere")]
    [InlineData("<script>1</script>", "<script> has no place")]
    [InlineData("<form action=\"/x\"></form>", "<form> has no place")]
    [InlineData("<p style=\"background: url(//x.example/y)\">a</p>", "a style loads something")]
    [InlineData("<p onclick=\"x()\">a</p>", "onclick runs a script")]
    [InlineData("<p style=\"color: #9aa5b1\">pale words</p>", "\"pale words\" is hard to read in the light: #9aa5b1 on #ffffff")]
    public void What_has_no_place_in_a_mail_is_told_with_its_line(string wrong, string why)
    {
        var text = Shipped("weekly-wear.html.liquid").Replace("<h1>", $"{wrong}\n<h1>", StringComparison.Ordinal);
        var fault = Assert.Single(Faults("weekly-wear.html.liquid", text));
        Assert.Contains(why, fault.Why, StringComparison.Ordinal);
        Assert.Equal(("weekly-wear.html.liquid", Array.FindIndex(text.Split('\n'), l => l.Contains(wrong[..12], StringComparison.Ordinal)) + 1), (fault.File, fault.Line));
    }

    [Fact]
    public void A_picture_without_words_is_told() => Assert.Contains(
        Faults("_figure.html.liquid", Shipped("_figure.html.liquid").Replace("alt=\"{{ c.alt }}\"", "", StringComparison.Ordinal)),
        f => f.Why.Contains("no words for those who do not see it", StringComparison.Ordinal));

    [Fact]
    public void A_colour_that_is_only_too_dark_in_the_dark_is_told()
    {
        var fault = Assert.Single(Faults("style.css", Shipped("style.css").Replace("a { color: #8ab8e6 !important; }", "a { color: #0b5394 !important; }", StringComparison.Ordinal), "due-list"));
        Assert.Contains("in the dark: #0b5394 on #1b232c", fault.Why, StringComparison.Ordinal);
        Assert.Equal("style.css", fault.File);
    }

    [Fact]
    public void A_page_that_mail_programs_cut_off_is_told() => Assert.Contains(
        Faults("weekly-wear.html.liquid", Shipped("weekly-wear.html.liquid") + new string('x', 100_000)), f => f.Why.Contains("cut it off at 100", StringComparison.Ordinal));

    [Theory]
    [InlineData("{{ headline }} &nbsp; {% for c in charts %}{{ c.alt }} {% endfor %}", "holds markup (&nbsp;)")]
    [InlineData("{{ headline }}", "does not say what the picture")]
    public void A_text_part_that_cannot_be_read_by_itself_is_told(string text, string why) => Assert.Contains(Faults("weekly-wear.txt.liquid", text), f => f.Why.Contains(why, StringComparison.Ordinal));

    // Pairs and ratios of the W3C's and WebAIM's explanations of WCAG 1.4.3: black on white 21, #767676 on white just passes (4.54), #777777 just fails (4.48). From memory.
    [Theory]
    [InlineData("#000000", "#ffffff", 21)]
    [InlineData("#767676", "#ffffff", 4.54)]
    [InlineData("#777777", "#ffffff", 4.48)]
    [InlineData("#ffffff", "#ffffff", 1)]
    [InlineData("rgb(0, 0, 0)", "#fff", 21)]
    public void Contrast_is_as_published(string ink, string ground, double ratio) => Assert.Equal(ratio, Contrast.Ratio(ink, ground)!.Value, 2);

    [Fact]
    public void Words_that_nobody_sees_need_no_contrast() =>
        Assert.Empty(Contrast.Low(new HtmlParser().ParseDocument("<body><div style=\"display: none; color: #fff\">x</div></body>"), ""));
}
