namespace FleetWake.Propulsion.Tests.TwoWay;

/// <summary>Runs written as (knots, heading).</summary>
internal static class Runs
{
    internal static MeanSpeed Mean(params (double Knots, double Heading)[] runs) =>
        TwoWayMean.Of([.. runs.Select(run => new TimedRun(Speed.FromKnots(run.Knots), run.Heading))]);

    /// <summary>Alternating runs, the first with the current.</summary>
    internal static MeanSpeed Alternating(params double[] knots) =>
        Mean([.. knots.Select((v, i) => (v, i % 2 == 0 ? 40.0 : 220.0))]);
}
