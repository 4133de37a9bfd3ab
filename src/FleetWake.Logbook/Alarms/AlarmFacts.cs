using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Alarms;

/// <summary>A finding newly alarmed. A fact, so that what was told when can be asked.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Mounting">The mounting.</param>
/// <param name="Kind">What kind of alarm.</param>
/// <param name="Episode">Number of the episode of this kind on this mounting, from 1; one is open at a time.</param>
/// <param name="Rpm">RPM the finding stood at [RPM].</param>
[StoredAs("alarm_raised", 1)]
public sealed record AlarmRaised(Entry Entry, string Boat, Position Position, string Mounting, AlarmKind Kind, int Episode, double Rpm) : IFact
{
    /// <summary>Of a drift alarm: how many times likelier the trials were with drift than without, when it was raised [1].</summary>
    public double? EvidenceToOne { get; init; }

    /// <summary>Of a drift alarm: the evidence that raised it [1].</summary>
    public double? AlarmAtToOne { get; init; }

    /// <summary>Of a drift alarm: false alarms to be expected of a boat without drift in a year [1/a], by simulation on the fleet's trials of that time.</summary>
    public double? FalseAlarmsPerBoatYear { get; init; }

    /// <summary>Of a drift alarm: the entry of the trial that raised it.</summary>
    public Guid? Trial { get; init; }

    /// <summary>Of a drift alarm: alarms of the mounting that work on the prop had answered before it.</summary>
    public int? Answered { get; init; }

    /// <summary>Of a drift alarm: number of the fleet prior by which it was judged.</summary>
    public int? PriorNumber { get; init; }
}

/// <summary>A finding no longer alarms.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Mounting">The mounting.</param>
/// <param name="Kind">What kind of alarm.</param>
/// <param name="Episode">The episode that ended.</param>
[StoredAs("alarm_lifted", 1)]
public sealed record AlarmLifted(Entry Entry, string Mounting, AlarmKind Kind, int Episode) : IFact;

/// <summary>Kinds of alarm.</summary>
public enum AlarmKind
{
    /// <summary>Wide-open-throttle RPM lies above the rated band.</summary>
    AboveBand,

    /// <summary>Wide-open-throttle RPM lies below the rated band.</summary>
    BelowBand,

    /// <summary>The trials speak for drift so much that a look is called for, wherever the RPM stands.</summary>
    Drift,
}
