using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// What the next trial may read, and what each reading would change: for each drift s the level at that trial is normal, so a
/// reading y has the density sum_s w_s N(y; m_s, v_s + noise), and given it each level is normal again.
/// </summary>
internal sealed class NextReading
{
    /// <summary>Drifts with less weight are left out.</summary>
    private const double Negligible = 1e-9;
    private const double Reach = 7; // standard deviations beyond the outermost drift's reading
    private const int MostPlaces = 800;

    private readonly List<FourDrifts> _lanes = [];
    private readonly double[] _places; // readings, evenly spaced
    private readonly double[] _density; // at each, brought to the sum 1
    private readonly double[] _variance; // of the drift after each
    private readonly double[] _chance; // of leaving the band after each
    private readonly double _before; // variance of the drift now

    private NextReading(ReadOnlySpan<double> weights, ReadOnlySpan<double> means, ReadOnlySpan<double> variances, SoundSeries sound, double withinHours, double noiseVariance)
    {
        Span<int> four = stackalloc int[4];
        var (count, low, high, least) = (0, double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity);
        for (var g = 0; g < weights.Length; g++)
        {
            if (!(weights[g] > Negligible)) continue;
            var sd = Math.Sqrt(variances[g] + noiseVariance);
            // The chance after a reading turns from 0 to 1 within so many rpm of reading, which may be less than the curve's own width.
            var turns = sd * Math.Sqrt(noiseVariance / variances[g]);
            (low, high, least) = (Math.Min(low, means[g] - (Reach * sd)), Math.Max(high, means[g] + (Reach * sd)), Math.Min(least, Math.Min(sd, turns)));
            four[count++] = g;
            if (count < 4) continue;
            _lanes.Add(FourDrifts.Of(four, weights, means, variances, sound, withinHours, noiseVariance));
            count = 0;
        }

        if (count > 0) _lanes.Add(FourDrifts.Of(four[..count], weights, means, variances, sound, withinHours, noiseVariance));
        foreach (var lane in _lanes) Present += Vector256.Sum(lane.Weight * lane.Now);
        _before = Variance(double.NaN, out _, out _);
        // Half of the narrowest width apart, sums of smooth curves are exact to all digits that count.
        var n = (int)Math.Clamp(Math.Ceiling((high - low) / (0.5 * least)), 2, MostPlaces);
        (_places, _density, _variance, _chance) = (new double[n], new double[n], new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            _places[i] = low + ((high - low) * i / (n - 1));
            _variance[i] = Variance(_places[i], out _density[i], out _chance[i]);
        }

        SlopeGrid.Normalise(_density);
    }

    /// <summary>Variance of a good trial's reading about the level [rpm^2], without the gauge's own.</summary>
    public required double FleetVariance { get; init; }

    /// <summary>Chance now of having left the band so many hours after that trial, at either end.</summary>
    public double Present { get; }

    /// <summary>The mean of that chance over all readings.</summary>
    public double MeanAfter => _chance.Zip(_density, (c, d) => c * d).Sum();

    /// <returns>Null where not even the level is known from anything.</returns>
    public static NextReading? Of(DriftAssessment found, DriftSettings settings, SoundSeries sound, NextTrialPlan plan)
    {
        if (found.Levels is null && !sound.HasBand) return null;
        var expected = settings.LevelShare * (sound.MinRpm + sound.MaxRpm) / 2;
        var r = found.Levels?.Origin ?? expected;
        var noise = 0.0;
        for (var j = 0; j < settings.Noise.Shares.Length; j++) noise += settings.Noise.Weights[j] * r * r * settings.Noise.Shares[j] * settings.Noise.Shares[j];
        var since = sound.StepSinceLast(settings);
        Span<double> weights = stackalloc double[SlopeGrid.Count], means = stackalloc double[SlopeGrid.Count], variances = stackalloc double[SlopeGrid.Count];
        for (var g = 0; g < weights.Length; g++)
        {
            weights[g] = found.Weights[g];
            if (!(weights[g] > Negligible)) continue;
            if (found.Levels is { } levels)
            {
                var (above, sd) = levels.At(g);
                means[g] = r + above + (SlopeGrid.At(g) * plan.HoursAhead / 100) + (since?.Mean ?? 0);
                variances[g] = (sd * sd) + (since?.Variance ?? 0);
            }
            else
            {
                (means[g], variances[g]) = (expected, settings.LevelSdRpm * settings.LevelSdRpm);
            }
        }

        return new(weights, means, variances, sound, plan.ActWithinHours, noise + (plan.GaugeSdRpm * plan.GaugeSdRpm)) { FleetVariance = noise };
    }

    /// <summary>The share of the drift's variance that the trial is expected to remove.</summary>
    public double DoubtRemovedShare()
    {
        var after = 0.0;
        for (var i = 0; i < _density.Length; i++) after += _density[i] * _variance[i];
        // Each drift stands for a step of the grid, which no trial takes away.
        return Math.Clamp((_before - after) / (_before + (1.0 / 12)), 0, 1);
    }

    /// <summary>The chance of a reading after which the chance of leaving the band lies on the other side of a threshold.</summary>
    public double CrossesChance(double threshold)
    {
        var acts = Present >= threshold;
        var (total, below) = (0.0, 0.0); // below: chance of a reading under the last crossing
        var was = Other(_chance[0]);
        for (var i = 1; i < _places.Length; i++)
        {
            var now = Other(_chance[i]);
            if (now == was) continue;
            var upTo = Below(Crossing(_places[i - 1], _places[i], was));
            total += was ? upTo - below : 0;
            (was, below) = (now, upTo);
        }

        return Math.Clamp(total + (was ? 1 - below : 0), 0, 1);

        // A hair's breadth is no change: a trial that shows nothing leaves all chances where they were, but for rounding.
        bool Other(double chance) => acts ? chance < threshold - 1e-7 : chance >= threshold + 1e-7;

        double Crossing(double low, double high, bool atLow)
        {
            for (var k = 0; k < 20; k++)
            {
                var middle = (low + high) / 2;
                Variance(middle, out _, out var chance);
                if (Other(chance) == atLow) low = middle;
                else high = middle;
            }

            return (low + high) / 2;
        }
    }

    /// <summary>Variance of the drift after a reading, or before any for a NaN.</summary>
    private double Variance(double y, out double density, out double chance)
    {
        Vector256<double> total = default, first = default, second = default, outside = default;
        foreach (var lane in _lanes)
        {
            var (w, leaves) = double.IsNaN(y) ? (lane.Weight, lane.Now) : lane.After(Vector256.Create(y));
            total += w;
            first += w * lane.Drift;
            second += w * lane.Drift * lane.Drift;
            outside += w * leaves;
        }

        density = Vector256.Sum(total);
        var (mean, share) = (Vector256.Sum(first) / density, Vector256.Sum(outside) / density);
        chance = Math.Clamp(share, 0, 1);
        return Math.Max(0, (Vector256.Sum(second) / density) - (mean * mean));
    }

    private double Below(double y)
    {
        var sum = Vector256<double>.Zero;
        foreach (var lane in _lanes) sum += lane.Weight * Normal.Cdf((Vector256.Create(y) - lane.Mean) / lane.Sd);
        return Math.Clamp(Vector256.Sum(sum), 0, 1);
    }
}
