using FleetWake.Statistics;
using FleetWake.Statistics.Rates;
using FleetWake.Statistics.Spares;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>Counts, needs and stocks.</summary>
internal static class CountCases
{
    internal static OracleMethod PoissonTests(Chance chance)
    {
        var method = new OracleMethod("poisson", "poisson.test: exact limits of a rate", 1e-9);
        for (var c = 0; c < 200; c++, method.Cases++)
        {
            var (count, exposure) = (c < 20 ? c : (int)Math.Exp(chance.Uniform(0, 9)), chance.Uniform(0.1, 500));
            var level = new[] { 0.8, 0.9, 0.95, 0.99 }[c % 4];
            method.Tell("poisson", "case,count,exposure,level", c, count, exposure, level);
            var rate = PoissonLimits.Rate(new Tally(count, exposure), level)!;
            method.Found($"{c}/low", rate.Low);
            method.Found($"{c}/high", rate.High);
        }

        return method;
    }

    internal static OracleMethod Needs(Chance chance)
    {
        var method = new OracleMethod("need", "pnbinom, qnbinom, ppois, qpois: needs, stocks that suffice, what is short", 1e-9);
        for (var c = 0; c < 200; c++, method.Cases++)
        {
            // Every fourth rate is known, and its need Poisson.
            var (mean, doubt, duration) = (Math.Exp(chance.Uniform(-2, 3)), c % 4 == 0 ? 0 : chance.Uniform(0.05, 1.5), chance.Uniform(0.1, 6));
            var (share, stock) = (chance.Uniform(0.5, 0.999), chance.Whole(0, 12));
            method.Tell("need", "case,mean,doubt,duration,share,stock", c, mean, doubt, duration, share, stock);
            var need = Need.During(new Estimate(mean, mean * doubt, 0, 0, 0.8), duration);
            var figures = BaseStock.Of(need, stock);
            method.Found($"{c}/ready", figures.ReadyRate);
            method.Found($"{c}/fill", figures.FillRate, 1e-3);
            method.Found($"{c}/waiting", figures.ExpectedWaiting, 1e-3);
            method.Found($"{c}/on hand", figures.ExpectedOnHand, 1e-3);
            method.Found($"{c}/enough", need.Enough(share));
            method.Found($"{c}/ordered", Newsvendor.Quantity(need, share, 1 - share));
        }

        return method;
    }

    internal static OracleMethod Losses(Chance chance)
    {
        var method = new OracleMethod("erlang", "dpois / ppois: Erlang's loss formula", 1e-10);
        for (var c = 0; c < 100; c++, method.Cases++)
        {
            var (away, stock) = (Math.Exp(chance.Uniform(-2, 4)), chance.Whole(0, 40));
            method.Tell("erlang", "case,away,stock", c, away, stock);
            method.Found($"{c}", ErlangLoss.ShareTurnedAway(away, stock));
        }

        return method;
    }
}
