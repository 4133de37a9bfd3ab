using FleetWake.Statistics.Life;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>Lifetimes in whole hours, so that some are tied, half of them cut short.</summary>
internal static class LifeCases
{
    internal static OracleMethod KaplanMeierCurves(Chance chance)
    {
        var method = new OracleMethod("survfit", "survival::survfit: share, Greenwood's error, three kinds of limits", 1e-10);
        for (var c = 0; c < 60; c++, method.Cases++)
        {
            var lives = Lives(chance, chance.Whole(3, 60), isLate: c % 2 == 1);
            foreach (var life in lives) method.Tell("survfit", "case,from,to,ended", c, life.FromHours, life.Hours, life.HasEnded ? 1 : 0);
            foreach (var kind in Enum.GetValues<SurvivalLimits>())
            {
                foreach (var step in KaplanMeier.Of(lives, 0.8, kind)!.Steps.Where(step => step.Alive.Value > 0))
                {
                    var key = $"{c}/{kind}/{step.Hours:0}";
                    method.Found($"{key}/alive", step.Alive.Value);
                    method.Found($"{key}/se", step.Alive.StandardError);
                    method.Found($"{key}/low", step.Alive.Low, 1);
                    method.Found($"{key}/high", step.Alive.High, 1);
                }
            }
        }

        return method;
    }

    internal static OracleMethod LogRanks(Chance chance)
    {
        var method = new OracleMethod("survdiff", "survival::survdiff: chi-square, ends expected; strata in every other case", 1e-9);
        for (var c = 0; c < 60; c++, method.Cases++)
        {
            var strata = new Lifetime[c % 2 == 0 ? 1 : 3][][];
            var groups = chance.Whole(2, 4);
            for (var s = 0; s < strata.Length; s++)
            {
                strata[s] = [.. Enumerable.Range(0, groups).Select(_ => Lives(chance, chance.Whole(5, 30), isLate: false))];
                for (var g = 0; g < groups; g++)
                {
                    foreach (var life in strata[s][g]) method.Tell("survdiff", "case,stratum,group,to,ended", c, s, g, life.Hours, life.HasEnded ? 1 : 0);
                }
            }

            var test = LogRank.OfStrata(strata)!;
            method.Found($"{c}/chi2", test.ChiSquared, 0.01);
            for (var g = 0; g < groups; g++) method.Found($"{c}/expected/{g}", test.Expected[g]);
        }

        return method;
    }

    internal static OracleMethod Weibulls(Chance chance)
    {
        var method = new OracleMethod("survreg", "survival::survreg, Weibull: shape, scale by group, their errors, likelihood", 1e-6);
        for (var c = 0; c < 60; c++, method.Cases++)
        {
            var groups = Enumerable.Range(0, 1 + (c % 3)).Select(_ => Lives(chance, chance.Whole(10, 60), isLate: false)).ToArray();
            for (var g = 0; g < groups.Length; g++)
            {
                foreach (var life in groups[g]) method.Tell("survreg", "case,group,to,ended", c, g, life.Hours, life.HasEnded ? 1 : 0);
            }

            var lives = WeibullFit.OfGroups(groups, 0.8)!;
            method.Found($"{c}/shape", lives[0]!.Shape.Value);
            method.Found($"{c}/se/log shape", lives[0]!.Shape.StandardError / lives[0]!.Shape.Value);
            method.Found($"{c}/likelihood", lives[0]!.LogLikelihood);
            for (var g = 0; g < groups.Length; g++)
            {
                method.Found($"{c}/scale/{g}", lives[g]!.ScaleHours.Value);
                method.Found($"{c}/se/log scale/{g}", lives[g]!.ScaleHours.StandardError / lives[g]!.ScaleHours.Value);
            }
        }

        return method;
    }

    private static Lifetime[] Lives(Chance chance, int count, bool isLate)
    {
        var (shape, scale) = (chance.Uniform(0.7, 2.5), chance.Uniform(100, 600));
        var lives = new List<Lifetime>();
        while (lives.Count < count || lives.Count(life => life.HasEnded) < 3)
        {
            var (end, seen) = (Math.Ceiling(chance.Weibull(shape, scale)), Math.Ceiling(chance.Uniform(0.2, 2) * scale));
            var from = isLate && chance.Happens(0.4) ? Math.Floor(chance.Uniform(0, 0.5) * scale) : 0;
            if (Math.Min(end, seen) > from) lives.Add(new(Math.Min(end, seen), end <= seen) { FromHours = from });
        }

        return [.. lives];
    }
}
