namespace FleetWake.Statistics.Drift;

/// <summary>Finds the likeliest set of gross errors among many trials, one change at a time.</summary>
internal static class LikeliestSet
{
    /// <summary>A spread of drifts that lets the trials decide [rpm per 100 h]: only to weigh sets with one number each.</summary>
    private const double LooseSlopeSd = 30;

    /// <param name="design">The model.</param>
    /// <param name="maker">Works components out.</param>
    /// <param name="settings">Noise and chance of a gross error.</param>
    /// <param name="set">Becomes the likeliest set.</param>
    /// <param name="doubtful">How many places to return.</param>
    /// <returns>The trials whose change costs least.</returns>
    public static int[] Find(Design design, ComponentMaker maker, DriftSettings settings, bool[] set, int doubtful)
    {
        var n = design.Trials;
        var r = design.MedianRpm;
        var sum = maker.NewSum();
        var count = 0;
        var odds = Math.Log(settings.GrossChance / (1 - settings.GrossChance));
        var (shares, weights) = (settings.Noise.Shares.ToArray(), settings.Noise.Weights.ToArray());

        double Log()
        {
            var (most, total) = (double.NegativeInfinity, 0.0);
            for (var j = 0; j < shares.Length; j++)
            {
                var fine = r * r * shares[j] * shares[j];
                var c = maker.Make(j, fine, fine + (r * r * settings.GrossShare * settings.GrossShare), new(sum, count, -1, -1));
                var precision = c.Xx + (1 / (LooseSlopeSd * LooseSlopeSd));
                var log = Math.Log(weights[j]) + c.Log + (0.5 * c.Xu * c.Xu / precision) - (0.5 * Math.Log(precision)) + (count * odds);
                (most, total) = log > most ? (log, (total * Math.Exp(most - log)) + 1) : (most, total + Math.Exp(log - most));
            }

            return most + Math.Log(total);
        }

        void Flip(int i)
        {
            maker.Add(sum, i, set[i] ? -1 : 1);
            count += set[i] ? -1 : 1;
            set[i] = !set[i];
        }

        var gain = new double[n];
        var now = Log();
        for (var change = 0; change <= n; change++)
        {
            for (var i = 0; i < n; i++)
            {
                Flip(i);
                gain[i] = Log() - now;
                Flip(i);
            }

            var best = Array.IndexOf(gain, gain.Max());
            if (!(gain[best] > 1e-9) || change == n) break;
            Flip(best);
            now += gain[best];
        }

        return [.. Enumerable.Range(0, n).OrderByDescending(i => gain[i]).Take(doubtful)];
    }
}
