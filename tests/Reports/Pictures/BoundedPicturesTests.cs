using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;
using FleetWake.Reports.Pictures.Fleet;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>However large the fleet and whatever the names: an image that can be mailed, and a sentence that can be read.</summary>
public class BoundedPicturesTests
{
    private const int MostBytes = 200_000;
    private const int MostWords = 2_600; // characters of an alternative text
    private static readonly PngRenderer Renderer = new();

    public static TheoryData<string> Nasty => ["", " ", SamplePictures.LongName, "\u202Eevil\u2066\n\rBcc: x", "<img src=x onerror=alert(1)>", "🚤🛥⛵🚤🛥⛵🚤🛥⛵", "\uD83D", "ﷺﷺﷺﷺ"];

    [Theory]
    [MemberData(nameof(Nasty))]
    public void Any_name_is_drawn(string name)
    {
        string Name(int i) => name;
        var boats = SamplePictures.Class(12, Name).Concat(SamplePictures.Slipped().Select(b => b with { Registered = b.Registered! with { Name = name } })).ToList();
        Picture?[] pictures =
        [
            FleetStrip.Of(boats, name), SlipMap.Of(boats, name), .. DriftPanels.Of(boats), StrikeRatePicture.Of(SamplePictures.Rates([(name, 3, 100), ("b", 1, 10)])),
            LifeCurves.Of(SamplePictures.SomeLives(), _ => name.Length == 0 ? "x" : name, "by name", LifeQuestion.Worn),
        ];
        Assert.All(pictures, p => Fits(p!));
    }

    [Fact]
    public void A_thousand_boats_fit()
    {
        var boats = SamplePictures.Many(1000, i => $"{SamplePictures.LongName} {i}");
        Fits(FleetStrip.Of(boats, SamplePictures.LongName)!);
        Fits(DriftPanels.Of(boats)[0]);
        Fits(SlipMap.Of([.. Enumerable.Range(0, 1000).Select(i => SamplePictures.Moved($"{SamplePictures.LongName} {i}", 6 * Math.Sin(i), 9 * Math.Cos(i * 1.3)))], "x")!);
        Fits(StrikeRatePicture.Of(SamplePictures.Rates([.. Enumerable.Range(0, 1000).Select(i => ($"{SamplePictures.LongName} {i}", i % 7, 100.0 + i))]))!);
        Fits(LifeCurves.Of(SamplePictures.SomeLives(20_000), l => $"{l.Material} {SamplePictures.LongName}", "by material", LifeQuestion.UsedUp)!);
    }

    [Fact]
    public void A_thousand_boats_on_one_spot_are_piled_within_the_frame() =>
        Fits(FleetStrip.Of([.. SamplePictures.Many(1000).Select(b => b with { Positions = SkerryBay.Quiet().Positions })], "x")!);

    [Fact]
    public void Numbers_that_are_none_are_left_out()
    {
        double[] wrong = [double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1e300, -1e300];
        var boats = wrong.Select(v => With(SamplePictures.Moved("Odd", 2, 2), v)).Append(SamplePictures.Moved("Even", 2, 2)).ToList();
        Fits(FleetStrip.Of(boats, "x")!);
        Assert.Single(SlipMap.Of(boats, "x")!.Marks);
        Fits(SlipMap.Of(boats, "x")!);
        Assert.All(DriftPanels.Of(boats), Fits);
    }

    private static BoatFinding With(BoatFinding boat, double value)
    {
        var mounting = boat.Positions[0].Mounting!;
        return boat with
        {
            Positions =
            [
                boat.Positions[0] with
                {
                    Mounting = mounting with
                    {
                        Band = mounting.Band with { ObservedRpm = value, PresentRpm = value },
                        Trials = [.. mounting.Trials.Select(t => t with { Rpm = value, TurnedRpm = value, SlipPercent = value })],
                    },
                },
            ],
        };
    }

    private static void Fits(Picture picture)
    {
        Assert.InRange(picture.Statement.Length, 10, MostWords);
        Assert.InRange(picture.Title.Length, 5, 200);
        Assert.DoesNotContain(picture.Statement, c => char.IsControl(c) || c == '\u202E');
        Assert.DoesNotContain("NaN", picture.Statement, StringComparison.Ordinal);
        var png = Renderer.Render(picture);
        Assert.InRange(png.Length, 4_000, MostBytes);
        Assert.InRange((png[22] << 8) + png[23], 300, 1300);
    }
}
