using CsCheck;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Causes;

public class Trials_against_their_baseline
{
    private static readonly PropData s_prop = Prop(11.5, 13);

    [Fact]
    public void A_trial_is_held_against_the_first()
    {
        var held = Of((5650, 26.05), (5890, 25.7), (5900, 25.6))!;
        Assert.Equal(Math.Log(5890.0 / 5650), held.Changes[0].LnRpm, 1e-12);
        Assert.Equal(Math.Log(25.6 / 26.05), held.Changes[1].LnSpeed!.Value, 1e-12);
        Assert.Equal(CauseGroup.RpmUp, held.Finding.Group);
    }

    [Fact]
    public void Only_the_last_twelve_are_weighed() =>
        Assert.Equal(AgainstBaseline.MostTrials, Of([.. Enumerable.Repeat((5650.0, 26.05), 30)])!.Changes.Count);

    [Fact]
    public void That_somebody_watched_and_saw_no_air_drawn_makes_ventilation_less_likely()
    {
        (double, double)[] trials = [(5650, 26.05), (5890, 25.7)];
        double Ventilation(bool watched) => Of(s_prop, 2.08, watched, trials)!.Finding.Suspects.Single(s => s.Cause == Cause.Ventilation).Probability;
        Assert.True(Ventilation(watched: true) < 0.5 * Ventilation(watched: false));
    }

    [Theory]
    [InlineData(11.5, 13, 2.08, 0)]     // no speed
    [InlineData(11.5, 13, 2.08, 40)]    // faster than the prop could go
    [InlineData(11.5, 13, 2.08, 2)]     // hardly moving
    [InlineData(8, 23, 2.08, 47)]       // no such prop
    public void A_baseline_that_makes_no_sense_is_compared_with_nothing(double diameter, double pitch, double gear, double knots) =>
        Assert.Null(Of(Prop(diameter, pitch), gear, false, (5650, knots), (5890, knots)));

    [Theory]
    [InlineData(WhyNotCompared.NoTrial, 11.5, 5650, 26.05, 0, 0)]
    [InlineData(WhyNotCompared.NoDiameter, 0, 5650, 26.05, 5890, 25.7)]
    [InlineData(WhyNotCompared.NoSpeed, 11.5, 5650, 0, 5890, 25.7)]
    [InlineData(WhyNotCompared.BaselineMakesNoSense, 11.5, 5650, 40, 5890, 40)]
    [InlineData(WhyNotCompared.ChangeTooLarge, 11.5, 5650, 26.05, 5890, 9)]
    [InlineData(WhyNotCompared.ChangeTooLarge, 11.5, 5650, 26.05, 3700, 25.7)]
    [InlineData(WhyNotCompared.DoubtTooLarge, 11.5, 5650, 26.05, 5650, 26, 3000)]
    public void Why_nothing_is_compared_is_told(WhyNotCompared why, double diameter, double n0, double v0, double n1, double v1, double doubt = 40)
    {
        var prop = diameter > 0 ? Prop(diameter, 13) : new PropData(Length.FromInches(13));
        List<(CorrectedTrial, bool)> trials = [(Trial(n0, v0), true)];
        if (n1 > 0) trials.Add((Trial(n1, v1) with { CorrectedRpm = new Uncertain(n1, doubt) }, true));
        Assert.Equal((null, why), AgainstBaseline.Attempt(trials, new GearRatio(2.08), prop, BoatResponse.Prior));
    }

    /// <summary>Two runs of 5 and 60 kn: whatever the later trials show, nothing can be held against them.</summary>
    [Fact]
    public void A_baseline_of_no_certain_speed_is_none()
    {
        var baseline = Trial(5650, 26.05) with { CorrectedSpeedKnots = new Uncertain(26.05, 30) };
        Assert.Equal((null, WhyNotCompared.DoubtTooLarge), AgainstBaseline.Attempt([(baseline, true), (Trial(5890, 25.7), true)], new GearRatio(2.08), s_prop, BoatResponse.Prior));
    }

    [Fact]
    public void One_trial_that_can_be_compared_is_enough()
    {
        var (held, why) = AgainstBaseline.Attempt([(Trial(5650, 26.05), true), (Trial(5890, 25.7), true), (Trial(5890, 9), true)], new GearRatio(2.08), s_prop, BoatResponse.Prior);
        Assert.Equal((1, null), (held!.Changes.Count, why));
    }

    [Fact]
    public void Whatever_prop_ratio_and_readings_are_on_record_there_is_an_answer_or_none() =>
        Gen.Select(Gen.Double[5, 30], Gen.Double[3, 40], Gen.Double[0.5, 5], Gen.Double[300, 12_000], Gen.Double[0, 120], Gen.Double[300, 12_000], Gen.Double[0, 120])
            .Sample((diameter, pitch, gear, n0, v0, n1, v1) =>
            {
                var held = Of(Prop(diameter, pitch), gear, false, (n0, v0), (n1, v1));
                Assert.All(held?.Finding.Suspects ?? [], s => Assert.InRange(s.Probability, 0, 1));
            }, iter: 2_000);

    private static AgainstBaseline? Of(params (double Rpm, double Knots)[] trials) => Of(s_prop, 2.08, false, trials);

    private static AgainstBaseline? Of(PropData prop, double gear, bool watched, params (double Rpm, double Knots)[] trials) =>
        AgainstBaseline.Of([.. trials.Select(t => (Trial(t.Rpm, t.Knots), true))], new GearRatio(gear), prop, BoatResponse.Prior, watched);

    private static CorrectedTrial Trial(double rpm, double knots) => new(
        new Uncertain(rpm, 20), new Uncertain(knots, 0.3), null, null, new Uncertain(rpm, 40), new Uncertain(knots, 0.4), MeanSpeedMethod.DoubleRun, []);

    private static PropData Prop(double diameter, double pitch) => new(Length.FromInches(pitch)) { Diameter = Length.FromInches(diameter), Blades = 3 };
}
