namespace FleetWake.Statistics.Drift;

/// <summary>What a trial to come may read, as an interval: the doubt of the level, the scatter of a trial, its gauge and the chance that it is misread count all.</summary>
public static class ForetoldReading
{
    private const int Halvings = 60;

    /// <summary>The interval of a reading so many hours after the last trial, no strike or work between.</summary>
    /// <param name="found">What the trials so far say.</param>
    /// <param name="settings">What that was assessed with.</param>
    /// <param name="hoursAhead">Engine hours after the last trial [h], zero or more.</param>
    /// <param name="gaugeSdRpm">Standard deviation of the gauge's own error [1/min], zero or more.</param>
    /// <param name="level">Level of the interval, above 0 and up to 0.9999.</param>
    /// <returns>RPM [1/min], the median as its value; null without a trial so far.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Hours, gauge or level are out of range.</exception>
    public static Estimate? Of(DriftAssessment found, DriftSettings settings, double hoursAhead, double gaugeSdRpm, double level)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(settings);
        if (!(hoursAhead >= 0) || !double.IsFinite(hoursAhead)) throw new ArgumentOutOfRangeException(nameof(hoursAhead), hoursAhead, "Must be zero or more and finite.");
        if (!(gaugeSdRpm >= 0) || !double.IsFinite(gaugeSdRpm)) throw new ArgumentOutOfRangeException(nameof(gaugeSdRpm), gaugeSdRpm, "Must be zero or more and finite.");
        var tail = Level.Tail(level);
        if (found.Levels is null) return null;
        var parts = Parts(found, settings, hoursAhead, gaugeSdRpm);
        var mean = parts.Sum(p => p.Weight * p.Mean);
        var sd = Math.Sqrt(parts.Sum(p => p.Weight * ((p.Sd * p.Sd) + Math.Pow(p.Mean - mean, 2))));
        var (least, most) = (parts.Min(p => p.Mean - (9 * p.Sd)), parts.Max(p => p.Mean + (9 * p.Sd)));
        return new Estimate(Place(0.5), sd, Place(tail), Place(1 - tail), level);

        double Place(double share)
        {
            var (low, high) = (least, most);
            for (var i = 0; i < Halvings; i++)
            {
                var middle = (low + high) / 2;
                if (parts.Sum(p => p.Weight * MathNet.Numerics.Distributions.Normal.CDF(p.Mean, p.Sd, middle)) < share) low = middle;
                else high = middle;
            }

            return (low + high) / 2;
        }
    }

    /// <summary>One normal for each drift, size of noise, and whether it is a gross error; weights bring the sum 1.</summary>
    private static List<(double Weight, double Mean, double Sd)> Parts(DriftAssessment found, DriftSettings settings, double hours, double gauge)
    {
        const double Negligible = 1e-6;
        var (r, gross) = (found.Levels!.Origin, settings.GrossChance);
        var parts = new List<(double Weight, double Mean, double Sd)>();
        for (var g = 0; g < SlopeGrid.Count; g++)
        {
            if (!(found.Weights[g] > Negligible)) continue;
            var (above, sd) = found.Levels.At(g);
            var mean = r + above + (SlopeGrid.At(g) * hours / 100);
            for (var j = 0; j < settings.Noise.Shares.Length; j++)
            {
                var variance = (sd * sd) + Math.Pow(r * settings.Noise.Shares[j], 2) + (gauge * gauge);
                var weight = found.Weights[g] * settings.Noise.Weights[j];
                parts.Add((weight * (1 - gross), mean, Math.Sqrt(variance)));
                parts.Add((weight * gross, mean, Math.Sqrt(variance + Math.Pow(r * settings.GrossShare, 2))));
            }
        }

        var total = parts.Sum(p => p.Weight);
        return parts.ConvertAll(p => (p.Weight / total, p.Mean, p.Sd));
    }
}
