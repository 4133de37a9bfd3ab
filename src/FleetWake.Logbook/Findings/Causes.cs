namespace FleetWake.Logbook.Findings;

/// <summary>
/// What may lie behind a reading outside the band, most likely first. Common practice, no source; none of it is a
/// diagnosis: only a look at the boat tells. A change of pitch is a remedy only when these are ruled out.
/// </summary>
internal static class Causes
{
    /// <summary>A rise of slip by this much over the mounting's first trials points to the hub or to ventilation [percentage points].</summary>
    private const double SlipJumpPoints = 10;

    public static IReadOnlyList<string> Of(BandStanding band, IReadOnlyList<TrialFinding> trials) => band.State switch
    {
        BandState.AboveTop when SlipJumped(trials) => ["hub slip", "ventilation", "worn or bent blades", "lost cup or pitch"],
        BandState.AboveTop => ["worn blades", "lost cup or pitch", "hub slip", "ventilation", "a light load"],
        BandState.BelowBottom => ["a full load", "fouling of hull or prop", "rough or bent blades", "a weak engine"],
        _ => [],
    };

    private static bool SlipJumped(IReadOnlyList<TrialFinding> trials)
    {
        var slips = trials.Where(t => t.SetAside is not SetAsideReason.PartThrottle).Select(t => t.SlipPercent).OfType<double>().ToList();
        return slips.Count > 2 && slips[^1] - slips.Take(2).Average() > SlipJumpPoints;
    }
}
