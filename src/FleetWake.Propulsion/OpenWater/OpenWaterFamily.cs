namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// A series at one number of blades and one area, over all pitches: its terms summed by their powers of J and P/D once, so that
/// another pitch costs seven multiplications a power of J and not a pass through 86 terms.
/// </summary>
internal sealed class OpenWaterFamily
{
    private const int Pitches = 7; // powers 0 to 6

    private readonly double[] _thrust, _torque;
    private readonly SeriesRange _range;
    private readonly bool _areaAndBladesInRange;
    private readonly double _lowest;

    internal OpenWaterFamily(
        SeriesTerm[] thrust, SeriesTerm[] torque, SeriesRange range, int blades, double area, double lowestAdvance)
    {
        (_thrust, _torque) = (Gathered(thrust, blades, area), Gathered(torque, blades, area));
        (_range, _lowest) = (range, lowestAdvance);
        _areaAndBladesInRange = range.Holds(blades, area, range.LowestPitch);
    }

    internal LoadCurve At(double pitchRatio) => new(
        Cubic(_thrust, pitchRatio), Cubic(_torque, pitchRatio),
        _areaAndBladesInRange && pitchRatio >= _range.LowestPitch && pitchRatio <= _range.HighestPitch,
        _lowest, _range.HighestAdvance);

    private static double[] Gathered(SeriesTerm[] terms, double blades, double area)
    {
        var sums = new double[4 * Pitches];
        foreach (var term in terms)
            sums[(term.S * Pitches) + term.T] += term.C * Math.Pow(area, term.U) * Math.Pow(blades, term.V);
        return sums;
    }

    private static Cubic Cubic(ReadOnlySpan<double> sums, double P) => new(
        Horner(sums[..Pitches], P), Horner(sums.Slice(Pitches, Pitches), P),
        Horner(sums.Slice(2 * Pitches, Pitches), P), Horner(sums.Slice(3 * Pitches, Pitches), P));

    private static double Horner(ReadOnlySpan<double> c, double x) =>
        c[0] + (x * (c[1] + (x * (c[2] + (x * (c[3] + (x * (c[4] + (x * (c[5] + (x * c[6])))))))))));
}
