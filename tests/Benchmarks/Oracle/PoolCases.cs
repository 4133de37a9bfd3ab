using FleetWake.Statistics.Rates;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>Effects of several places, pooled. Their spread lies well above their doubts, so that it is not nothing.</summary>
internal static class PoolCases
{
    /// <summary>
    /// As many readings in each place: then lme's noise is that within places, and the means of the places pool to the rest of
    /// lme. (Of unlike doubts, held fixed, lme 3.1-162 does not find the top of its own restricted likelihood.)
    /// </summary>
    internal static OracleMethod Alike(Chance chance)
    {
        var method = new OracleMethod("lme", "nlme::lme, as many readings everywhere: mean, its error, spread, each place drawn to the mean", 1e-5);
        for (var c = 0; c < 30; c++, method.Cases++)
        {
            var (tau, count) = (chance.Uniform(30, 80), chance.Whole(3, 6));
            var places = Enumerable.Range(0, chance.Whole(5, 30)).Select(_ => chance.Normal()).Select(u =>
                Enumerable.Range(0, count).Select(_ => 85 + (tau * u) + (30 * chance.Normal())).ToArray()).ToArray();
            for (var i = 0; i < places.Length; i++)
            {
                foreach (var y in places[i]) method.Tell("lme", "case,place,value", c, i, y);
            }

            var within = places.Sum(place => place.Sum(y => Math.Pow(y - place.Average(), 2))) / (places.Length * (count - 1));
            Found(method, c, [.. places.Select(place => new Effect(place.Average(), Math.Sqrt(within / count)))]);
        }

        return method;
    }

    /// <summary>Doubts that differ, each known.</summary>
    internal static OracleMethod Unlike(Chance chance)
    {
        var method = new OracleMethod("reml", "optimize of the restricted likelihood, dense matrices: the same where doubts differ", 1e-5);
        for (var c = 0; c < 30; c++, method.Cases++)
        {
            var tau = chance.Uniform(30, 80);
            var effects = Enumerable.Range(0, chance.Whole(5, 30)).Select(_ => chance.Uniform(5, 30))
                .Select(se => new Effect(85 + (tau * chance.Normal()) + (se * chance.Normal()), se)).ToArray();
            foreach (var effect in effects) method.Tell("reml", "case,value,variance", c, effect.Value, effect.StandardError * effect.StandardError);
            Found(method, c, effects);
        }

        return method;
    }

    private static void Found(OracleMethod method, int c, Effect[] effects)
    {
        var pool = EffectPool.Of(effects, 0.8)!;
        method.Found($"{c}/mean", pool.Mean.Value);
        method.Found($"{c}/se", pool.PlainStandardError);
        method.Found($"{c}/tau", pool.Tau);
        for (var i = 0; i < effects.Length; i++) method.Found($"{c}/each/{i}", pool.Each[i].Value, effects[i].StandardError);
    }
}
