namespace FleetWake.Logbook;

/// <summary>The bottom under a dock's waters: what a prop meets there.</summary>
public enum BottomKind
{
    /// <summary>Nobody knows.</summary>
    Unknown,

    /// <summary>Mud.</summary>
    Mud,

    /// <summary>Sand.</summary>
    Sand,

    /// <summary>Gravel.</summary>
    Gravel,

    /// <summary>Rock or reef.</summary>
    Rock,
}
