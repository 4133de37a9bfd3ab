using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Causes;

/// <summary>
/// The ways in which a boat may answer, as far as its baseline leaves them open: over the open-water series, over the hull's
/// exponent and over the engine's torque slope, which the gain stands for.
/// </summary>
public static class ResponseModels
{
    /// <summary>m of planing hulls at full throttle: 1.0 to 1.4 by Savitsky's method, higher with appendages (computed; the range judged).</summary>
    private static readonly double[] s_exponents = [1.0, 1.25, 1.6];

    /// <summary>
    /// Middles of seven equally likely parts of a normal distribution [standard deviations], drawn apart by 1/0.911464 so that the
    /// seven have its whole standard deviation; the middles themselves have 0.911 of it.
    /// </summary>
    private static readonly double[] s_middles = [-1.607561, -0.868536, -0.401668, 0, 0.401668, 0.868536, 1.607561];

    /// <summary>The gain's range [1]: torque slopes steeper than -4 and flatter than 0.3 are not seen (judgement).</summary>
    private const double LeastGain = 0.18;
    private const double MostGain = 0.75;

    /// <summary>The models about a baseline.</summary>
    /// <param name="shape">Blades of the baseline's prop.</param>
    /// <param name="advanceRatio">J = V/(n D) at the baseline [1], above zero.</param>
    /// <param name="gain">g [1] as learned or as the prior has it.</param>
    /// <returns>63 models; fewer when a series has no thrust left at this J, or is so far outside its range that its slopes have lost their signs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No series is left: as a rule because the effective pitch is higher than the one given.</exception>
    public static IReadOnlyList<ResponseModel> About(BladeShape shape, double advanceRatio, Uncertain gain) => Found(shape, advanceRatio, gain) is { Count: > 0 } models
        ? models
        : throw new ArgumentOutOfRangeException(nameof(advanceRatio), advanceRatio, $"No series has thrust and slopes that make sense at this J with a pitch ratio of {shape.PitchRatio:0.###}: the effective pitch must be another than the one given.");

    /// <summary>The models; none when no series makes sense of this J.</summary>
    internal static IReadOnlyList<ResponseModel> Found(BladeShape shape, double advanceRatio, Uncertain gain)
    {
        var models = new List<ResponseModel>();
        foreach (var series in OpenWaterSeries.All)
        {
            var point = series.At(shape, advanceRatio);
            if (!(point.ThrustCoefficient > 0 && point.TorqueCoefficient > 0))
                continue;
            foreach (var m in s_exponents)
            {
                var h = BalanceSlopes.Of(point, shape, m, torqueSlope: 0).H; // free of e
                foreach (var middle in s_middles)
                {
                    var g = Math.Clamp(gain.High(middle), LeastGain, MostGain);
                    var slopes = BalanceSlopes.Of(point, shape, m, h - (1 / g));
                    if (IsSensible(slopes))
                        models.Add(new ResponseModel(slopes, -slopes.ThrustByDrag / slopes.TorqueByDrag, 1));
                }
            }
        }

        return models;
    }

    /// <summary>Any prop loses thrust and torque with J and gains both with pitch; a polynomial far outside its range may not.</summary>
    private static bool IsSensible(BalanceSlopes slopes) =>
        slopes is { A: < 0, B: < 0, TorqueByPitch: > 0, ThrustByPitch: > 0, TorqueByDrag: > 0, ThrustByDrag: <= 0 } && double.IsFinite(slopes.Gain) && slopes.Gain > 0;
}
