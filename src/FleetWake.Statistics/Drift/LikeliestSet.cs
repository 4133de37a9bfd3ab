namespace FleetWake.Statistics.Drift;

/// <summary>Finds the likeliest set of gross errors among many trials, one change at a time.</summary>
internal static class LikeliestSet
{
    /// <summary>A spread of drifts that lets the trials decide [rpm per 100 h]: only to weigh sets with one number each.</summary>
    private const double LooseSlopeSd = 30;

    /// <param name="design">The model.</param>
    /// <param name="nodes">Noise.</param>
    /// <param name="settings">Weights of the nodes, chance of a gross error.</param>
    /// <param name="set">Becomes the likeliest set.</param>
    /// <param name="doubtful">How many places to return.</param>
    /// <returns>The trials whose change costs least.</returns>
    public static int[] Find(Design design, NoiseNode[] nodes, DriftSettings settings, bool[] set, int doubtful)
    {
        var n = design.Trials;
        var odds = Math.Log(settings.GrossChance / (1 - settings.GrossChance));
        var gain = new double[n];
        // Half of the trials cannot be gross errors: then it would be the others that are.
        for (var change = 0; change <= n / 2; change++)
        {
            var fits = Array.ConvertAll(nodes, node => new NodeFit(design, node, set));
            var now = Sum(fits, f => f.Base());
            for (var i = 0; i < n; i++)
            {
                var trial = i;
                gain[i] = Sum(fits, f => f.Flip(trial)) - now;
            }

            var best = Array.IndexOf(gain, gain.Max());
            if (!(gain[best] > 0)) break;
            set[best] = !set[best];
        }

        return [.. Enumerable.Range(0, n).OrderByDescending(i => gain[i]).Take(doubtful)];

        double Sum(NodeFit[] fits, Func<NodeFit, Component> make)
        {
            var (most, total) = (double.NegativeInfinity, 0.0);
            for (var j = 0; j < fits.Length; j++)
            {
                var c = make(fits[j]);
                var precision = c.Xx + (1 / (LooseSlopeSd * LooseSlopeSd));
                var log = Math.Log(settings.Noise.Weights[j]) + c.Log + (0.5 * c.Xu * c.Xu / precision) - (0.5 * Math.Log(precision)) + (c.Gross * odds);
                (most, total) = log > most ? (log, (total * Math.Exp(most - log)) + 1) : (most, total + Math.Exp(log - most));
            }

            return most + Math.Log(total);
        }
    }
}
