using FleetWake.Propulsion.Causes;

namespace FleetWake.Trials;

/// <summary>Causes in plain words.</summary>
internal static class CauseWords
{
    /// <summary>A cause as something to look for.</summary>
    public static string Of(Cause cause) => cause switch
    {
        Cause.None => "nothing of size",
        Cause.PitchOrCupLoss => "a worn prop or lost cup",
        Cause.DiameterLoss => "worn tips",
        Cause.HubSlip => "a slipping hub",
        Cause.Ventilation => "ventilation",
        Cause.LighterLoad => "a light load",
        Cause.EnginePower => "a weak engine",
        Cause.HullOrLoad => "load or growth on the hull",
        Cause.BladeRoughness => "rough or bent blades",
        _ => "several causes at once",
    };

    /// <summary>Several, as in a sentence.</summary>
    public static string Of(IReadOnlyList<Cause> causes) => causes.Count < 2
        ? string.Concat(causes.Select(Of))
        : $"{string.Join(", ", causes.SkipLast(1).Select(Of))} and {Of(causes[^1])}";
}
