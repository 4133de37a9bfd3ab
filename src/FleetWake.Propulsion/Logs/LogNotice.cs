namespace FleetWake.Propulsion.Logs;

/// <summary>Something about a log as a whole that its reader should know.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Detail">The same in words, with figures.</param>
public sealed record LogNotice(LogNoticeKind Kind, string Detail);

/// <summary>What may be said of a log.</summary>
public enum LogNoticeKind
{
    /// <summary>Sentences without a checksum were taken as they are.</summary>
    WithoutChecksum,

    /// <summary>More than one engine was logged; one of them was taken.</summary>
    SeveralEngines,

    /// <summary>More than one boat was logged, as with AIS targets; one of them was taken.</summary>
    SeveralBoats,

    /// <summary>Times without a date: only differences mean something.</summary>
    NoDate,

    /// <summary>Times jumped back: the order of the lines was kept, and no run spans the jump.</summary>
    ClockWentBack,

    /// <summary>Times jumped ahead by more than a day, as when a receiver learns its date: no run spans the jump.</summary>
    ClockJumpedAhead,

    /// <summary>Nothing was logged for a while: no run spans a gap.</summary>
    Gaps,

    /// <summary>Two clocks in the log differ, as of a logger and a satellite receiver; the logger's was kept throughout.</summary>
    ClocksDiffer,

    /// <summary>Speed and course were made from positions.</summary>
    SpeedFromPositions,

    /// <summary>No RPM was logged.</summary>
    NoRpm,

    /// <summary>No speed was logged.</summary>
    NoSpeed,

    /// <summary>Rates of the prop shaft were brought to the engine by the gear ratio.</summary>
    ShaftRates,

    /// <summary>A column or a reading was left aside because its unit is not named or its use not known.</summary>
    LeftAside,

    /// <summary>The log is longer than the limit; its rest was not read.</summary>
    CutShort,

    /// <summary>Two logs were laid over each other, and what offset between their clocks was taken out.</summary>
    LogsJoined,
}
