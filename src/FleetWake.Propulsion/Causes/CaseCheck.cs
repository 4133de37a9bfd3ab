namespace FleetWake.Propulsion.Causes;

/// <summary>Refuses a case that cannot be weighed; names the part and what it should be.</summary>
internal static class CaseCheck
{
    private const double Most = 1; // [1]; a change beyond e-fold is another boat, not a drift

    internal static void Of(CauseCase given)
    {
        Need(given.Models is { Count: > 0 }, nameof(given.Models), "One model of the boat's response or more is needed.");
        Need(given.Models.All(m => m.Weight > 0 && double.IsFinite(m.Weight)), nameof(given.Models), "Weights of models must be finite and above zero.");
        Need(given.Models.All(Answers), nameof(given.Models), "Slopes of a model must be finite, with b below m, a below zero and h above e.");
        Need(given.Priors is { Count: > 2 }, nameof(given.Priors), "Priors of some causes, of none and of several are needed.");
        Need(given.Priors.All(p => p.Weight > 0 && p.Width > 0 && double.IsFinite(p.Weight) && double.IsFinite(p.Width)), nameof(given.Priors), "Weights and widths must be finite and above zero.");
        Need(given.Priors.Select(p => p.Cause).Distinct().Count() == given.Priors.Count, nameof(given.Priors), "A cause has one prior.");
        Need(given.PitchBetweenProps >= 0 && given.PitchBetweenProps < Most, nameof(given.PitchBetweenProps), "Must be from 0 to 1.");
        Need(given.Baselines.Select(b => b.Boat).Distinct().Count() == given.Baselines.Count, nameof(given.Baselines), "A boat has one baseline.");
        Need(given.Baselines.All(b => Doubts(b.Doubt, least: 0)), nameof(given.Baselines), "Doubts must be finite and not negative, correlations between -1 and 1.");
        var boats = given.Baselines.Select(b => b.Boat).ToHashSet();
        foreach (var change in given.WideOpen)
        {
            Need(boats.Contains(change.Boat), nameof(given.WideOpen), $"Boat {change.Boat} has no baseline to be held against.");
            Need(Small(change.LnRpm) && (change.LnSpeed is not { } v || Small(v)), nameof(given.WideOpen), $"Changes of {change.Boat} must be finite and within -1 to 1.");
            Need(change.LnSpeed is null ? change.Doubt.Rpm > 0 && Small(change.Doubt.Rpm) && Shares(change.Doubt with { SpeedByGain = 0 }) : Doubts(change.Doubt, least: double.Epsilon), nameof(given.WideOpen), $"Doubts of {change.Boat} must be above 0 and below 1, the correlation between -1 and 1.");
        }

        foreach (var point in given.PartThrottle)
        {
            Need(boats.Contains(point.Boat), nameof(given.PartThrottle), $"Boat {point.Boat} has no baseline to be held against.");
            Need(Small(point.LnSpeed.Value) && Sure(point.LnSpeed.StandardDeviation), nameof(given.PartThrottle), $"The change of {point.Boat} must be within -1 to 1 and its doubt above 0.");
        }

        foreach (var gauge in given.Gauges)
        {
            Need(gauge.Cause is Cause.PitchOrCupLoss or Cause.DiameterLoss, nameof(given.Gauges), $"A gauge reads pitch or diameter, not {gauge.Cause}.");
            Need(Small(gauge.Loss.Value) && Sure(gauge.Loss.StandardDeviation), nameof(given.Gauges), $"The reading of {gauge.Prop} must be within -1 to 1 and its doubt above 0.");
        }
    }

    private static bool Answers(ResponseModel model) =>
        double.IsFinite(model.Slopes.Gain) && model.Slopes.Gain > 0 && double.IsFinite(model.Slopes.Kappa)
        && double.IsFinite(model.Slopes.TorqueByPitch) && double.IsFinite(model.Slopes.ThrustByPitch)
        && model.Slopes.A < 0 && model.Slopes.M > model.Slopes.B && model.DragThrust >= 0 && double.IsFinite(model.DragThrust);

    private static bool Doubts(ChangeDoubt d, double least) =>
        d.Rpm >= least && d.Speed >= least && d.Rpm < Most && d.Speed < Most && Math.Abs(d.Correlation) < 1 && Shares(d);

    private static bool Shares(ChangeDoubt d) => (d.ByGain == 0 || Math.Abs(d.ByGain) < d.Rpm) && (d.SpeedByGain == 0 || Math.Abs(d.SpeedByGain) < d.Speed);

    private static bool Small(double change) => Math.Abs(change) <= Most;

    private static bool Sure(double deviation) => deviation > 0 && deviation < Most;

    private static void Need(bool holds, string name, string message)
    {
        if (!holds) throw new ArgumentException(message, name);
    }
}
