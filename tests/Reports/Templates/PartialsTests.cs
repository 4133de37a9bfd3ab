using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;

namespace FleetWake.Reports.Tests.Templates;

/// <summary>Partials and styles are put into a template before it is parsed.</summary>
public class PartialsTests
{
    private static TemplateText Put(params (string Name, string Text)[] files) => TemplateText.Of("a.html.liquid", TemplateFiles.Of(files.ToDictionary(f => f.Name, f => f.Text), "test"));

    private static string Why(params (string Name, string Text)[] files) => Assert.Throws<TemplateRefused>(() => Put(files)).Message;

    [Fact]
    public void A_partial_stands_where_it_is_asked_for_and_its_lines_keep_their_file()
    {
        var text = Put(("a.html.liquid", "one\n{% partial 'b' %} end\nthree"), ("_b.html.liquid", "b1\nb2"));
        Assert.Equal("one\nb1\nb2 end\nthree", text.Text);
        Assert.Equal([("a.html.liquid", 1), ("a.html.liquid", 2), ("_b.html.liquid", 2), ("a.html.liquid", 3)], text.Lines);
    }

    [Fact]
    public void The_styles_stand_in_their_tag() => Assert.Equal("<style>\np { margin: 0; }\n</style>", Put(("a.html.liquid", "{% styles %}"), ("style.css", "p { margin: 0; }")).Text);

    [Theory]
    [InlineData("p { background: url(x.png); }")]
    [InlineData("@import 'x.css';")]
    [InlineData("p{}</style><script>")]
    [InlineData("p { color: {{ operator }}; }")]
    public void Styles_load_nothing_and_are_no_template(string css) => Assert.StartsWith("a style sheet must not hold", Why(("a.html.liquid", "{% styles %}"), ("style.css", css)), StringComparison.Ordinal);

    [Fact]
    public void A_partial_that_is_not_there_is_named() => Assert.Equal("the partial _b.html.liquid is missing", Why(("a.html.liquid", "{% partial 'b' %}")));

    [Fact]
    public void Partials_that_put_in_each_other_end() => Assert.Contains("more than 4 deep", Why(("a.html.liquid", "{% partial 'b' %}"), ("_b.html.liquid", "{% partial 'b' %}")), StringComparison.Ordinal);

    [Fact]
    public void Partials_that_grow_without_end_are_refused()
    {
        var ten = string.Concat(Enumerable.Repeat("{% partial 'c' %}", 300));
        Assert.Contains("more than 200 partials", Why(("a.html.liquid", "{% partial 'b' %}"), ("_b.html.liquid", ten), ("_c.html.liquid", new string('x', 2000))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../etc/passwd")]
    [InlineData(".hidden")]
    [InlineData("a/b")]
    [InlineData("C:x")]
    [InlineData("")]
    public void A_name_is_no_path(string name) => Assert.False(TemplateFiles.IsName(name));

    [Fact]
    public void A_folder_with_one_changed_file_takes_the_others_from_the_shipped_ones()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        File.WriteAllText(Path.Combine(folder, "style.css"), "h1 { font-size: 31px; }");
        var digest = new DigestRenderer(new FleetWake.Reports.Pictures.PngRenderer(), folder).Render(SampleDigests.Of("due-list")!);
        Assert.Empty(digest.Faults);
        Assert.Contains("font-size: 31px", digest.Html, StringComparison.Ordinal);
        Assert.Equal(["due-list.html.liquid"], digest.Served.Keys);
    }
}
