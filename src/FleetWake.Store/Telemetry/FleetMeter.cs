using System.Diagnostics;
using System.Diagnostics.Metrics;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Records;

namespace FleetWake.Store.Telemetry;

/// <summary>
/// What can be measured of the program from outside. Names and units follow OpenTelemetry's conventions; no label holds
/// an operator, a boat or an address, for figures travel further than the record may.
/// </summary>
public static class FleetMeter
{
    /// <summary>Name of the meter and of the source of traces.</summary>
    public const string Name = "FleetWake";

    private static readonly Meter Meter = new(Name);

    /// <summary>Spans of the program's own steps: a boat assessed, a digest issued, a message sent.</summary>
    public static ActivitySource Spans { get; } = new(Name);

    /// <summary>Records answered, by kind and outcome.</summary>
    public static Counter<long> Records { get; } = Meter.CreateCounter<long>("fleetwake.records", "{record}", "Records answered, by kind and outcome.");

    /// <summary>Rows of imports, by outcome.</summary>
    public static Counter<long> ImportRows { get; } = Meter.CreateCounter<long>("fleetwake.import.rows", "{row}", "Rows of imports, by outcome.");

    /// <summary>Boats assessed, by outcome.</summary>
    public static Counter<long> Findings { get; } = Meter.CreateCounter<long>("fleetwake.findings", "{finding}", "Boats assessed, by outcome: stored or failed.");

    /// <summary>Time to assess a boat [s].</summary>
    public static Histogram<double> FindingDuration { get; } = Meter.CreateHistogram(
        "fleetwake.finding.duration", "s", "Time to assess a boat, from its claim to its stored finding.", null,
        new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] });

    /// <summary>Looks at a fleet, by outcome.</summary>
    public static Counter<long> Fits { get; } = Meter.CreateCounter<long>("fleetwake.fits", "{fit}", "Fits of a fleet, by outcome: recorded, not_moved, nothing_to_learn or failed.");

    /// <summary>Time to fit a fleet [s].</summary>
    public static Histogram<double> FitDuration { get; } = Meter.CreateHistogram(
        "fleetwake.fit.duration", "s", "Time to fit a fleet, from its claim to its record.", null,
        new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 120] });

    /// <summary>Digests by what became of their period: issued or passed over.</summary>
    public static Counter<long> Digests { get; } = Meter.CreateCounter<long>("fleetwake.digests", "{digest}", "Digests, by outcome: issued or passed_over.");

    /// <summary>Attempts to send a message, by what became of them.</summary>
    public static Counter<long> MailAttempts { get; } = Meter.CreateCounter<long>("fleetwake.mail.attempts", "{attempt}", "Attempts to send a message, by outcome.");

    /// <summary>Messages that stand in each state.</summary>
    public static Gauge<int> Mails { get; } = Meter.CreateGauge<int>("fleetwake.mail.messages", "{message}", "Messages, by the state in which they stand.");

    /// <summary>Boats that wait to be assessed.</summary>
    public static Gauge<int> BoatsWaiting { get; } = Meter.CreateGauge<int>("fleetwake.boats.waiting", "{boat}", "Boats that wait to be assessed.");

    /// <summary>How long the first of them has waited [s].</summary>
    public static Gauge<double> OldestWait { get; } = Meter.CreateGauge<double>("fleetwake.boats.oldest_wait", "s", "How long the first of the waiting boats has waited.");

    /// <summary>Boats that could not be assessed.</summary>
    public static Gauge<int> BoatsParked { get; } = Meter.CreateGauge<int>("fleetwake.boats.parked", "{boat}", "Boats that could not be assessed and are left alone until a new record of them comes.");

    /// <summary>Events that the daemon has not folded.</summary>
    public static Gauge<long> EventsBehind { get; } = Meter.CreateGauge<long>("fleetwake.daemon.events_behind", "{event}", "Events that the daemon has not folded yet.");

    /// <summary>Age of the oldest of them [s].</summary>
    public static Gauge<double> DaemonLag { get; } = Meter.CreateGauge<double>("fleetwake.daemon.lag", "s", "Age of the oldest event that the daemon has not folded yet.");

    /// <summary>Nodes heard of and not.</summary>
    public static Gauge<int> Nodes { get; } = Meter.CreateGauge<int>("fleetwake.nodes", "{node}", "Processes on this database, by state: alive or silent.");

    /// <summary>The label of what became of something.</summary>
    public static KeyValuePair<string, object?> Outcome(string outcome) => new("fleetwake.outcome", outcome);

    /// <summary>What became of a record, in a word.</summary>
    public static string OutcomeOf(Answer answer) => answer.Repeat ? "repeated" : Words.Of(answer.Outcome);

    /// <summary>The label of the state in which something stands.</summary>
    public static KeyValuePair<string, object?> State(string state) => new("fleetwake.state", state);

    /// <summary>The label of a record's kind.</summary>
    public static KeyValuePair<string, object?> Kind(string kind) => new("fleetwake.record.kind", kind);
}
