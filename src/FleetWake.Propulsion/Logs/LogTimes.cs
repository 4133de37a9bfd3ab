namespace FleetWake.Propulsion.Logs;

/// <summary>What the times of a log tell.</summary>
public enum LogTimes
{
    /// <summary>Date and time of day, so that two logs may be held against each other by them.</summary>
    DateAndTime,

    /// <summary>Time of day without a date.</summary>
    TimeOfDay,

    /// <summary>Seconds since the log began, which no clock tells.</summary>
    SecondsOnly,
}
