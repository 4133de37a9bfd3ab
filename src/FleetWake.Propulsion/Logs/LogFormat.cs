namespace FleetWake.Propulsion.Logs;

/// <summary>The open formats in which a trial may be recorded.</summary>
public enum LogFormat
{
    /// <summary>NMEA 0183 sentences, one a line, with or without a TAG block or a time in front.</summary>
    Nmea0183,

    /// <summary>Signal K delta messages: JSON objects one a line, one after another, or in an array.</summary>
    SignalK,

    /// <summary>GPX 1.1 tracks (1.0 as well): positions and times, seldom a speed, never RPM.</summary>
    Gpx,

    /// <summary>Cells with a header that names each column and its unit; with times a log, without them one row a run.</summary>
    Csv,

    /// <summary>One JSON object with "runs", as somebody typed it.</summary>
    TypedJson,
}
