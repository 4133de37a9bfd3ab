using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

/// <summary>
/// Trials drawn from the noise that is declared, in all kinds of air: corrected RPM and speed must lie about the truth as
/// far as they claim. Computed here, seeded; no published value.
/// </summary>
public class Claimed_doubt_matches_scatter
{
    private const int Trials = 4000;

    [Theory]
    [InlineData(2, 1)]
    [InlineData(2, 50)]
    [InlineData(4, 10)]
    public void Corrected_rpm_and_speed_lie_about_the_truth_as_they_claim(int runs, int step)
    {
        var random = new Random(20_240 + runs + step);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (rpm, speed, within) = (0.0, 0.0, 0);
        for (var i = 0; i < Trials; i++)
        {
            // The truth at reference, the boat's own g and kappa, and the air as it is and as it is read.
            var (g, kappa) = (0.38 + (0.10 * Normal()), 1.2 + (0.12 * Normal()));
            var (t, p, h) = (20 + (6 * Normal()), 1012 + (8 * Normal()), 0.2 + (0.6 * random.NextDouble()));
            var L = Math.Log(PowerCorrections.Of(ATrial.Air(t, p, h)).Factor.Value);
            var (N, V) = (5500 * Math.Exp(-g * L), 31 * Math.Exp(-kappa * g * L));
            var (byTrialN, byTrialV) = (1 + (0.0067 * Normal()), 1 + (0.010 * Normal()));
            var read = Enumerable.Range(0, runs).Select(run => ATrial.Run(
                Math.Round(N * byTrialN * (1 + (0.0025 * Normal())) / step) * step,
                (V * byTrialV * (1 + (0.015 * Normal()))) + (0.1 * Normal()) + (run % 2 == 0 ? 1 : -1),
                run % 2 == 0 ? 40 : 220)).ToArray();
            var trial = (ATrial.Of(read) with
            {
                Engine = ATrial.Engine with { TachometerStep = EngineRate.FromRevolutionsPerMinute(step) },
            }).In(ATrial.Air(t + Normal(), p + Normal(), Math.Clamp(h + (0.05 * Normal()), 0, 1))).Corrected();

            var zN = (trial.CorrectedRpm.Value - 5500) / trial.CorrectedRpm.StandardDeviation;
            var zV = (trial.CorrectedSpeedKnots!.Value.Value - 31) / trial.CorrectedSpeedKnots.Value.StandardDeviation;
            rpm += zN * zN / Trials;
            speed += zV * zV / Trials;
            within += Math.Abs(zN) < 1.2816 ? 1 : 0;
        }

        Assert.InRange(Math.Sqrt(rpm), 0.95, 1.05);
        Assert.InRange(Math.Sqrt(speed), 0.95, 1.05);
        Assert.InRange(within / (double)Trials, 0.78, 0.83); // of 80 % intervals
    }

    [Fact]
    public void The_covariance_of_rpm_and_speed_is_what_air_and_load_move_together()
    {
        var air = ATrial.Usual.In(ATrial.SultryAir).Corrected();
        var CF = air.Correction!.Factor;
        var (L, sd) = (Math.Log(CF.Value), CF.StandardDeviation / CF.Value);
        Assert.Equal(1.2 * ((L * L * 0.01) + (((0.38 * 0.38) + 0.01) * sd * sd)), air.LogCovariance, 1e-15);
        Assert.Equal(0, ATrial.Usual.EachRun(run => run with { Speed = null }).Corrected().LogCovariance);
        Assert.Equal(0, (ATrial.Usual with { PartThrottle = true }).Corrected().LogCovariance);

        var laden = ATrial.Usual with
        {
            PartThrottle = true,
            Conditions = ATrial.Usual.Conditions with { Load = Mass.FromKilograms(200) },
            Baseline = new TrialConditions { Load = Mass.FromKilograms(100) },
        };
        Assert.Equal(0.02 * 0.04, laden.Corrected().LogCovariance, 1e-12); // 100 kg of 680, assumed: 2 % and 4 %, together
        var known = laden with { Displacement = Mass.FromKilograms(1360) };
        Assert.Equal(0.01 * 0.02, known.Corrected().LogCovariance, 1e-12); // of twice that, known: half of each
        Assert.Throws<ArgumentOutOfRangeException>("Displacement", () => (laden with { Displacement = Mass.FromKilograms(1.8) }).Corrected());
    }
}
