namespace FleetWake.Reports.Digests;

/// <summary>What becomes of digests whose time passed while nothing ran.</summary>
public enum CatchUp
{
    /// <summary>The newest one is issued; the record says that the earlier ones were passed over.</summary>
    Latest,

    /// <summary>Each is issued, oldest first, as of the day on which it was due.</summary>
    All,
}

/// <summary>How digests are issued.</summary>
/// <param name="CatchUp">What becomes of those that were missed.</param>
public sealed record IssueSettings(CatchUp CatchUp);
