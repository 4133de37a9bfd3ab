using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Tests.Pictures;

public class TrialPicturesTests
{
    private static readonly PngRenderer Renderer = new();
    private static readonly PropData Prop = new(Length.FromInches(13)) { Diameter = Length.FromInches(11.5), Blades = 3 };

    [Fact]
    public void A_correction_shows_each_run_the_mean_and_what_it_comes_to_with_a_sentence()
    {
        var picture = Correction(Trial(5650, 26.05, limiter: false));
        Assert.Equal(["run 1, 90\u00B0", "run 2, 270\u00B0", "as read", "reference air"], picture.Steps.Select(s => s.Label));
        Assert.Equal([5650, 5650, 5650], picture.Steps.Take(3).Select(s => s.Rpm));
        Assert.StartsWith("Read 5650 RPM over 2 runs; 5629 RPM at reference air (", picture.Statement, StringComparison.Ordinal); // 5650 x 0.9903^0.38
        Assert.EndsWith("power factor 0.990; rated band 5000 to 6000.", picture.Statement, StringComparison.Ordinal);
        LookAt("correction", Renderer.Render(picture));
    }

    [Fact]
    public void A_limiter_held_run_is_drawn_as_a_lower_bound() =>
        Assert.Equal([true, true, true, true], Correction(Trial(6050, 26.05, limiter: true)).Steps.Select(s => s.AtLeast));

    [Fact]
    public void A_map_of_causes_says_in_a_sentence_what_it_shows()
    {
        var map = CauseMap.Of(Held((5650, 26.05), (5890, 25.7)))!;
        Assert.StartsWith("Against its baseline the last trial turned +4.2 % RPM and made -1.3 % speed. It turns faster than at its baseline", map.Statement, StringComparison.Ordinal);
        Assert.Equal(8, map.Rays.Count);
        Assert.All(map.Rays, r => Assert.Equal(r.RpmUp, r.RpmPercent > 0));
        Assert.Contains(map.Rays, r => r is { Label: "a worn prop or lost cup", Likely: true });
        Assert.Contains(map.Rays, r => r is { Label: "a weak engine", Likely: false });
        LookAt("causes-up", Renderer.Render(map));
    }

    [Fact]
    public void A_map_of_many_trials_reaches_as_far_as_they_do()
    {
        var map = CauseMap.Of(Held((5650, 26.05), (5560, 25.2), (5500, 24.3), (5430, 23.8)))!;
        Assert.Equal(3, map.Changes.Count);
        Assert.All(map.Changes, c => Assert.InRange(Math.Max(Math.Abs(c.RpmPercent), Math.Abs(c.SpeedPercent)), 0, map.ReachPercent));
        LookAt("causes-down", Renderer.Render(map));
    }

    [Fact]
    public void Without_a_speed_there_is_no_map()
    {
        var held = Held((5650, 26.05), (5890, 25.7))!;
        Assert.Null(CauseMap.Of(held with { Changes = [.. held.Changes.Select(c => c with { LnSpeed = null })] }));
    }

    private static CorrectionPicture Correction(TrialReading reading) => CorrectionPicture.Of(reading, TrialCorrection.Of(reading));

    private static AgainstBaseline Held(params (double Rpm, double Knots)[] trials) =>
        AgainstBaseline.Of([.. trials.Select(t => (TrialCorrection.Of(Trial(t.Rpm, t.Knots, limiter: false)), true))], new GearRatio(2.08), Prop, BoatResponse.Prior)!;

    private static TrialReading Trial(double rpm, double knots, bool limiter) => new(
        [
            new RunReading(EngineRate.FromRevolutionsPerMinute(rpm), Speed.FromKnots(knots - 1), 90) { LimiterReached = limiter },
            new RunReading(EngineRate.FromRevolutionsPerMinute(rpm), Speed.FromKnots(knots + 1), 270) { LimiterReached = limiter },
        ],
        new TrialConditions { Air = new AirState(Temperature.FromCelsius(22), Pressure.FromHectopascals(1009), 0.6) },
        new EngineData
        {
            Gear = new GearRatio(2.08),
            BandLow = EngineRate.FromRevolutionsPerMinute(5000),
            BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
            TachometerStep = EngineRate.FromRevolutionsPerMinute(10),
        },
        Prop);

    private static void LookAt(string name, byte[] png)
    {
        Assert.Equal(1200, (png[18] << 8) + png[19]);
        Assert.InRange(png.Length, 5_000, 120_000);
        if (Environment.GetEnvironmentVariable("LOOK_AT") is { } folder) File.WriteAllBytes(Path.Combine(folder, name + ".png"), png);
    }
}
