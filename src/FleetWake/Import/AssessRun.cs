using System.Globalization;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;
using FleetWake.Store.Import;

namespace FleetWake.Import;

/// <summary>What an assessment came to.</summary>
/// <param name="Rows">Rows read.</param>
/// <param name="Refused">Rows left out.</param>
/// <param name="Boats">Boats assessed.</param>
/// <param name="Mountings">Mountings written.</param>
public readonly record struct AssessTotals(int Rows, int Refused, int Boats, int Mountings)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Rows} rows, refused {Refused}: {Boats} boats, {Mountings} mountings";
}

/// <summary>
/// Assesses a folder of sheets without a database: the same rows, the same decisions and the same findings as after an
/// import and a fit of the fleet, so the numbers are the same to the last digit.
/// </summary>
/// <param name="time">The clock, for which dates lie in the future.</param>
public sealed class AssessRun(TimeProvider time)
{
    /// <summary>The columns of the findings.</summary>
    public const string Columns =
        "boat,position,mounting,prop,fitted_on,ended_on,trials_used,trials_set_aside,drift_rpm_per_100_h,drift_low,drift_high,"
        + "observed_rpm,margin_rpm,nearer_edge,state,exit,exit_hours_from_last_trial,exit_hours_low,exit_hours_high,"
        + "gross_chance_max,fleet_only,alarm,exit_on,exit_earliest,exit_latest,next_trial_value,level_rpm";

    /// <summary>Reads a folder and writes one line a mounting.</summary>
    /// <param name="request">The folder, and whose keys its rows have.</param>
    /// <param name="until">The last day that is looked at; null for everything.</param>
    /// <param name="fit">The folder's fleet is fitted first; else what the trade expects is taken.</param>
    /// <param name="open">Opens where the lines go, once every row was read.</param>
    /// <param name="ct">Ends it early.</param>
    public AssessTotals Run(ImportRequest request, DateOnly? until, bool fit, Func<TextWriter> open, CancellationToken ct)
    {
        var (logs, keys, read) = FolderLogs.Read(request, time, ct);
        var totals = new AssessTotals(read.Rows, read.Refused, 0, 0);
        using var output = open();
        output.WriteLine(Columns);
        var fleet = logs.Boats.Select(boat => BoatHistory.Tell(logs.DossierOf(boat) with { Until = until })).ToList();
        var priors = fit ? FleetPriors.Of(FitFleetPrior.Of(fleet, 1, Fitted)) : FleetPriors.Trade;
        foreach (var history in fleet)
        {
            ct.ThrowIfCancellationRequested();
            totals = totals with { Boats = totals.Boats + 1 };
            foreach (var (span, wear) in EveryMounting.Of(history, priors))
            {
                output.WriteLine(CsvText.Line(Cells(history.Boat, span, wear, keys.GetValueOrDefault(span.Original) ?? span.Id)));
                totals = totals with { Mountings = totals.Mountings + 1 };
            }
        }

        return totals;
    }

    /// <summary>The cells of one mounting, after <see cref="Columns"/>. Numbers stand in full: rounding is the reader's.</summary>
    internal static string[] Cells(string boat, MountingSpan span, MountingFinding wear, string key) =>
    [
        boat,
        Words.Of(span.Fitted.Position),
        CsvText.Harmless(key),
        wear.Prop.Prop,
        Date(wear.FittedOn),
        Date(span.To?.Date()),
        $"{wear.Trials.Count(t => t.SetAside is null)}",
        $"{wear.Trials.Count(t => t.SetAside is not null)}",
        Number(wear.Drift?.Value),
        Number(wear.Drift?.Low),
        Number(wear.Drift?.High),
        Number(wear.Band.ObservedRpm),
        Number(wear.Band.MarginRpm),
        wear.Band.NearerEdge is { } edge ? Words.Of(edge) : "",
        Words.Of(wear.Band.State),
        Words.Of(wear.Exit.State),
        Number(wear.Exit.HoursFromLastTrial),
        Number(wear.Exit.EarliestHours),
        Number(wear.Exit.LatestHours),
        Number(wear.Trials.Max(t => t.GrossChance)),
        wear.FleetOnly ? "yes" : "no",
        Date(wear.Watch?.RaisedOn),
        Date(wear.Exit.Dates?.On),
        Date(wear.Exit.Dates?.Earliest),
        Date(wear.Exit.Dates?.Latest),
        Number(wear.NextTrial?.ChangesDecisionChance),
        Number(wear.LevelRpm?.Value),
    ];

    // Never written down: the stamp of a fit that stays in memory.
    private static readonly Entry Fitted = new(Guid.Empty, "fleetwake", "program", 0, DateTimeOffset.UnixEpoch, "Etc/UTC", DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch, 0, null);

    private static string Date(DateOnly? date) => date is { } day ? $"{day:yyyy-MM-dd}" : "";

    private static string Number(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
