namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// Draws the parameters of wear of a fleet from their posterior: Metropolis steps for the effects, exact draws for shape,
/// share of sound props and spread of the boats (Gelman and others 2013, Bayesian Data Analysis, chapter 11).
/// </summary>
internal sealed class WearSampler
{
    private readonly WearTable _table;
    private readonly WearExpectation _expectation;
    private readonly Effect[] _effects;
    private readonly double[] _logMean;
    private readonly double[] _log; // log likelihood of each member at the present state
    private readonly double[] _proposed; // the same at the state that a step would lead to, kept in case it is taken
    private readonly double[] _byShape; // and at each shape, one row of members after the other
    private readonly int[] _all;
    private Dice _dice = new(20_240_229);

    public WearSampler(WearTable table, WearExpectation expectation, Effect[] effects, int members)
    {
        (_table, _expectation, _effects) = (table, expectation, effects);
        _logMean = new double[members];
        (_log, _proposed, _byShape) = (new double[members], new double[members], new double[members * expectation.Shapes.Count]);
        _all = [.. Enumerable.Range(0, members)];
        foreach (var e in effects)
        {
            foreach (var m in e.Members) _logMean[m] += e.Value;
        }

        Shape = expectation.Shapes.Count / 2;
        Sound = expectation.Sound.A / (expectation.Sound.A + expectation.Sound.B);
        BoatSd = expectation.BoatSds[expectation.BoatSds.Count / 2];
        foreach (var m in _all) _log[m] = Log(m, _logMean[m], Shape, Sound);
    }

    public int Shape { get; private set; }

    public double Sound { get; private set; }

    public double BoatSd { get; private set; }

    public double LogMean(int member) => _logMean[member];

    public double Likelihood(int member) => Math.Exp(_log[member]);

    public ref Dice Dice => ref _dice;

    /// <summary>One round over all parameters.</summary>
    /// <param name="learning">Whether the lengths of the steps still follow the share of steps that are taken.</param>
    public void Round(bool learning)
    {
        foreach (var e in _effects) Move(e, learning);
        DrawBoatSd();
        DrawShape();
        MoveSound();
    }

    private double Log(int member, double logMean, int shape, double sound) => Math.Log(_table.Likelihood(member, shape, logMean, sound) + 1e-300);

    private void Move(Effect e, bool learning)
    {
        var sd = e.IsBoat ? BoatSd : e.Prior.Sd;
        var step = _dice.Normal() * Math.Min(e.Step, e.IsBoat ? 2.4 * sd : double.MaxValue);
        var (from, to) = ((e.Value - e.Prior.Mean) / sd, (e.Value + step - e.Prior.Mean) / sd);
        var ratio = 0.5 * ((from * from) - (to * to));
        foreach (var m in e.Members)
        {
            _proposed[m] = Log(m, _logMean[m] + step, Shape, Sound);
            ratio += _proposed[m] - _log[m];
        }

        var take = Math.Log(1 - _dice.Uniform()) < ratio;
        if (take)
        {
            e.Value += step;
            foreach (var m in e.Members)
            {
                _logMean[m] += step;
                _log[m] = _proposed[m];
            }
        }

        if (learning) e.Step = Math.Clamp(e.Step * (take ? 1.06 : 0.96), 0.02, 3);
    }

    private void DrawBoatSd()
    {
        double squares = 0;
        var boats = 0;
        foreach (var e in _effects)
        {
            if (!e.IsBoat) continue;
            squares += e.Value * e.Value;
            boats++;
        }

        if (boats == 0) return;
        Span<double> log = stackalloc double[_expectation.BoatSds.Count];
        for (var i = 0; i < log.Length; i++)
        {
            var sd = _expectation.BoatSds[i];
            log[i] = (-boats * Math.Log(sd)) - (0.5 * squares / (sd * sd));
        }

        BoatSd = _expectation.BoatSds[_dice.Place(log)];
    }

    private void DrawShape()
    {
        Span<double> log = stackalloc double[_expectation.Shapes.Count];
        for (var k = 0; k < log.Length; k++)
        {
            var row = Row(k);
            log[k] = 0;
            foreach (var m in _all)
            {
                row[m] = k == Shape ? _log[m] : Log(m, _logMean[m], k, Sound);
                log[k] += row[m];
            }
        }

        Shape = _dice.Place(log);
        Row(Shape).CopyTo(_log);

        Span<double> Row(int shape) => _byShape.AsSpan(shape * _all.Length, _all.Length);
    }

    private void MoveSound()
    {
        var logit = Math.Log(Sound / (1 - Sound)) + (0.5 * _dice.Normal());
        var other = 1 / (1 + Math.Exp(-logit));
        var (a, b) = _expectation.Sound;
        // The Jacobian of the logit brings the powers of the Beta density from a - 1 and b - 1 to a and b.
        var ratio = (a * Math.Log(other / Sound)) + (b * Math.Log((1 - other) / (1 - Sound)));
        foreach (var m in _all)
        {
            _proposed[m] = Log(m, _logMean[m], Shape, other);
            ratio += _proposed[m] - _log[m];
        }

        if (!(Math.Log(1 - _dice.Uniform()) < ratio)) return;
        Sound = other;
        _proposed.CopyTo(_log, 0);
    }

    /// <summary>An effect on the log mean of some members.</summary>
    internal sealed class Effect(LogEffect prior, int[] members, bool isBoat)
    {
        public LogEffect Prior { get; } = prior;

        public int[] Members { get; } = members;

        /// <summary>Its spread is itself drawn.</summary>
        public bool IsBoat { get; } = isBoat;

        public double Value { get; set; } = prior.Mean;

        public double Step { get; set; } = 0.5;
    }
}
