using CsCheck;
using FleetWake.Propulsion.Fastening;

namespace FleetWake.Propulsion.Tests.Fastening;

/// <summary>The ranges are invented; a maker's manual is the only source of one.</summary>
public class Torque_and_the_next_slot
{
    private static readonly CastleNut s_nut = new(6, CrossHoles.One, Length.FromMillimetres(1.5));
    private static readonly TorqueRange s_range = Range(50, 90);
    private static readonly PropShaftThread s_thread =
        new(Length.FromMillimetres(16), Length.FromMillimetres(1.5), Length.FromMillimetres(120));

    [Theory]
    [InlineData(40, 0, PinStep.TightenToRange)] // a slot below the range is no place to stop
    [InlineData(40, 20, PinStep.TightenToRange)]
    [InlineData(55, 0, PinStep.FitPin)]
    [InlineData(50, 0, PinStep.FitPin)]
    [InlineData(90, 0, PinStep.FitPin)]
    [InlineData(91, 0, PinStep.StartAgain)]
    [InlineData(91, 59, PinStep.StartAgain)] // not back by 59 degrees, either
    [InlineData(51, 58, PinStep.TurnToNextSlot)]
    [InlineData(55, 20, PinStep.TurnWithCare)]
    public void A_nut_between_slots_is_judged_by_its_torque_and_by_what_the_next_slot_may_need(
        double newtonMetres, double degreesPastSlot, PinStep expected) => Assert.Equal(
        expected, NextSlot.Judge(s_nut, degreesPastSlot, Nm(newtonMetres), s_range, s_thread));

    [Fact]
    public void Without_a_thread_to_guess_from_or_with_one_figure_only_care_is_asked_for()
    {
        Assert.Equal(PinStep.TurnWithCare, NextSlot.Judge(s_nut, 58, Nm(51), s_range, null));
        Assert.True(Range(60, 60).IsSingleFigure);
        Assert.Equal(PinStep.TurnWithCare, NextSlot.Judge(s_nut, 58, Nm(60), Range(60, 60), s_thread));
    }

    [Fact]
    public void No_answer_depends_on_a_slot_behind() => Gen.Select(Gen.Double[1, 200], Gen.Double[0, 360]).Sample(
        (torque, past) => Assert.Equal(
            NextSlot.Judge(s_nut, past, Nm(torque), s_range, s_thread),
            NextSlot.Judge(s_nut, past % 60, Nm(torque), s_range, s_thread)));

    /// <summary>T/(K d): 33.895 N.m over 0.2 x 12.7 mm is 13.3 kN; K from 0.15 to 0.25 spreads it from 10.7 to 17.8.</summary>
    [Fact]
    public void A_clamp_guessed_from_a_torque_is_a_range()
    {
        var half = new PropShaftThread(Length.FromInches(0.5), Length.FromInches(0.05), Length.FromMillimetres(100));
        var clamp = half.FromTorque(Torque.FromPoundForceFeet(25));
        Assert.Equal(10_676, clamp.Low.Newtons, 1.0);
        Assert.Equal(17_793, clamp.High.Newtons, 1.0);
        Assert.Equal("10.7 to 17.8 kN (an estimate of low confidence, not a setting)", clamp.ToString());
    }

    /// <summary>
    /// M16 x 1.5, 120 mm, a sixth of a turn: 0.25 mm of 120 mm times 195 GPa times 167.3 mm2 is 67.9 kN in a rigid stack;
    /// 0.1 to 0.6 of it. M16 x 1.5 has a tensile stress area of 167 mm2 (ISO 898-1, from memory).
    /// </summary>
    [Fact]
    public void A_clamp_guessed_from_a_turn_is_a_wider_one()
    {
        var clamp = s_thread.FromFurtherTurn(60);
        Assert.Equal(6_795, clamp.Low.Newtons, 10.0);
        Assert.Equal(6, clamp.High.Newtons / clamp.Low.Newtons, 1e-9);
        Assert.Equal(default, s_thread.FromFurtherTurn(0).High);
    }

    /// <summary>By hand: 10 degrees of M16 x 1.5 are 0.6 x 67.9 kN/6 = 6.79 kN at most; x 0.25 x 16 mm = 27.2 N.m, and 0.15, 0.1 give 2.7.</summary>
    [Fact]
    public void The_torque_after_a_turn_reaches_up_to_a_dry_thread()
    {
        var after = s_thread.TorqueAfter(Nm(60), 10);
        Assert.Equal(87.2, after.High.NewtonMetres, 0.1);
        Assert.Equal(62.7, after.Low.NewtonMetres, 0.1);
        Assert.Equal(PinStep.TurnToNextSlot, NextSlot.Judge(s_nut, 50, Nm(60), s_range, s_thread));
        Assert.Equal(PinStep.TurnWithCare, NextSlot.Judge(s_nut, 50, Nm(64), s_range, s_thread)); // 85.7 by a middling thread, 91.2 by a dry one
    }

    [Fact]
    public void The_torque_after_a_turn_is_never_less_than_before() => Gen.Select(Gen.Double[1, 200], Gen.Double[0, 180])
        .Sample((torque, turn) => Assert.True(s_thread.TorqueAfter(Nm(torque), turn).Low.NewtonMetres >= torque));

    [Fact]
    public void Ranges_and_threads_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("low", () => Range(0, 10));
        Assert.Throws<ArgumentOutOfRangeException>("high", () => Range(50, 40));
        var mm = Length.FromMillimetres;
        Assert.Throws<ArgumentOutOfRangeException>("diameter", () => new PropShaftThread(mm(2), mm(0.4), mm(100)));
        Assert.Throws<ArgumentOutOfRangeException>("pitch", () => new PropShaftThread(mm(16), mm(5), mm(100)));
        Assert.Throws<ArgumentOutOfRangeException>("stretched", () => new PropShaftThread(mm(16), mm(1.5), default));
        Assert.Throws<ArgumentOutOfRangeException>("turnDegrees", () => s_thread.FromFurtherTurn(181));
    }

    private static Torque Nm(double newtonMetres) => Torque.FromNewtonMetres(newtonMetres);

    private static TorqueRange Range(double low, double high) => new(Nm(low), Nm(high));
}
