namespace FleetWake.Statistics.Tests.Lines;

/// <summary>
/// Five points exactly on 100 + 10 x, x = 0..4, level 80 %, and a noise floor of so many t that the band's half-width
/// is m sqrt(1/5 + u^2/10), u = x - 2, for the m each test names. Places worked by hand from that.
/// </summary>
public class Where_a_line_reaches_a_value
{
    private const double T = 1.6377443536962095; // 90 % point of t for 3 degrees of freedom

    [Fact]
    public void Earliest_line_and_latest_by_hand()
    {
        // m = 1, y = 200: (100 - 0.1) u^2 - 2*10*80 u + 6400 - 0.2 = 0, u = (800 -+ sqrt(659.98)) / 99.9
        var crossing = Band(1).Crossing(200, 5, 1000);
        Assert.Equal(10, crossing.X!.Value, 1e-9);
        Assert.Equal(2 + ((800 - Math.Sqrt(659.98)) / 99.9), crossing.LowX!.Value, 1e-9);
        Assert.Equal(2 + ((800 + Math.Sqrt(659.98)) / 99.9), crossing.HighX!.Value, 1e-9);
    }

    [Fact]
    public void A_falling_line_reaches_a_lower_value_at_the_mirrored_places()
    {
        var up = Band(1).Crossing(200, 5, 1000);
        var down = Line.Fitted([.. Line.Exact.Select(p => p with { Y = -p.Y })], noiseFloor: 1 / T).Crossing(-200, 5, 1000);
        Assert.Equal(up.X!.Value, down.X!.Value, 1e-12);
        Assert.Equal(up.LowX!.Value, down.LowX!.Value, 1e-12);
        Assert.Equal(up.HighX!.Value, down.HighX!.Value, 1e-12);
    }

    [Fact]
    public void What_lies_beyond_the_horizon_is_null_one_by_one()
    {
        var fit = Band(1); // 9.75, 10, 10.27
        Holds(fit.Crossing(200, 5, 9.7), low: false, x: false, high: false);
        Holds(fit.Crossing(200, 5, 9.9), low: true, x: false, high: false);
        Holds(fit.Crossing(200, 5, 10.1), low: true, x: true, high: false);
        Holds(fit.Crossing(200, 5, 10.3), low: true, x: true, high: true);
    }

    [Fact]
    public void A_band_that_holds_the_value_at_the_start_may_be_there_already()
    {
        var crossing = Band(1).Crossing(200, 9.9, 1000);
        Assert.Equal(9.9, crossing.LowX);
        Assert.Equal(10, crossing.X!.Value, 1e-9);
        Assert.Equal(10.265, crossing.HighX!.Value, 1e-3);
    }

    [Fact]
    public void A_slope_that_is_not_significant_has_an_earliest_but_no_latest()
    {
        // m = 40: (100 - 160) u^2 - 1600 u + 6400 - 320 = 0, so u = (-800 + sqrt(640000 + 364800)) / 60 after x = 4
        var fit = Band(40);
        Assert.True(fit.Slope.Low < 0);
        var crossing = fit.Crossing(200, 4, 1e9);
        Assert.Equal(2 + ((Math.Sqrt(1_004_800) - 800) / 60), crossing.LowX!.Value, 1e-9);
        Assert.Equal(10, crossing.X!.Value, 1e-9);
        Assert.Null(crossing.HighX);
    }

    [Fact]
    public void A_significant_slope_away_from_the_value_never_gets_there() =>
        Holds(Band(1).Crossing(100, 4, 1e9), low: false, x: false, high: false);

    [Fact]
    public void Away_from_a_value_still_within_the_band_it_may_be_there_already()
    {
        var crossing = Band(1).Crossing(139.5, 4, 1e9); // line 140 at 4, half-width 0.77
        Assert.Equal(4, crossing.LowX);
        Assert.Null(crossing.X);
        Assert.Null(crossing.HighX);
    }

    [Fact]
    public void An_insignificant_slope_away_may_still_turn_out_to_lead_there()
    {
        // m = 40, y = 20, d = -100: 60 u^2 - 2000 u - 9680 = 0 (times -1), u = (1000 + sqrt(1580800)) / 60
        var crossing = Band(40).Crossing(20, 4, 1e9);
        Assert.Equal(2 + ((1000 + Math.Sqrt(1_580_800)) / 60), crossing.LowX!.Value, 1e-9);
        Assert.Null(crossing.X);
        Assert.Null(crossing.HighX);
    }

    [Fact]
    public void A_value_passed_long_ago_is_not_reached_again() =>
        Holds(Band(1).Crossing(130, 40, 1e9), low: false, x: false, high: false);

    [Fact]
    public void On_the_value_at_the_start_it_is_reached_there()
    {
        var crossing = Band(1).Crossing(120, 2, 1000); // the centre: mean x 2, mean y 120
        Assert.Equal(2, crossing.X);
        Assert.Equal(2, crossing.LowX);
        Assert.Equal(2 + Math.Sqrt(0.2 / 99.9), crossing.HighX!.Value, 1e-9); // 99.9 u^2 = 0.2
    }

    [Fact]
    public void Without_doubt_all_three_are_one_place()
    {
        var crossing = Line.Fitted(Line.Exact).Crossing(200, 4, 1000);
        Assert.Equal(10, crossing.LowX!.Value, 1e-9);
        Assert.Equal(10, crossing.X!.Value, 1e-9);
        Assert.Equal(10, crossing.HighX!.Value, 1e-9);
    }

    [Fact]
    public void A_level_line_reaches_only_the_value_it_lies_on()
    {
        var level = Line.Fitted([new(0, 5, 0), new(1, 5, 0), new(2, 5, 0)]);
        Holds(level.Crossing(6, 2, 1e9), low: false, x: false, high: false);
        Assert.Equal(new Crossing(2, 2, 2), level.Crossing(5, 2, 1e9));
    }

    [Fact]
    public void A_start_or_horizon_that_makes_no_sense_is_refused()
    {
        var fit = Band(1);
        Assert.Throws<ArgumentOutOfRangeException>("horizonX", () => fit.Crossing(200, 5, 4.9));
        Assert.Throws<ArgumentOutOfRangeException>("horizonX", () => fit.Crossing(200, 5, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>("fromX", () => fit.Crossing(200, double.NaN, 9));
        Assert.Throws<ArgumentOutOfRangeException>("y", () => fit.Crossing(double.NaN, 5, 9));
    }

    private static LineFit Band(double m) => Line.Fitted(Line.Exact, noiseFloor: m / T);

    private static void Holds(Crossing crossing, bool low, bool x, bool high) =>
        Assert.Equal((low, x, high), (crossing.LowX.HasValue, crossing.X.HasValue, crossing.HighX.HasValue));
}
