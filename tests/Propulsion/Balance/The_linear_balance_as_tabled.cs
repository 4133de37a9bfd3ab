using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;
using static FleetWake.Propulsion.Tests.OpenWater.SeriesTables;

namespace FleetWake.Propulsion.Tests.Balance;

/// <summary>
/// wot_linear_coefficients.csv and wot_signatures.csv: computed for the invented boats over the Gawn series, by another program from
/// the same equations; no published table exists.
/// </summary>
public class The_linear_balance_as_tabled
{
    /// <summary>So small a change that the second order is lost in the last digit printed.</summary>
    private const double Small = 1e-6;

    public static TheoryData<string[]> Coefficients =>
        [.. QuotedTable.Rows("wot_linear_coefficients.csv").Where(row => row[1] == "-1.0")];

    /// <summary>Less the rows of blade area, a change that no state here has.</summary>
    public static TheoryData<string[]> Signatures =>
        [.. QuotedTable.Rows("wot_signatures.csv").Where(row => !row[2].StartsWith("blade area", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Coefficients))]
    public void The_slopes_of_each_boat_are_those_of_the_table(string[] row)
    {
        var balance = Gawn(row[0], InventedBoats.Cubic);
        var (expected, slopes) = (row[1..].Select(Number).ToArray(), balance.Slopes);
        Assert.Equal(expected[1], slopes.M);
        Assert.Equal(expected[2], balance.Baseline.Speed.Knots, 0.051);
        Assert.Equal(expected[4], balance.AtBaseline.AdvanceRatio, 1e-3);
        Assert.Equal(expected[5], slopes.A, 1e-3);
        Assert.Equal(expected[6], slopes.B, 1e-3);
        Assert.Equal(expected[7], slopes.TorqueByPitch, 1e-3);
        Assert.Equal(expected[8], slopes.ThrustByPitch, 1e-3);
        Assert.Equal(expected[11], slopes.Kappa, 1e-4);
        Assert.Equal(-1, slopes.E, 1e-12);
    }

    [Theory]
    [MemberData(nameof(Signatures))]
    public void Every_cause_moves_rate_and_speed_as_tabled(string[] row)
    {
        var e = Number(row[1]);
        var slopes = Gawn(row[0], e == -1 ? InventedBoats.Cubic : InventedBoats.Linear(e)).Slopes;
        var shift = LinearBalance.Shift(slopes, Cause(row[2]));
        var perCent = 1 / Small; // the table's unit is a change of 1 %, and its answers are per cent
        Assert.Equal(Number(row[3]), shift.LnRate * perCent, 2e-4);
        Assert.Equal(Number(row[4]), shift.LnSpeed * perCent, 2e-4);
        Assert.Equal(Number(row[6]), shift.Contrast * perCent, 2e-4);
    }

    [Fact]
    public void The_tables_are_whole() => Assert.Equal((4, 144), (Coefficients.Count, Signatures.Count));

    [Fact]
    public void Neither_engine_nor_air_moves_the_contrast()
    {
        var slopes = Gawn(InventedBoats.Names[3], InventedBoats.Cubic).Slopes;
        Assert.Equal(0, LinearBalance.Shift(slopes, new BoatState { EngineTorqueChange = -0.05 }).Contrast, 1e-15);
    }

    private static WotBalance Gawn(string boat, TorqueCurve torque) =>
        new(OpenWaterSeries.Gawn, InventedBoats.Boat(boat, OpenWaterSeries.Gawn, torque));

    private static BoatState Cause(string cause) => cause.Split([' ', ','])[0] switch
    {
        "pitch" => new() { PitchChange = -Small },
        "diameter" => new() { DiameterChange = -Small },
        "section" => new() { SectionDragChange = 0.1 * Small },
        "lift" => new() { ThrustLoss = Small, TorqueLoss = 0.8 * Small },
        "engine" => new() { EngineTorqueChange = -Small },
        "hull" => new() { ResistanceChange = Small },
        "hub" => new() { HubSlip = Small },
        "water" when cause.Contains("0.6", StringComparison.Ordinal) =>
            new() { WaterDensityChange = -Small, ResistanceChange = -0.6 * Small },
        "water" => new() { WaterDensityChange = -Small },
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "No such cause."),
    };
}
