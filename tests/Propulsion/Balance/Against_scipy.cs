using System.Globalization;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Tests.OpenWater;

namespace FleetWake.Propulsion.Tests.Balance;

/// <summary>
/// Reference/wot_balance_vectors.csv: the same balances in their dimensional form, solved by scipy.optimize.root; see
/// Reference/make/wot_balance.py.
/// </summary>
public class Against_scipy
{
    public static TheoryData<string[]> Vectors => [.. ReferenceTable.Rows("wot_balance_vectors.csv")];

    [Theory]
    [MemberData(nameof(Vectors))]
    public void A_balance_settles_where_scipy_finds_it(string[] row)
    {
        var x = row.Select(cell => double.TryParse(cell, CultureInfo.InvariantCulture, out var n) ? n : double.NaN).ToArray();
        var rated = EngineRate.FromRevolutionsPerMinute(x[2]);
        var balance = new WotBalance(SeriesTables.Named(row[1]), new WotBaseline
        {
            Rate = EngineRate.FromRevolutionsPerMinute(x[7]),
            Speed = Speed.FromKnots(x[8]),
            Gear = new GearRatio(x[3]),
            Diameter = Length.FromInches(x[4]),
            Shape = new BladeShape(3, x[6], x[5] / x[4]),
            Torque = row[9] == "cubic" ? TorqueCurve.Cubic(rated) : TorqueCurve.Linear(rated, x[10]),
            ResistanceExponent = x[11],
        });
        var point = balance.Solve(new BoatState
        {
            PitchChange = x[12],
            DiameterChange = x[13],
            SectionDragChange = x[14],
            EngineTorqueChange = x[15],
            ResistanceChange = x[16],
            WaterDensityChange = x[17],
            HubSlip = x[18],
            ThrustLoss = x[19],
            TorqueLoss = x[20],
        });
        Assert.Equal(x[21], point.Rate.RevolutionsPerMinute, 1e-6);
        Assert.Equal(x[22], point.Speed.Knots, 1e-8);
    }

    [Fact]
    public void The_vectors_are_whole() => Assert.Equal(144, Vectors.Count);
}
