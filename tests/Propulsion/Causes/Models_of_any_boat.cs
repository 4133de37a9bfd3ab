using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>Whatever a dock records of prop and speed, the models about it can be weighed, or there are none and it is said.</summary>
public class Models_of_any_boat
{
    public static TheoryData<int> Blades => [2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Blades))]
    public void Every_model_that_is_made_can_be_weighed(int blades)
    {
        var bad = new List<string>();
        for (var ratio = 0.4; ratio < 2.0; ratio += 0.05)
            for (var slip = 0.02; slip < 0.8; slip += 0.03)
            {
                try
                {
                    var models = ResponseModels.About(new BladeShape(blades, 0.55, ratio), ratio * (1 - slip), new Uncertain(0.38, 0.10));
                    var finding = Diagnosis.Of(Tern.Alone(0.02, -0.01) with { Models = models });
                    if (!finding.Suspects.All(s => double.IsFinite(s.Probability))) bad.Add($"NaN {ratio:0.00} {slip:0.00}");
                }
                catch (ArgumentException e)
                {
                    bad.Add($"{e.ParamName} {ratio:0.00} {slip:0.00}");
                }
            }

        Assert.True(bad.Count == 0, $"{bad.Count}: {string.Join("; ", bad)}");
    }
}
