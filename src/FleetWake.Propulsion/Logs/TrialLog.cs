using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// A trial as an instrument recorded it, or as somebody typed it. Rates and speeds stand apart, each with its own times, for
/// no log takes both at one moment; <see cref="Logs.Plateaus"/> brings them together over stretches of time.
/// </summary>
/// <param name="Format">The format it was read as.</param>
/// <param name="Rates">Engine rates in the order of time.</param>
/// <param name="Track">Speeds over ground in the order of time.</param>
/// <param name="TypedRuns">Runs given as such, one a row; empty for a recording.</param>
/// <param name="Air">Means of the air's readings; null when there were none.</param>
/// <param name="Lines">Lines read, for GPX points and for JSON objects.</param>
/// <param name="Dropped">The first of the lines that could not be used, at most <see cref="MostDroppedShown"/>.</param>
/// <param name="DroppedCount">How many could not be used.</param>
/// <param name="Notices">What else is to be said of it.</param>
public sealed record TrialLog(
    LogFormat Format,
    IReadOnlyList<RateSample> Rates,
    IReadOnlyList<TrackSample> Track,
    IReadOnlyList<RunReading> TypedRuns,
    AirState? Air,
    int Lines,
    IReadOnlyList<DroppedLine> Dropped,
    int DroppedCount,
    IReadOnlyList<LogNotice> Notices)
{
    /// <summary>
    /// The first of the values that were left aside while the rest of their line was used, at most <see cref="MostDroppedShown"/>.
    /// </summary>
    public IReadOnlyList<DroppedLine> LeftAside { get; init; } = [];

    /// <summary>How many values were left aside.</summary>
    public int LeftAsideCount { get; init; }

    /// <summary>What its times tell.</summary>
    public LogTimes Times { get; init; }

    /// <summary>How many dropped lines are shown with their reason; the rest is counted.</summary>
    public const int MostDroppedShown = 50;

    /// <summary>Reads a log. Whatever it holds, it is read as far as it can be: no content throws.</summary>
    /// <param name="text">The log's text. The caller opens and closes it; what it throws passes through.</param>
    /// <param name="options">What the log does not say of itself.</param>
    /// <returns>
    /// The log. A text that is none gives a log without samples whose dropped lines say why.
    /// </returns>
    public static TrialLog Read(TextReader text, LogOptions options)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentOutOfRangeException.ThrowIfLessThan(options.MostLines, 1, nameof(options));

        using var peeked = new PeekedText(text);
        var format = options.Format ?? FormatGuess.Of(peeked.Beginning);
        var builder = new LogBuilder(format, options);
        switch (format)
        {
            case LogFormat.Gpx: GpxLog.Read(peeked, builder); break;
            case LogFormat.SignalK or LogFormat.TypedJson: SignalKLog.Read(BoundedLines.Of(peeked), builder); break;
            case LogFormat.Csv: CsvLog.Read(BoundedLines.Of(peeked), builder); break;
            default: new NmeaLog(builder).Read(BoundedLines.Of(peeked)); break;
        }

        return builder.Build();
    }
}
