using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>What must be told apart is told apart without colour, and by whoever sees other colours.</summary>
public class SignsTests
{
    /// <summary>Two greys that far apart are told apart side by side; judgement, no source.</summary>
    private const double GreysApart = 20;

    /// <summary>Just noticeable is 2.3 (Mahy, Van Eycken and Oosterlinck 1994, from memory); several times that is seen at a glance. Judgement.</summary>
    private const double ColoursApart = 20;

    [Fact]
    public void Signs_of_one_picture_differ_in_shape_or_in_lightness()
    {
        foreach (var (picture, signs) in Sign.Together)
            foreach (var (a, b) in Pairs(signs))
                Assert.True(
                    a.Shape != b.Shape || Math.Abs(ColourVision.Lightness(a.Hex) - ColourVision.Lightness(b.Hex)) >= GreysApart,
                    $"{picture}: {a} and {b} are the same in grey");
    }

    [Fact]
    public void Curves_of_one_picture_differ_in_pattern() =>
        Assert.All(Pairs(LifeCurvesPlot.Strokes), p => Assert.NotEqual(p.First.Dashes, p.Second.Dashes));

    [Theory]
    [InlineData("as most see")]
    [InlineData("protan")]
    [InlineData("deutan")]
    [InlineData("tritan")]
    public void What_needs_somebody_is_seen_beside_what_does_not_by_every_eye(string kind)
    {
        var matrix = ColourVision.Kinds[kind];
        Assert.All(Enumerable.Range(0, 3), i => Assert.Equal(1, matrix[i, 0] + matrix[i, 1] + matrix[i, 2], 5));
        foreach (var (a, b) in Pairs([Ink.Alarm, Ink.First, Ink.Second]))
            Assert.True(ColourVision.Difference(a, b, matrix) >= ColoursApart, $"{a} and {b} are {ColourVision.Difference(a, b, matrix):0} apart to a {kind} eye");
    }

    [Fact]
    public void Every_ink_that_words_are_written_in_stands_off_white_as_wcag_asks_of_text() =>
        Assert.All(new[] { Ink.First, Ink.Alarm, Ink.Second, Ink.Pale, "#1F2933", "#1B6B5A" }, hex => Assert.True(ColourVision.OnWhite(hex) >= 4.5, hex)); // WCAG 2.2, 1.4.3

    [Fact]
    public void The_contrast_is_reckoned_as_wcag_does()
    {
        Assert.Equal(21, ColourVision.OnWhite("#000000"), 6); // its own range, 1 to 21
        Assert.Equal(4.54, ColourVision.OnWhite("#767676"), 2); // the grey that is usually named as the palest for text; common practice
    }

    private static IEnumerable<(T First, T Second)> Pairs<T>(IReadOnlyList<T> all) =>
        all.SelectMany((a, i) => all.Skip(i + 1).Select(b => (a, b)));
}
