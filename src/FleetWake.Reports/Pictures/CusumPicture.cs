using FleetWake.Logbook;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>
/// A self-starting CUSUM of one mounting as data, for people: how far its trials have added up above or below the mean of
/// those before them. The alarm is not judged by it.
/// </summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Position">The position.</param>
/// <param name="Title">Boat, position and prop.</param>
/// <param name="Statement">What it shows and what it is for; the alternative text of the picture.</param>
/// <param name="Limit">Where a sum says that the level has moved [standard deviations].</param>
/// <param name="Points">The usable trials in order.</param>
/// <param name="Restarts">Where the sums began anew.</param>
public sealed record CusumPicture(
    string Boat, Position Position, string Title, string Statement, double Limit, IReadOnlyList<CusumPoint> Points, IReadOnlyList<CusumRestart> Restarts)
    : Picture(Title, Statement);

/// <summary>A trial with its sums.</summary>
/// <param name="When">When it was run, for the axis.</param>
/// <param name="Above">Sum of what lay above [standard deviations]; null for the first two of a stretch, which have nothing to be held against.</param>
/// <param name="Below">Sum of what lay below, zero or more [standard deviations].</param>
/// <param name="Alarm">The drift alarm was raised at this trial, by the evidence.</param>
public sealed record CusumPoint(string When, double? Above, double? Below, bool Alarm);

/// <summary>A new baseline, at which the sums began anew.</summary>
/// <param name="BeforeTrial">Place of the first trial after it, from 0.</param>
/// <param name="Kind">The gravest of what began it.</param>
/// <param name="Label">Short label.</param>
public sealed record CusumRestart(int BeforeTrial, HistoryMarkKind Kind, string Label);

/// <summary>A usable trial as a CUSUM takes it.</summary>
/// <param name="When">When it was run, for the axis.</param>
/// <param name="Rpm">RPM of the line [RPM].</param>
/// <param name="Stretch">Which stretch it belongs to.</param>
/// <param name="Alarm">The drift alarm was raised at this trial.</param>
public sealed record CusumTrial(string When, double Rpm, int Stretch, bool Alarm);
