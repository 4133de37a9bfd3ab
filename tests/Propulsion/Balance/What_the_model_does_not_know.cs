using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.Balance;

public class What_the_model_does_not_know
{
    private static readonly WotBaseline s_boat =
        InventedBoats.Boat(InventedBoats.Names[3], OpenWaterSeries.Gawn, InventedBoats.Cubic);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_priors_of_gain_and_pitch_are_the_spread_of_the_models(int boat)
    {
        var spread = ModelSpread.Of(InventedBoats.Boat(InventedBoats.Names[boat], OpenWaterSeries.Gawn, InventedBoats.Cubic));
        Assert.Equal(27, spread.Models.Count);
        Assert.Empty(spread.WithoutThrust);
        Assert.Equal(0, spread.Extrapolating);
        // The priors in use: 0.38 +/- 0.10 and -0.73 +/- 0.15 (from these models; no published figure).
        Assert.Equal(0.38, spread.Gain.Value, 0.02);
        Assert.InRange(spread.Gain.StandardDeviation, 0.06, 0.10);
        Assert.Equal(-0.73, spread.RateByPitch.Value, 0.05);
        Assert.InRange(spread.RateByPitch.StandardDeviation, 0.10, 0.20);
    }

    [Fact]
    public void A_shift_is_spread_as_its_models_are_one_by_one()
    {
        var state = new BoatState { PitchChange = -0.06 };
        var spread = ModelSpread.Of(s_boat);
        var rates = spread.Models.Select(m => Math.Log(m.Solve(state).Rate.RevolutionsPerMinute / 5500)).ToArray();
        var shift = spread.Shift(state);
        Assert.Equal(rates.Average(), shift.LnRate.Value, 1e-12);
        Assert.Equal(
            Math.Sqrt(rates.Average(r => Math.Pow(r - rates.Average(), 2))), shift.LnRate.StandardDeviation, 1e-12);
        Assert.InRange(
            shift.Covariance, -shift.LnRate.StandardDeviation * shift.LnSpeed.StandardDeviation * 1.000001,
            shift.LnRate.StandardDeviation * shift.LnSpeed.StandardDeviation * 1.000001);
    }

    [Fact]
    public void No_change_is_known_for_sure()
    {
        var shift = ModelSpread.Of(s_boat).Shift(default);
        Assert.Equal(0, shift.LnRate.Value, 1e-12);
        Assert.Equal(0, shift.LnSpeed.StandardDeviation, 1e-12);
    }

    [Fact]
    public void A_series_by_which_the_prop_has_no_thrust_is_left_out_and_named()
    {
        var end = OpenWaterSeries.All.ToDictionary(s => s, s => s.Curve(s_boat.Shape).EndOfThrust!.Value);
        var between = (end.Values.Min() + end.Values.Max()) / 2;
        var fast = s_boat with { Speed = Speed.FromKnots(s_boat.Speed.Knots * between / OfBoat()) };
        var spread = ModelSpread.Of(fast);
        Assert.Equal(end.Where(e => e.Value <= between).Select(e => e.Key), spread.WithoutThrust);
        Assert.NotEmpty(spread.WithoutThrust);

        double OfBoat() => new WotBalance(OpenWaterSeries.Gawn, s_boat).AtBaseline.AdvanceRatio;
    }

    [Fact]
    public void A_steep_prop_is_marked_as_extrapolated_by_the_series_that_end_before_it()
    {
        var steep = s_boat with
        {
            Shape = new BladeShape(3, 0.6, 1.6),
            Speed = Speed.FromKnots(s_boat.Speed.Knots * 1.35),
        };
        Assert.Equal(18, ModelSpread.Of(steep).Extrapolating); // all but Gawn-Burrill, which goes to P/D = 2
    }

    [Fact]
    public void Without_any_model_there_is_no_spread() => Assert.Throws<ArgumentException>(() =>
        ModelSpread.Of(s_boat, [], [InventedBoats.Cubic], [1.2]));

    [Fact]
    public void The_pitch_that_takes_the_rated_torque_is_found_again()
    {
        var pitch = EffectivePitch.ByTorque(OpenWaterSeries.Gawn, s_boat, Power.FromHorsepower(150), 0.97);
        Assert.Equal(17, pitch!.Value.Inches, 1e-6);
    }

    [Fact]
    public void A_boat_faster_than_its_stamped_pitch_has_an_effective_pitch_all_the_same()
    {
        var fast = s_boat with { Speed = Speed.FromKnots(44) };
        Assert.Throws<ArgumentOutOfRangeException>(() => new WotBalance(OpenWaterSeries.Gawn, fast));
        var pitch = EffectivePitch.ByTorque(OpenWaterSeries.Gawn, fast, Power.FromHorsepower(150), 0.97)!.Value;
        Assert.InRange(pitch.Inches, 18, 23);
        var shape = fast.Shape.WithPitchRatio(pitch.Metres / fast.Diameter.Metres);
        var balance = new WotBalance(OpenWaterSeries.Gawn, fast with { Shape = shape });
        Assert.Equal(1, balance.TorqueCalibration(Power.FromHorsepower(150), 0.97), 1e-9);
    }

    [Fact]
    public void No_pitch_takes_a_thousand_times_the_torque() => Assert.Null(
        EffectivePitch.ByTorque(OpenWaterSeries.Gawn, s_boat, Power.FromHorsepower(150_000), 0.97));
}
