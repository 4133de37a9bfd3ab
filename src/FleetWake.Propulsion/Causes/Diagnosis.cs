namespace FleetWake.Propulsion.Causes;

/// <summary>
/// Weighs causes of a change: the group first, then one cause if the readings single it out, else those that are tied and what
/// would part them. Every explanation is one cause at one prop or boat, nothing at all, or several at once; its probability is its
/// prior weight times the likelihood of all readings, over its size and over the models of how the boat answers.
/// </summary>
/// <remarks>
/// Sizes are integrated in closed form (<see cref="HalfNormalSize"/>), models by their weights. Several causes at once are taken as
/// two of them at random, brought to a normal curve of the same spread about nothing. First order in the sizes: at a pitch lost
/// by 8 % RPM and speed are off by 0.4 and 0.5 % (computed), which is less than the noise of one trial but not of many. A cause is no proof: only a look and a gauge are.
/// </remarks>
public static class Diagnosis
{
    /// <summary>What the case points to.</summary>
    /// <param name="given">The case.</param>
    /// <exception cref="ArgumentException">No model, a boat without baseline or with two, a number that is not finite, a doubt that is not above zero.</exception>
    public static CauseFinding Of(CauseCase given)
    {
        ArgumentNullException.ThrowIfNull(given);
        CaseCheck.Of(given);
        var rows = new CauseRows(given);
        var suspects = Suspected(given);
        var weights = new ModelSum[suspects.Count];
        var placed = suspects.Count(s => s.Where is not null);
        var total = given.Models.Sum(m => m.Weight);
        foreach (var model in given.Models)
        {
            var covariance = rows.Covariance(model);
            var whitening = new Whitening(covariance);
            var z = whitening.Of(rows.Y);
            var none = Math.Log(model.Weight / total) - (Whitening.Dot(z, z) / 2) - whitening.LogRootDeterminant;
            for (var i = 0; i < suspects.Count; i++)
            {
                var (prior, where) = suspects[i];
                if (where is null) continue;
                var a = rows.Response(model, prior.Cause, where);
                var u = whitening.Of(a);
                var size = HalfNormalSize.Of(Whitening.Dot(u, u), Whitening.Dot(u, z), prior.Width);
                weights[i].Add(none + size.LogOdds, size.Mean, size.MeanSquare);
                CauseRows.AddOuter(covariance, a, 2 * prior.Width * prior.Width / placed);
            }

            var several = new Whitening(covariance);
            var wide = several.Of(rows.Y);
            for (var i = 0; i < suspects.Count; i++)
                if (suspects[i].Where is null)
                    weights[i].Add(suspects[i].Prior.Cause == Cause.None ? none : Math.Log(model.Weight / total) - (Whitening.Dot(wide, wide) / 2) - several.LogRootDeterminant, 0, 0);
        }

        return Finding(given, suspects, weights);
    }

    /// <summary>Every explanation: each cause at each boat or prop of the case, and those that have no place.</summary>
    private static List<(CausePrior Prior, string? Where)> Suspected(CauseCase given)
    {
        var boats = given.Baselines.Select(b => b.Boat).ToList();
        var props = given.Baselines.Select(b => b.Prop)
            .Concat(given.WideOpen.Select(w => w.Prop)).Concat(given.PartThrottle.Select(p => p.Prop)).Concat(given.Gauges.Select(g => g.Prop))
            .Distinct().ToList();
        return
        [
            .. given.Priors.SelectMany(prior => prior.Cause is Cause.None or Cause.Several
                ? [(prior, (string?)null)]
                : (CauseFacts.TravelsWithProp(prior.Cause) ? props : boats).Select(where => (prior, (string?)where))),
        ];
    }

    private static CauseFinding Finding(CauseCase given, List<(CausePrior Prior, string? Where)> suspects, ModelSum[] weights)
    {
        var logs = weights.Select((w, i) => w.Log + Math.Log(suspects[i].Prior.Weight * Seen(given, suspects[i].Prior.Cause))).ToArray();
        var most = logs.Max();
        var sum = logs.Sum(log => Math.Exp(log - most));
        var found = suspects
            .Select((s, i) => new Suspect(s.Prior.Cause, s.Where, Math.Exp(logs[i] - most) / sum, weights[i].Size))
            .OrderByDescending(s => s.Probability).ToList();
        var (up, down) = (Share(found, CauseGroup.RpmUp), Share(found, CauseGroup.RpmDown));
        var tied = Tied(found);
        return new CauseFinding
        {
            Suspects = found,
            RpmUpProbability = up,
            RpmDownProbability = down,
            Group = given.WideOpen.Count == 0 ? CauseGroup.None : up >= down ? CauseGroup.RpmUp : CauseGroup.RpmDown,
            Named = tied.Count == 1 && tied[0].Where is not null ? tied[0] : null,
            Tied = tied,
            Tests = SeparatingTests.For([.. tied.Select(s => s.Cause)], given.AirUnread),
        };
    }

    /// <summary>How likely what was seen of ventilation is under a cause.</summary>
    private static double Seen(CauseCase given, Cause cause) => given.VentilationSeen is not { } seen ? 1
        : cause == Cause.Ventilation ? (seen ? 0.75 : 0.25)
        : seen ? 0.1 : 0.9;

    /// <summary>
    /// What cannot be told apart. That several causes are at work can never be ruled out by two numbers, so it does not need to be
    /// ten times less likely than a cause that is named, but less likely: then one cause is enough to say all that was read.
    /// </summary>
    private static List<Suspect> Tied(List<Suspect> found) => found[0].Cause == Cause.Several
        ? [.. found.Where(s => s.Probability * CauseFinding.NamingOdds > found[0].Probability)]
        : [.. found.Where(s => s.Cause != Cause.Several && s.Probability * CauseFinding.NamingOdds > found[0].Probability)];

    private static double Share(List<Suspect> found, CauseGroup group) =>
        found.Where(s => CauseFacts.GroupOf(s.Cause) == group).Sum(s => s.Probability);

    /// <summary>A sum over models of likelihoods, and of sizes weighed by them, kept as logarithms so that none is lost.</summary>
    private struct ModelSum
    {
        private double _scale, _sum, _size, _square;
        private bool _any;

        public readonly double Log => _scale + Math.Log(_sum);

        public readonly Uncertain Size => new(_size / _sum, Math.Sqrt(Math.Max(0, (_square / _sum) - (_size / _sum * (_size / _sum)))));

        public void Add(double log, double size, double square)
        {
            if (!_any || log > _scale)
            {
                var shrink = _any ? Math.Exp(_scale - log) : 0;
                (_sum, _size, _square, _scale, _any) = (_sum * shrink, _size * shrink, _square * shrink, log, true);
            }

            var weight = Math.Exp(log - _scale);
            (_sum, _size, _square) = (_sum + weight, _size + (weight * size), _square + (weight * square));
        }
    }
}
