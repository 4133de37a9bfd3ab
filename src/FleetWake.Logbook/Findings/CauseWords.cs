using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Findings;

/// <summary>What trials point to, in a sentence for people.</summary>
public static class CauseWords
{
    /// <summary>A group that is less likely than this is not spoken of [1].</summary>
    private const double SureEnough = 0.8;

    /// <summary>The sentence, with a space before it; empty when the trials point nowhere.</summary>
    /// <param name="points">What the trials point to.</param>
    public static string Of(PointsTo? points)
    {
        if (points is null || points.GroupProbability < SureEnough) return "";
        var since = points.Group == CauseGroup.RpmUp ? "It turns faster than at its baseline" : "It turns slower than at its baseline";
        var next = points.Tests.Count == 0 ? "" : $"; next: {SeparatingTests.Words(points.Tests[0])}";
        return points.Named is { } named
            ? $" {since}, and RPM with speed points to {Word(named)}; a look or a gauge has to bear that out."
            : $" {since}; RPM and speed cannot tell {Either(points.Tied)} apart{next}.";
    }

    /// <summary>A cause in the words of the dock.</summary>
    /// <param name="cause">The cause.</param>
    public static string Word(Cause cause) => cause switch
    {
        Cause.PitchOrCupLoss => "lost pitch or cup",
        Cause.DiameterLoss => "lost diameter",
        Cause.HubSlip => "a slipping hub",
        Cause.Ventilation => "ventilation",
        Cause.LighterLoad => "a lighter load",
        Cause.EnginePower => "a weaker engine",
        Cause.HullOrLoad => "load or a fouled hull",
        Cause.BladeRoughness => "rough blades",
        Cause.Several => "several causes at once",
        _ => "chance",
    };

    private static string Either(IReadOnlyList<Cause> tied) => tied.Count switch
    {
        0 or 1 => "the causes",
        2 => $"{Word(tied[0])} and {Word(tied[1])}",
        _ => $"{string.Join(", ", tied.SkipLast(1).Select(Word))} and {Word(tied[^1])}",
    };
}
