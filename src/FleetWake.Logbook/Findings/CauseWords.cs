using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Findings;

/// <summary>Causes, and what trials point to, in words for people.</summary>
public static class CauseWords
{
    /// <summary>A group that is less likely than this is not spoken of [1].</summary>
    private const double SureEnough = 0.8;

    /// <summary>The sentence of a finding, with a space before it; empty when the trials point nowhere.</summary>
    /// <param name="points">What the trials point to.</param>
    public static string Of(PointsTo? points) =>
        points is null ? "" : Of(points.Group, points.GroupProbability, points.Named, points.Tied, points.Tests);

    /// <summary>The sentence of a case, with a space before it; empty when it points nowhere.</summary>
    /// <param name="finding">What the case points to.</param>
    public static string Of(CauseFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return Of(
            finding.Group,
            finding.Group == CauseGroup.RpmUp ? finding.RpmUpProbability : finding.RpmDownProbability,
            finding.Named?.Cause,
            [.. finding.Tied.Select(s => s.Cause)],
            finding.Tests);
    }

    /// <summary>A cause as something to look for.</summary>
    /// <param name="cause">The cause.</param>
    public static string Word(Cause cause) => cause switch
    {
        Cause.None => "nothing of size",
        Cause.PitchOrCupLoss => "a worn prop or lost cup",
        Cause.DiameterLoss => "worn tips",
        Cause.HubSlip => "a slipping hub",
        Cause.Ventilation => "ventilation",
        Cause.LighterLoad => "a lighter load",
        Cause.EnginePower => "a weak engine",
        Cause.HullOrLoad => "load or growth on the hull",
        Cause.BladeRoughness => "rough or bent blades",
        _ => "several causes at once",
    };

    /// <summary>Several, as in a sentence.</summary>
    /// <param name="causes">The causes.</param>
    public static string List(IReadOnlyList<Cause> causes)
    {
        ArgumentNullException.ThrowIfNull(causes);
        return causes.Count < 2 ? string.Concat(causes.Select(Word)) : $"{string.Join(", ", causes.SkipLast(1).Select(Word))} and {Word(causes[^1])}";
    }

    private static string Of(CauseGroup group, double probability, Cause? named, IReadOnlyList<Cause> tied, IReadOnlyList<SeparatingTest> tests)
    {
        if (group == CauseGroup.None || probability < SureEnough) return "";
        var since = group == CauseGroup.RpmUp ? "It turns faster than at its baseline" : "It turns slower than at its baseline";
        if (named is { } one) return $" {since}, and RPM with speed point to {Word(one)}; a look or a gauge has to bear that out.";
        var next = tests.Count == 0 ? "" : $" Next: {SeparatingTests.Words(tests[0])}.";
        return $" {since}; RPM and speed cannot tell apart {List(tied)}.{next}";
    }
}
