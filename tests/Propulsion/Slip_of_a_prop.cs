using CsCheck;

namespace FleetWake.Propulsion.Tests;

public class Slip_of_a_prop
{
    /// <summary>Half of the last digit printed in the reference tables.</summary>
    private const double LastDigit = 0.51e-6;

    private static readonly Gen<(double Rpm, double Gear, double Inches)> s_outboard =
        Gen.Select(Gen.Double[500, 7000], Gen.Double[1, 3], Gen.Double[5, 30]);

    public static TheoryData<double, double, double, double, double[]> Rows
    {
        get
        {
            var rows = new TheoryData<double, double, double, double, double[]>();
            foreach (var row in ReferenceTable.Rows("speed_slip_vectors.csv").Select(ReferenceTable.Numbers))
                rows.Add(row[0], row[1], row[2], row[3], row[4..]);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_reference_table_holds(
        double engineRpm, double gear, double pitchInches, double boatKnots, double[] expected)
    {
        var (engine, ratio, pitch) = Outboard(engineRpm, gear, pitchInches);
        var theory = Slip.TheoreticalSpeed(engine, ratio, pitch);
        Assert.Equal(5, expected.Length);
        Assert.Equal(expected[0], PropRate.Of(engine, ratio).RevolutionsPerMinute, LastDigit);
        Assert.Equal(expected[1], theory.Knots, LastDigit);
        Assert.Equal(expected[2], theory.MilesPerHour, LastDigit);
        Assert.Equal(expected[3], theory.MetresPerSecond, LastDigit);
        Assert.Equal(
            expected[4], Slip.ApparentSlipFraction(Speed.FromKnots(boatKnots), engine, ratio, pitch), LastDigit);
    }

    [Fact]
    public void The_reference_table_has_its_six_rows() => Assert.Equal(6, Rows.Count);

    /// <summary>Common practice, no source: pitch is the advance in one turn through something solid.</summary>
    [Fact]
    public void A_13_inch_pitch_moves_13_inches_a_turn_without_slip()
    {
        var (engine, gear, pitch) = Outboard(60, 1, 13); // one turn a second
        Assert.Equal(13 * 0.0254, Slip.TheoreticalSpeed(engine, gear, pitch).MetresPerSecond, 15);
    }

    /// <summary>Common practice, no source as a rule of thumb; exact because 63 360 in/mile over 60 min/h is 1056.</summary>
    [Fact]
    public void Prop_rpm_times_pitch_in_inches_over_1056_is_miles_an_hour() => s_outboard.Sample(o =>
    {
        var (engine, gear, pitch) = Outboard(o.Rpm, o.Gear, o.Inches);
        Assert.Equal(o.Rpm / o.Gear * o.Inches / 1056, Slip.TheoreticalSpeed(engine, gear, pitch).MilesPerHour, 1e-12);
    });

    [Fact]
    public void Slip_is_one_at_standstill_and_none_at_the_theoretical_speed() => s_outboard.Sample(o =>
    {
        var (engine, gear, pitch) = Outboard(o.Rpm, o.Gear, o.Inches);
        Assert.Equal(1, Slip.ApparentSlipFraction(default, engine, gear, pitch));
        Assert.Equal(
            0, Slip.ApparentSlipFraction(Slip.TheoreticalSpeed(engine, gear, pitch), engine, gear, pitch), 1e-15);
    });

    [Fact]
    public void Slip_stays_the_same_when_speed_and_rpm_or_ratio_and_rpm_grow_alike() =>
        Gen.Select(s_outboard, Gen.Double[1, 50], Gen.Double[0.5, 2]).Sample((o, knots, k) =>
        {
            var (engine, gear, pitch) = Outboard(o.Rpm, o.Gear, o.Inches);
            var slip = Slip.ApparentSlipFraction(Speed.FromKnots(knots), engine, gear, pitch);
            var faster = EngineRate.FromRevolutionsPerMinute(o.Rpm * k);
            var room = 1e-13 * (1 + Math.Abs(slip));
            Assert.Equal(slip, Slip.ApparentSlipFraction(Speed.FromKnots(knots * k), faster, gear, pitch), room);
            Assert.Equal(
                slip,
                Slip.ApparentSlipFraction(Speed.FromKnots(knots), faster, new GearRatio(o.Gear * k), pitch),
                room);
        });

    [Fact]
    public void Slip_below_zero_is_told_and_not_clamped()
    {
        var (engine, gear, pitch) = Outboard(5500, 2.08, 9); // 19.583 kn without slip
        Assert.Equal(1 - (20 / 19.583299), Slip.ApparentSlipFraction(Speed.FromKnots(20), engine, gear, pitch), 1e-6);
    }

    [Fact]
    public void There_is_no_slip_to_speak_of_without_turns_or_pitch()
    {
        var (engine, gear, pitch) = Outboard(5500, 2.08, 13);
        var boat = Speed.FromKnots(20);
        Assert.Throws<ArgumentOutOfRangeException>(
            "engine", () => Slip.ApparentSlipFraction(boat, default, gear, pitch));
        Assert.Throws<ArgumentOutOfRangeException>(
            "pitch", () => Slip.ApparentSlipFraction(boat, engine, gear, default));
    }

    [Fact]
    public void A_stopped_engine_has_a_theoretical_speed_of_nothing() =>
        Assert.Equal(default, Slip.TheoreticalSpeed(default, new GearRatio(2), Length.FromInches(13)));

    [Fact]
    public void A_forgotten_gear_ratio_never_passes_for_direct_drive()
    {
        Assert.Throws<ArgumentOutOfRangeException>(
            "gear", () => PropRate.Of(EngineRate.FromRevolutionsPerMinute(5500), default));
        Assert.Throws<ArgumentOutOfRangeException>("gear", () => PropRate.Of(default, default));
    }

    private static (EngineRate Engine, GearRatio Gear, Length Pitch) Outboard(double rpm, double gear, double inches) =>
        (EngineRate.FromRevolutionsPerMinute(rpm), new GearRatio(gear), Length.FromInches(inches));
}
