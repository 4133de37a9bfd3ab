using FleetWake.Statistics.Drift;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>The drift estimator as plain regression, and whole.</summary>
internal static class DriftCases
{
    /// <summary>One noise, known, and one of some trials' own, no gross errors, priors of no account: weighted least squares.</summary>
    internal static OracleMethod Regressions(Chance chance)
    {
        var method = new OracleMethod("regression", "lm, y ~ x + after + air + load, weighted, noise known: drift, step, level at the last trial, their errors", 1e-6);
        while (method.Cases < 60)
        {
            var series = Series(chance, chance.Whole(8, 20), [StepKind.Repitch], chance.Uniform(25, 35), 0);
            var r = Median(series);
            var noise = chance.Uniform(5, 15);
            var settings = DriftSettings.Recommended with
            {
                Noise = NoiseNodes.Of([noise / r], [1]),
                GrossChance = 1e-200,
                LevelSdRpm = 1e8,
                RepitchSdRpm = 1e8,
                TemperatureSdShare = 1e3,
                LoadSdShare = 1e3,
            };
            var found = DriftEstimator.Assess(series, SlopePrior.Of(Enumerable.Repeat(1.0, SlopeGrid.Count).ToArray()), settings);
            var sd = Math.Sqrt(Math.Pow(found.RpmPer100Hours.StandardError, 2) - (1.0 / 12)); // each place of the grid stands for a step
            if (!(sd is > 1.3 and < 6) || Math.Abs(found.RpmPer100Hours.Value - 30) > 50 - (7 * sd)) continue; // must fit on the grid of drifts
            var c = method.Cases++;
            Tell(method, c, series, noise);
            method.Found($"{c}/drift", found.RpmPer100Hours.Value);
            method.Found($"{c}/drift se", sd);
            method.Found($"{c}/level", found.LevelRpm!.Value);
            method.Found($"{c}/level se", found.LevelRpm.StandardError);
            method.Found($"{c}/step", found.Steps[0].Rpm.Value, 1);
            method.Found($"{c}/step se", found.Steps[0].Rpm.StandardError);
        }

        return method;
    }

    /// <summary>
    /// Everything: five noises and trials with one of their own, gross errors, strikes and repitches, weather, a prior of sound and wearing props. R adds up dense
    /// multivariate normal densities.
    /// </summary>
    internal static OracleMethod Mixtures(Chance chance)
    {
        var method = new OracleMethod("mixture", "dense normal densities summed: drift, 10 and 90 % points, level, steps, gross errors, evidence", 1e-5);
        for (var c = 0; c < 40; c++, method.Cases++)
        {
            var series = Series(chance, chance.Whole(1, 8), [StepKind.Strike, StepKind.Repitch], chance.Uniform(-5, 60), 0.15);
            Tell(method, c, series, double.NaN);
            var found = DriftEstimator.Assess(series, SlopePrior.SoundOrWearing(0.15, 2, 12), DriftSettings.Recommended);
            method.Found($"{c}/drift", found.RpmPer100Hours.Value, 1);
            method.Found($"{c}/drift se", found.RpmPer100Hours.StandardError);
            method.Found($"{c}/low", found.RpmPer100Hours.Low, 1);
            method.Found($"{c}/high", found.RpmPer100Hours.High, 1);
            method.Found($"{c}/level", found.LevelRpm!.Value);
            method.Found($"{c}/level se", found.LevelRpm.StandardError);
            method.Found($"{c}/evidence", found.LogEvidence, 1);
            for (var k = 0; k < found.Steps.Count; k++)
            {
                method.Found($"{c}/step/{k}", found.Steps[k].Rpm.Value, 1);
                method.Found($"{c}/step se/{k}", found.Steps[k].Rpm.StandardError);
            }

            for (var i = 0; i < found.GrossChances.Count; i++) method.Found($"{c}/gross/{i}", found.GrossChances[i], 1);
        }

        return method;
    }

    private static DriftSeries Series(Chance chance, int trials, StepKind[] steps, double drift, double gross)
    {
        var (week, hours, level) = (chance.Uniform(0, 3), chance.Uniform(0, 20), 5600 + (100 * chance.Normal()));
        var points = new List<DriftTrial>();
        var events = new List<DriftEvent>();
        var at = steps.Select(_ => chance.Whole(2, Math.Max(2, trials - 2))).ToArray();
        for (var i = 0; i < trials; i++)
        {
            for (var k = 0; k < steps.Length; k++)
            {
                if (at[k] != i) continue;
                events.Add(new(week + 0.1, steps[k]));
                level += 80 + (60 * chance.Normal());
            }

            (week, hours) = (week + chance.Uniform(1, 8), hours + chance.Uniform(20, 90));
            var wrong = chance.Happens(gross) ? chance.Uniform(-500, 500) : 0;
            points.Add(new(week, hours, Math.Round(level + (drift * hours / 100) + (25 * chance.Normal()) + wrong), chance.Uniform(0, 30), 100 * chance.Normal(), chance.Happens(0.5) ? chance.Uniform(2, 30) : 0));
        }

        return new(5000, 6000, points, events);
    }

    private static void Tell(OracleMethod method, int c, DriftSeries series, double noise)
    {
        foreach (var t in series.Trials)
        {
            var strikes = series.Events.Count(e => e.Week < t.Week && e.Kind == StepKind.Strike);
            var repitches = series.Events.Count(e => e.Week < t.Week && e.Kind == StepKind.Repitch);
            method.Tell(
                method.Name, "case,hours,rpm,air,load,own,strikes,repitches,noise",
                c, t.EngineHours, t.Rpm, t.AirCelsius!.Value, t.LoadKilograms!.Value, t.OwnSdRpm, strikes, repitches, noise);
        }
    }

    private static double Median(DriftSeries series)
    {
        var rpm = series.Trials.Select(t => t.Rpm).Order().ToArray();
        return (rpm[(rpm.Length - 1) / 2] + rpm[rpm.Length / 2]) / 2;
    }
}
