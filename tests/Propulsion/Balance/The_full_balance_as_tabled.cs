using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;
using static FleetWake.Propulsion.Tests.OpenWater.SeriesTables;

namespace FleetWake.Propulsion.Tests.Balance;

/// <summary>
/// wot_elasticities.csv: finite changes of the invented boats over three series, four engines and three hull exponents, solved by
/// another program; printed to one rpm and to a hundredth of a per cent.
/// </summary>
public class The_full_balance_as_tabled
{
    private const double Rpm = 0.6, Percent = 0.006;

    public static TheoryData<string[]> Elasticities => [.. QuotedTable.Rows("wot_elasticities.csv")];

    [Theory]
    [MemberData(nameof(Elasticities))]
    public void Every_finite_change_settles_as_tabled(string[] row)
    {
        var series = Named(row[1]);
        var balance = new WotBalance(series, InventedBoats.Boat(row[0], series, Engine(row[2]), Number(row[3])));
        var inch = new { Pitch = 1 / Pitch(balance), Diameter = 1 / balance.Baseline.Diameter.Inches };
        Assert.Equal(Number(row[4]), balance.Baseline.Speed.Knots, 0.051);
        Assert.Equal(Number(row[6]), balance.AtBaseline.AdvanceRatio, 6e-4);
        Assert.Equal(Number(row[7]), balance.AtBaseline.Efficiency, 6e-4);

        var steeper = balance.Solve(new BoatState { PitchChange = inch.Pitch });
        Assert.Equal(Number(row[8]), RpmOf(steeper), Rpm);
        Assert.Equal(Number(row[9]), RpmOf(balance.Solve(new BoatState { PitchChange = -inch.Pitch })), Rpm);
        Assert.Equal(Number(row[10]), PercentOf(steeper, balance), Percent);
        Assert.Equal(Number(row[12]), RpmOf(balance.Solve(new BoatState { DiameterChange = inch.Diameter })), Rpm);

        var weaker = balance.Solve(new BoatState { EngineTorqueChange = -0.01 });
        Assert.Equal(Number(row[16]), RpmOf(weaker), 0.06);
        Assert.Equal(Number(row[17]), PercentOf(weaker, balance), Percent);
        Assert.Equal(Number(row[18]), RpmOf(balance.Solve(new BoatState { EngineTorqueChange = -0.1 })), Rpm);

        var heavier = balance.Solve(new BoatState { ResistanceChange = 0.1 });
        Assert.Equal(Number(row[19]), RpmOf(heavier), Rpm);
        Assert.Equal(Number(row[20]), PercentOf(heavier, balance), Percent);

        var rougher = balance.Solve(new BoatState { SectionDragChange = 0.001 });
        Assert.Equal(Number(row[23]), RpmOf(rougher), Rpm);
        Assert.Equal(Number(row[24]), PercentOf(rougher, balance), Percent);
    }

    /// <summary>Only the B series knows another number of blades; the Gawn polynomial inherits its powers of Z.</summary>
    [Theory]
    [MemberData(nameof(Elasticities))]
    public void A_fourth_blade_at_the_same_area_settles_as_tabled(string[] row)
    {
        if (row[15].Length == 0)
            return;

        var series = Named(row[1]);
        var balance = new WotBalance(series, InventedBoats.Boat(row[0], series, Engine(row[2]), Number(row[3])));
        var shape = balance.Baseline.Shape;
        var four = balance.Solve(default, new BladeShape(4, shape.ExpandedAreaRatio, shape.PitchRatio), null);
        Assert.Equal(Number(row[15]), RpmOf(four), Rpm);
    }

    [Fact]
    public void The_table_is_whole() => Assert.Equal(144, Elasticities.Count);

    private static TorqueCurve Engine(string shape) => shape switch
    {
        _ when shape.StartsWith("cubic", StringComparison.Ordinal) => InventedBoats.Cubic,
        _ when shape.StartsWith("flat", StringComparison.Ordinal) => InventedBoats.Linear(0),
        _ => InventedBoats.Linear(Number(shape["linear slope ".Length..])),
    };

    private static double Pitch(WotBalance balance) => balance.Baseline.Shape.PitchRatio * balance.Baseline.Diameter.Inches;

    private static double RpmOf(WotPoint point) => point.Rate.RevolutionsPerMinute - 5500;

    private static double PercentOf(WotPoint point, WotBalance balance) =>
        100 * ((point.Speed.Knots / balance.Baseline.Speed.Knots) - 1);
}
