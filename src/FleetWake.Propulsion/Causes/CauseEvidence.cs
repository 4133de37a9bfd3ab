using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Causes;

/// <summary>The doubt of a pair of changes, lnN and lnV.</summary>
/// <param name="Rpm">Standard deviation of lnN [1], zero or more.</param>
/// <param name="Speed">Standard deviation of lnV [1], zero or more.</param>
/// <param name="Correlation">Their correlation [1], above -1 and below 1; air that nobody read moves both alike.</param>
public readonly record struct ChangeDoubt(double Rpm, double Speed, double Correlation = 0)
{
    /// <summary>
    /// What of <see cref="Rpm"/> comes from the doubt of the gain, s_g ln CF with its sign [1]. All trials that were corrected by one gain share
    /// it: it never averages away, and between two trials in like air it cancels. Below <see cref="Rpm"/> in size; zero when unknown.
    /// </summary>
    public double ByGain { get; init; }

    /// <summary>The same part of <see cref="Speed"/>, kappa times as much [1]; below <see cref="Speed"/> in size.</summary>
    public double SpeedByGain { get; init; }

    /// <summary>The doubt of a corrected trial: its own standard deviations, correlated by what air, gain, load and water move together.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="response">The response that it was corrected by.</param>
    public static ChangeDoubt Of(CorrectedTrial trial, BoatResponse response)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(response);
        var rpm = trial.CorrectedRpm.StandardDeviation / trial.CorrectedRpm.Value;
        var speed = trial.CorrectedSpeedKnots is { } v ? v.StandardDeviation / v.Value : 0;
        var both = rpm > 0 && speed > 0;
        var byGain = trial.Correction is { } correction ? response.Gain.StandardDeviation * Math.Log(correction.Factor.Value) : 0;
        return new ChangeDoubt(rpm, speed, both ? Math.Clamp(trial.LogCovariance / (rpm * speed), -0.95, 0.95) : 0)
        {
            ByGain = Part(byGain, rpm),
            SpeedByGain = both ? Part(response.Kappa.Value * byGain, speed) : 0,
        };
    }

    /// <summary>The doubt without the gain's part; what is a trial's alone.</summary>
    internal ChangeDoubt Own()
    {
        if (ByGain == 0 && SpeedByGain == 0) return this;
        var (rpm, speed) = (Math.Sqrt((Rpm * Rpm) - (ByGain * ByGain)), Math.Sqrt((Speed * Speed) - (SpeedByGain * SpeedByGain)));
        var covariance = (Correlation * Rpm * Speed) - (ByGain * SpeedByGain);
        return new ChangeDoubt(rpm, speed, rpm > 0 && speed > 0 ? Math.Clamp(covariance / (rpm * speed), -0.95, 0.95) : 0);
    }

    /// <summary>A part no larger than leaves something of the whole, whatever a trial made by hand claims.</summary>
    private static double Part(double part, double whole) => Math.Clamp(part, -0.99 * whole, 0.99 * whole);
}

/// <summary>The baseline of a boat: what it is held against, and how well that is known.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Prop">The prop that was on it.</param>
/// <param name="Doubt">Doubt of the baseline itself; shared by every change against it.</param>
public sealed record BoatBaseline(string Boat, string Prop, ChangeDoubt Doubt);

/// <summary>Corrected wide-open-throttle readings of a boat against its baseline.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Prop">The prop on it; another one than the baseline's after a swap.</param>
/// <param name="LnRpm">ln of corrected RPM over the baseline's [1], finite.</param>
/// <param name="LnSpeed">ln of corrected speed over the baseline's [1]; null when no speed was read.</param>
/// <param name="Doubt">Doubt of this trial alone.</param>
public sealed record WideOpenChange(string Boat, string Prop, double LnRpm, double? LnSpeed, ChangeDoubt Doubt)
{
    /// <summary>Change of corrected RPM as a fraction of the baseline's [1].</summary>
    public double RpmFraction => Math.Exp(LnRpm) - 1;

    /// <summary>Change of corrected speed as a fraction of the baseline's [1]; null when no speed was read.</summary>
    public double? SpeedFraction => LnSpeed is { } ln ? Math.Exp(ln) - 1 : null;

    /// <summary>The change that a trial shows.</summary>
    /// <param name="boat">The boat.</param>
    /// <param name="prop">The prop on it.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="baseline">The baseline.</param>
    /// <param name="response">The response that both were corrected by.</param>
    /// <exception cref="ArgumentException">One of them shows no RPM at wide-open throttle: it was made at part throttle, or the limiter held it, which
    /// makes of it a lower bound and no value.</exception>
    public static WideOpenChange Between(string boat, string prop, CorrectedTrial trial, CorrectedTrial baseline, BoatResponse response)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(baseline);
        foreach (var (one, name) in new[] { (trial, nameof(trial)), (baseline, nameof(baseline)) })
            foreach (var doubt in one.Doubts.Where(doubt => doubt is TrialDoubt.PartThrottle or TrialDoubt.LimiterReached))
                throw new ArgumentException($"A trial flagged {TrialDoubts.Code(doubt)} shows no RPM at wide-open throttle.", name);
        var speed = trial.CorrectedSpeedKnots is { Value: > 0 } now && baseline.CorrectedSpeedKnots is { Value: > 0 } then
            ? Math.Log(now.Value / then.Value)
            : (double?)null;
        return new WideOpenChange(boat, prop, Math.Log(trial.CorrectedRpm.Value / baseline.CorrectedRpm.Value), speed, ChangeDoubt.Of(trial, response));
    }
}

/// <summary>Speed at a lower RPM on plane against the speed there at the baseline.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Prop">The prop on it.</param>
/// <param name="LnSpeed">ln of speed over the baseline's at the same RPM of the engine, with its doubt [1].</param>
public sealed record PartThrottleChange(string Boat, string Prop, Uncertain LnSpeed)
{
    /// <summary>How far apart two RPM may be to be held against each other [1]; beyond it the exponent that joins them is too little known (judgement).</summary>
    private const double Nearly = 0.05;

    /// <summary>
    /// The change between two trials at nearly one RPM, on plane. Speeds as read, for the engine's power does not enter and so neither does the air;
    /// what the RPM differ by is taken out along V ~ N^kappa.
    /// </summary>
    /// <param name="boat">The boat.</param>
    /// <param name="prop">The prop on it.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="baseline">The baseline's trial at that RPM.</param>
    /// <param name="kappa">kappa [1] with its doubt; see <see cref="Balance.BalanceSlopes.Kappa"/>.</param>
    /// <exception cref="ArgumentException">A trial without speed, or RPM further than 5 % apart.</exception>
    public static PartThrottleChange Between(string boat, string prop, CorrectedTrial trial, CorrectedTrial baseline, Uncertain kappa)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(baseline);
        if (trial.SpeedKnots is not { Value: > 0 } V) throw new ArgumentException("A trial without a speed shows none at its RPM.", nameof(trial));
        if (baseline.SpeedKnots is not { Value: > 0 } V_0) throw new ArgumentException("A trial without a speed shows none at its RPM.", nameof(baseline));
        var lnN = Math.Log(trial.Rpm.Value / baseline.Rpm.Value);
        if (!(Math.Abs(lnN) <= Nearly))
            throw new ArgumentException($"{trial.Rpm.Value:0} and {baseline.Rpm.Value:0} RPM lie further apart than 5 %.", nameof(trial));

        double[] parts =
        [
            V.StandardDeviation / V.Value, V_0.StandardDeviation / V_0.Value, kappa.StandardDeviation * lnN,
            kappa.Value * trial.Rpm.StandardDeviation / trial.Rpm.Value, kappa.Value * baseline.Rpm.StandardDeviation / baseline.Rpm.Value,
        ];
        return new PartThrottleChange(boat, prop, new Uncertain(
            Math.Log(V.Value / V_0.Value) - (kappa.Value * lnN), Math.Sqrt(parts.Sum(part => part * part))));
    }
}

/// <summary>What a gauge or a rule says of a prop off the boat.</summary>
/// <param name="Prop">The prop.</param>
/// <param name="Cause">What it measures: <see cref="Cause.PitchOrCupLoss"/> or <see cref="Cause.DiameterLoss"/>.</param>
/// <param name="Loss">Minus dln of pitch or diameter since the baseline, with its doubt [1]. A pitch gauge sees little of a lost cup: give it 1.5 % or more.</param>
public sealed record GaugeReading(string Prop, Cause Cause, Uncertain Loss);
