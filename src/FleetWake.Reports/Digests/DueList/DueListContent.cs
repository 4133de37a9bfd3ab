namespace FleetWake.Reports.Digests.DueList;

/// <summary>A dock's due list as data: every sentence is worded, so that the templates only lay out.</summary>
/// <param name="OperatorName">The operator.</param>
/// <param name="Period">A week, e.g. <c>2026-W47</c>, or a day.</param>
/// <param name="Day">The day it speaks of.</param>
/// <param name="Until">The last day that counts as soon.</param>
/// <param name="Subject">Subject of the message, on one line.</param>
/// <param name="Headline">The list in one sentence.</param>
/// <param name="Docks">Each dock with something to do; a sheet of paper each.</param>
/// <param name="Caution">What the list is not.</param>
[InTemplates]
public sealed record DueListContent(
    [property: InTemplates("operator")] string OperatorName,
    string Period,
    DateOnly Day,
    DateOnly Until,
    string Subject,
    string Headline,
    IReadOnlyList<DueDock> Docks,
    IReadOnlyList<string> Caution);

/// <summary>What is due at one dock.</summary>
/// <param name="Dock">Its name.</param>
/// <param name="Summary">How much, in words.</param>
/// <param name="Sections">Overdue first; without the empty ones.</param>
[InTemplates]
public sealed record DueDock(string Dock, string Summary, IReadOnlyList<DueSection> Sections);

/// <summary>Work of one sort.</summary>
/// <param name="Title">Which sort.</param>
/// <param name="Late">It is overdue.</param>
/// <param name="Tasks">The work, the longest due first.</param>
[InTemplates]
public sealed record DueSection(string Title, bool Late, IReadOnlyList<DueTask> Tasks);

/// <summary>One thing to do.</summary>
/// <param name="Boat">Boat and position.</param>
/// <param name="What">What is to be done.</param>
/// <param name="When">Date, and days overdue or to go.</param>
/// <param name="Why">Why it is due.</param>
/// <param name="Hours">Engine hours left or over, by the last reading; else empty.</param>
/// <param name="Who">Who took it; else empty.</param>
/// <param name="Link">Address of the boat in the office; empty when no address is set.</param>
[InTemplates]
public sealed record DueTask(string Boat, string What, string When, string Why, string Hours, string Who, string Link);
