using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Findings;

/// <summary>Causes, and what trials point to, in words for people.</summary>
public static class CauseWords
{
    /// <summary>A group that is less likely than this is not named [1].</summary>
    public const double SureEnough = 0.8;

    /// <summary>Where nothing of size is likelier than this, no change is spoken of [1].</summary>
    private const double Nothing = 0.3;

    /// <summary>A list of more than these tells nobody where to look.</summary>
    private const int MostTold = 5;

    /// <summary>The sentence of a finding, with a space before it; empty when its trials show no change.</summary>
    /// <param name="points">What the trials point to.</param>
    public static string Of(PointsTo? points) => points is null
        ? ""
        : Of(points.Group, points.GroupProbability, points.NothingProbability, points.Named, points.Tied, points.Tests, "RPM and speed");

    /// <summary>The sentence of a case, with a space before it; empty when it shows no change.</summary>
    /// <param name="finding">What the case points to.</param>
    /// <param name="withSpeed">A speed was read with the RPM.</param>
    public static string Of(CauseFinding finding, bool withSpeed)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return Of(
            finding.Group,
            ProbabilityOfGroup(finding),
            finding.Suspects.FirstOrDefault(s => s.Cause == Cause.None)?.Probability ?? 0,
            finding.Named?.Cause,
            [.. finding.Tied.Select(s => s.Cause)],
            finding.Tests,
            withSpeed ? "RPM and speed" : "RPM alone");
    }

    /// <summary>Probability of the likelier group [1].</summary>
    /// <param name="finding">What the case points to.</param>
    public static double ProbabilityOfGroup(CauseFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Group == CauseGroup.RpmUp ? finding.RpmUpProbability : finding.RpmDownProbability;
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

    private static string Of(
        CauseGroup group, double probability, double nothing, Cause? named, IReadOnlyList<Cause> tied, IReadOnlyList<SeparatingTest> tests, string readings)
    {
        if (group == CauseGroup.None || nothing > Nothing) return "";
        var next = tests.Count == 0 ? "" : $" Next: {SeparatingTests.Words(tests[0])}.";
        if (probability < SureEnough)
            return tied.Count is > 1 and <= MostTold ? $" It changed, but not in a way that tells a cause: {List(tied)} are left.{next}" : "";
        var since = group == CauseGroup.RpmUp ? "It turns faster than at its baseline" : "It turns slower than at its baseline";
        return named is { } one
            ? $" {since}, and {readings} {(readings == "RPM alone" ? "points" : "point")} to {Word(one)}; a look or a gauge has to bear that out."
            : $" {since}; {readings} cannot tell apart {List(tied)}.{next}";
    }
}
