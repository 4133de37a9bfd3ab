using FleetWake.Statistics.Use;
using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>
/// Boats that run as boats do, not as the method believes: outings of one to seven hours on some days, more of them in season,
/// none while it storms for a week, better and worse years.
/// </summary>
internal sealed class InventedHarbour
{
    private readonly Random _dice;
    private readonly double[] _shares;
    private readonly double _mean; // [h/d]
    private readonly double _year; // standard deviation of the logarithm of a boat's year

    internal InventedHarbour(int beginning, bool laidUp, double year)
    {
        _dice = new Random(beginning);
        _year = year;
        _mean = Math.Exp(0.5 * Normal.Sample(_dice, 0, 1));
        var depth = laidUp ? 3 : ContinuousUniform.Sample(_dice, 0, 1);
        _shares = [.. Enumerable.Range(0, 12).Select(m => Math.Max(0, 1 - (depth * Math.Cos(2 * Math.PI * m / 12))))];
        var mean = _shares.Average();
        for (var m = 0; m < 12; m++) _shares[m] /= mean;
    }

    internal static DateOnly FirstDay { get; } = new(2020, 1, 1);

    /// <summary>Hours of each day of a boat, from <see cref="FirstDay"/> on.</summary>
    internal double[] Days(int years)
    {
        var rate = Gamma.Sample(_dice, 3, 3 / _mean);
        var (hours, good, storm) = (new double[366 * years], 1.0, 0);
        for (var d = 0; d < hours.Length; d++)
        {
            var day = FirstDay.AddDays(d);
            if (day.DayOfYear == 1) good = Math.Exp(_year * Normal.Sample(_dice, 0, 1));
            storm = storm > 0 ? storm - 1 : ContinuousUniform.Sample(_dice, 0, 1) < 0.02 ? 7 : 0;
            var outings = storm > 0 ? 0 : Poisson.Sample(_dice, 1e-12 + (rate * good * _shares[day.Month - 1] / 4 * 1.14));
            for (var i = 0; i < outings; i++) hours[d] += ContinuousUniform.Sample(_dice, 1, 7);
            hours[d] = Math.Min(hours[d], 20);
        }

        return hours;
    }

    /// <summary>The meter read now and then.</summary>
    internal List<UseStretch> Read(double[] days, int first, int last)
    {
        var stretches = new List<UseStretch>();
        for (var from = first; from < last;)
        {
            var to = Math.Min(last, from + _dice.Next(3, 60));
            stretches.Add(new(FirstDay.AddDays(from), FirstDay.AddDays(to), days[(from + 1)..(to + 1)].Sum()));
            from = to;
        }

        return stretches;
    }

    internal double Uniform(double low, double high) => ContinuousUniform.Sample(_dice, low, high);

    internal double Normally() => Normal.Sample(_dice, 0, 1);
}
