using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// Invented mountings without any drift on a schedule of real ones: their weeks, hours, temperatures, loads and events, with
/// RPM drawn from what the settings believe; and the evidence for drift that each of them shows all the same.
/// </summary>
internal sealed class SilentFleet
{
    private const double WeeksPerYear = 365.25 / 7;

    // Enough to tell a rate of 0.03 within a third; beyond it a nightly run would be long and no wiser.
    private const double MostBoatYears = 1000;
    private const int MostMountings = 2000;
    private const int MostTrials = 20_000;

    private readonly List<(double Log, double Years)[]> _paths = [];

    /// <summary>Boat-years of all, none of them ended by an alarm.</summary>
    public double BoatYears { get; private set; }

    /// <summary>How many were invented.</summary>
    public int Mountings => _paths.Count;

    public static SilentFleet Of(IEnumerable<DriftSeries> schedule, DriftSettings settings, ulong seed)
    {
        var dice = new Dice(seed);
        // An order of their own, so that neither the caller's nor another beginning of the calendar shows in the result.
        var plans = schedule.Select(s => new Plan(s, settings)).OrderBy(p => p.Trials).ThenBy(p => p.Hours).ThenBy(p => p.Years).ThenBy(p => p.MiddleRpm).ToArray();
        for (var i = plans.Length - 1; i > 0; i--)
        {
            var other = (int)(dice.Uniform() * (i + 1));
            (plans[i], plans[other]) = (plans[other], plans[i]);
        }

        var fleet = new SilentFleet();
        for (var trials = 0; plans.Length > 0 && fleet.BoatYears < MostBoatYears && fleet.Mountings < MostMountings && trials < MostTrials;)
        {
            var plan = plans[fleet.Mountings % plans.Length];
            trials += plan.Trials;
            fleet.BoatYears += plan.Years;
            fleet._paths.Add(plan.Draw(settings, ref dice));
        }

        return fleet;
    }

    /// <summary>False alarms and the boat-years in which they came: from the first trial to the alarm, else to the last trial.</summary>
    public (int Alarms, double BoatYears) At(double threshold)
    {
        var (alarms, years) = (0, 0.0);
        foreach (var path in _paths)
        {
            var first = Array.FindIndex(path, p => p.Log >= threshold);
            if (first >= 0) alarms++;
            years += path[first >= 0 ? first : ^1].Years;
        }

        return (alarms, years);
    }

    /// <summary>When one mounting was tried, and all that was read but the RPM.</summary>
    private sealed class Plan
    {
        private readonly DriftSeries _series;
        private readonly DriftTrial[] _trials;
        private readonly List<SoundSeries.Step> _steps;

        public Plan(DriftSeries series, DriftSettings settings)
        {
            var sound = SoundSeries.Of(series);
            (_series, _trials, _steps) = (series, sound.Trials, sound.StepsBetween(sound.Trials.Length, settings));
            var rpm = Array.ConvertAll(_trials, t => t.Rpm);
            Array.Sort(rpm);
            MiddleRpm = sound.HasBand ? settings.LevelShare * (sound.MinRpm + sound.MaxRpm) / 2 : rpm[rpm.Length / 2];
        }

        public int Trials => _trials.Length;

        public double Hours => _trials[^1].EngineHours - _trials[0].EngineHours;

        public double Years => (_trials[^1].Week - _trials[0].Week) / WeeksPerYear;

        public double MiddleRpm { get; }

        /// <summary>Evidence and years since the first trial, trial by trial.</summary>
        public (double Log, double Years)[] Draw(DriftSettings settings, ref Dice dice)
        {
            // A tenth of the middle is no engine at full throttle; the belief about the level is wider than that in a slow one.
            var level = Math.Max(MiddleRpm / 10, MiddleRpm + (settings.LevelSdRpm * dice.Normal()));
            var noise = Share(settings.Noise, ref dice);
            var warmth = settings.TemperatureMeanShare + (settings.TemperatureSdShare * dice.Normal());
            var (loadMean, loadSd) = settings.LoadBelief(_series.LoadUncorrected);
            var load = loadMean + (loadSd * dice.Normal());
            var (step, rise, drawn) = (0, 0.0, new DriftTrial[_trials.Length]);
            for (var i = 0; i < drawn.Length; i++)
            {
                if (step < _steps.Count && _steps[step].FirstAfter == i)
                {
                    rise += _steps[step].Mean + (Math.Sqrt(_steps[step].Variance) * dice.Normal());
                    step++;
                }

                var gross = dice.Uniform() < settings.GrossChance ? settings.GrossShare : 0;
                var t = _trials[i];
                var sd = Math.Sqrt((level * level * ((noise * noise) + (gross * gross))) + (t.OwnSdRpm * t.OwnSdRpm));
                var (warmer, heavier) = Design.Conditions(t, settings);
                var rpm = level + rise + (sd * dice.Normal()) + (level * ((warmth * warmer) + (load * heavier)));
                // What no engine turns would be left aside, and the plan would not be kept.
                drawn[i] = t with { Rpm = Math.Clamp(rpm, Math.Max(1, t.OwnSdRpm), 999_999) };
            }

            var evidence = DriftAlarm.Follow(_series with { Trials = drawn }, DriftAlarm.Alternative, settings);
            return [.. evidence.Select(e => (e.Log, (drawn[e.Trial].Week - drawn[0].Week) / WeeksPerYear))];
        }

        private static double Share(NoiseNodes noise, ref Dice dice)
        {
            Span<double> log = stackalloc double[noise.Weights.Length];
            for (var j = 0; j < log.Length; j++) log[j] = Math.Log(noise.Weights[j]);
            return noise.Shares[dice.Place(log)];
        }
    }
}
