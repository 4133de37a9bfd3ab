namespace FleetWake.Statistics.Drift;

/// <summary>
/// The linear model of one series: y = A b + s x + noise with b ~ N(m0, P0), brought to rows v_i = (a_i, x_i, y_i - a_i m0)
/// so that every quantity needed comes out of one sum of w_i v_i v_i'.
/// </summary>
internal sealed class Design
{
    private Design(int n, int p)
    {
        (Trials, Columns, Width) = (n, p, p + 2);
        Rows = new double[n * Width];
        PriorMean = new double[p];
        PriorPrecision = new double[p];
        Now = new double[p];
    }

    /// <summary>Trials n that count.</summary>
    public int Trials { get; }

    /// <summary>Columns p of A: level, steps, change of wear where it is allowed, temperature, load.</summary>
    public int Columns { get; }

    /// <summary>Length of a row: p + 2.</summary>
    public int Width { get; }

    /// <summary>n rows (a_i, x_i, u_i); x in 100 h before the last trial, u in rpm.</summary>
    public double[] Rows { get; }

    public double[] PriorMean { get; }

    /// <summary>Diagonal of the inverse of P0.</summary>
    public double[] PriorPrecision { get; }

    /// <summary>The row of A at the last trial under reference conditions.</summary>
    public double[] Now { get; }

    /// <summary>Further variance of each trial beyond the noise node's [rpm^2]; null where none has any.</summary>
    public double[]? OwnVariances { get; private init; }

    /// <summary>The steps, of columns 1 and on.</summary>
    public IReadOnlyList<SoundSeries.Step> Steps { get; private init; } = [];

    public double LogDetPrior { get; private set; }

    /// <summary>The level at the last trial that the prior expects: Now' m0 [rpm].</summary>
    public double LevelPriorMean { get; private set; }

    /// <summary>Median RPM r, the measure of all shares.</summary>
    public double MedianRpm { get; private set; }

    /// <param name="series">Trials already in order and sound, see <see cref="SoundSeries"/>.</param>
    /// <param name="settings">Priors.</param>
    /// <param name="count">Only the first so many trials, and the events before the last of them.</param>
    public static Design Of(SoundSeries series, DriftSettings settings, int count)
    {
        var trials = series.Trials.AsSpan(0, count);
        var steps = series.StepsBetween(count, settings);
        var span = (trials[^1].EngineHours - trials[0].EngineHours) / 100;
        var changes = settings.WearChangeSd > 0 && span > 0;
        var p = 3 + steps.Count + (changes ? 1 : 0);
        var d = new Design(count, p) { MedianRpm = Median(trials), Steps = steps, OwnVariances = Own(trials) };
        var r = d.MedianRpm;
        var mid = series.HasBand ? settings.LevelShare * (series.MinRpm + series.MaxRpm) / 2 : r;
        d.Column(0, mid, settings.LevelSdRpm, now: 1);
        for (var k = 0; k < steps.Count; k++) d.Column(k + 1, steps[k].Mean, Math.Sqrt(steps[k].Variance), now: 1);
        if (changes) d.Column(p - 3, 0, settings.WearChangeSd, now: 0);
        d.Column(p - 2, settings.TemperatureMeanShare * r, settings.TemperatureSdShare * r, now: 0);
        var (loadMean, loadSd) = settings.LoadBelief(series.LoadUncorrected);
        d.Column(p - 1, loadMean * r, loadSd * r, now: 0);
        var last = trials[^1].EngineHours;
        for (var i = 0; i < count; i++)
        {
            var row = d.Rows.AsSpan(i * d.Width, d.Width);
            row[0] = 1;
            for (var k = 0; k < steps.Count; k++) row[k + 1] = i >= steps[k].FirstAfter ? 1 : 0;
            (row[p - 2], row[p - 1]) = Conditions(trials[i], settings);
            var x = row[p] = (trials[i].EngineHours - last) / 100;
            // A rate s + D x / span, D its change over the mounting, adds D x^2 / (2 span) to s x.
            if (changes) row[p - 3] = x * x / (2 * span);
            var u = trials[i].Rpm;
            for (var k = 0; k < p; k++) u -= row[k] * d.PriorMean[k];
            row[p + 1] = u;
        }

        return d;
    }

    /// <summary>How far a trial was from the reference conditions: degrees, and hundreds of kilograms; 0 for what nobody read.</summary>
    public static (double Warmer, double Heavier) Conditions(in DriftTrial trial, DriftSettings settings) =>
        (Within(trial.AirCelsius, 80) is { } air ? air - settings.ReferenceCelsius : 0, (Within(trial.LoadKilograms, 1e5) ?? 0) / 100);

    /// <summary>A reading, unless it was not taken or cannot be true of anything.</summary>
    private static double? Within(double? reading, double most) => reading is { } r && Math.Abs(r) <= most ? r : null;

    private static double[]? Own(ReadOnlySpan<DriftTrial> trials)
    {
        double[]? own = null;
        for (var i = 0; i < trials.Length; i++)
        {
            if (trials[i].OwnSdRpm > 0) (own ??= new double[trials.Length])[i] = trials[i].OwnSdRpm * trials[i].OwnSdRpm;
        }

        return own;
    }

    private static double Median(ReadOnlySpan<DriftTrial> trials)
    {
        Span<double> rpm = trials.Length <= 256 ? stackalloc double[trials.Length] : new double[trials.Length];
        for (var i = 0; i < rpm.Length; i++) rpm[i] = trials[i].Rpm;
        rpm.Sort();
        return (rpm[(rpm.Length - 1) / 2] + rpm[rpm.Length / 2]) / 2;
    }

    private void Column(int k, double mean, double sd, double now)
    {
        PriorMean[k] = mean;
        PriorPrecision[k] = 1 / (sd * sd);
        LogDetPrior += 2 * Math.Log(sd);
        Now[k] = now;
        LevelPriorMean += now * mean;
    }
}
