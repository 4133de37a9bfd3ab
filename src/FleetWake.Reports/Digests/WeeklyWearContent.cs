using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Fleet;

namespace FleetWake.Reports.Digests;

/// <summary>
/// A weekly wear digest as data: every sentence is worded and every number written, so that the templates and the plain
/// form only lay out, and none of them can lose or reword a finding.
/// </summary>
/// <param name="OperatorName">The operator.</param>
/// <param name="Period">ISO week, e.g. <c>2026-W47</c>; in winter it may be a month.</param>
/// <param name="Day">The day it speaks of.</param>
/// <param name="Subject">Subject of the message, on one line.</param>
/// <param name="Headline">The week in one sentence.</param>
/// <param name="Decisions">What a manager decides, one item a boat; outside the band first.</param>
/// <param name="Charts">Of the boats to decide on, then of those that drift: with the strip and the sums at most five.</param>
/// <param name="Sums">CUSUM pictures of positions with an open drift alarm, where there is room for them.</param>
/// <param name="ChartsLeftOut">Which boats to decide on have no chart for lack of room; null when none lacks one.</param>
/// <param name="Steps">What strikes and work on props did to the RPM in the last weeks, in words.</param>
/// <param name="Trials">Which trials would decide something, the likeliest first; at most five.</param>
/// <param name="TrialsLeftOut">What is said of trials that are not on that list; null when there is none.</param>
/// <param name="Overdue">What is overdue and releases no boat that is told of already, longest first.</param>
/// <param name="Boats">Positions that drift or stand near an edge and are not to decide on, smallest margin first.</param>
/// <param name="OtherBoats">What is said of all the others; null when there is none.</param>
/// <param name="WithoutTrials">Boats without a trial, in a sentence; null when there is none.</param>
/// <param name="Method">How the numbers came about.</param>
/// <param name="Caution">What the numbers are not.</param>
[InTemplates]
public sealed record WeeklyWearContent(
    [property: InTemplates("operator")] string OperatorName,
    string Period,
    DateOnly Day,
    string Subject,
    string Headline,
    IReadOnlyList<DecisionItem> Decisions,
    IReadOnlyList<DriftPicture> Charts,
    IReadOnlyList<CusumPicture> Sums,
    string? ChartsLeftOut,
    IReadOnlyList<string> Steps,
    IReadOnlyList<TrialRow> Trials,
    string? TrialsLeftOut,
    IReadOnlyList<DueRow> Overdue,
    IReadOnlyList<BoatRow> Boats,
    string? OtherBoats,
    string? WithoutTrials,
    IReadOnlyList<string> Method,
    IReadOnlyList<string> Caution)
{
    /// <summary>What the boats that stay cost while they stay, and what releasing them takes; empty when none stays.</summary>
    public string Waiting { get; init; } = "";

    /// <summary>What changes Monday, the boats that stay first.</summary>
    public IReadOnlyList<MondayRow> Monday { get; init; } = [];

    /// <summary>Every engine in its band at a glance; null where no engine stands anywhere.</summary>
    public FleetStrip? Strip { get; init; }

    /// <summary>What happened since the edition before; empty in the first.</summary>
    public IReadOnlyList<string> Changes { get; init; } = [];

    /// <summary>The day of that edition; null in the first.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Props at a shop, in words.</summary>
    public IReadOnlyList<string> InShop { get; init; } = [];

    /// <summary>Spares to order, in words.</summary>
    public IReadOnlyList<string> SparesToOrder { get; init; } = [];

    /// <summary>How often the docks strike, the worst first.</summary>
    public IReadOnlyList<string> StrikesByDock { get; init; } = [];

    /// <summary>What the record lacks, in words.</summary>
    public IReadOnlyList<string> DataQuality { get; init; } = [];

    /// <summary>Names of the boats whose decisions found no room; null when all did.</summary>
    public string? DecisionsLeftOut { get; init; }

    /// <summary>Questions of the record that wait for an answer, by what they are about; null when there is none.</summary>
    public string? Questions { get; init; }

    /// <summary>Boats that are laid up with something to settle before they go out again; null when there is none.</summary>
    public string? LaidUp { get; init; }

    /// <summary>What is due and not listed: what releases boats that are told of, what found no room, and the next two weeks; null when there is none.</summary>
    public string? DueLeftOut { get; init; }

    /// <summary>Addresses of the office's pages.</summary>
    public WearLinks Links { get; init; } = new("", "", "", "", "", "");
}

/// <summary>Addresses of the office's pages; each empty where none is set.</summary>
/// <param name="Fleet">All boats, by margin.</param>
/// <param name="Due">What is due.</param>
/// <param name="Questions">Questions of the record.</param>
/// <param name="Shop">Props at a shop and on loan.</param>
/// <param name="Spares">Spares.</param>
/// <param name="Strikes">Strikes and claims.</param>
[InTemplates]
public sealed record WearLinks(string Fleet, string Due, string Questions, string Shop, string Spares, string Strikes);

/// <summary>What a person has to decide about one boat.</summary>
/// <param name="Boat">Its name.</param>
/// <param name="Dock">Its dock; empty while it is not registered.</param>
/// <param name="Blocks">It is not for hire, or wants a look first, until this is settled.</param>
/// <param name="State">The same in words.</param>
/// <param name="Points">What is the matter, blocking points first.</param>
[InTemplates]
public sealed record DecisionItem(string Boat, string Dock, bool Blocks, string State, IReadOnlyList<DecisionPoint> Points)
{
    /// <summary>When it is expected to leave its band; empty where nothing is forecast.</summary>
    public string Exit { get; init; } = "";

    /// <summary>What it costs to wait, by the operator's own prices; empty where waiting has no price.</summary>
    public string Waiting { get; init; } = "";

    /// <summary>Key of the charts that show it; empty where there is none.</summary>
    public string Chart { get; init; } = "";

    /// <summary>Address of the boat's page; empty where none is set.</summary>
    public string Link { get; init; } = "";
}

/// <summary>One matter of a boat.</summary>
/// <param name="Sentence">What is the matter.</param>
/// <param name="Settles">What releases the boat, or settles the matter.</param>
[InTemplates]
public sealed record DecisionPoint(string Sentence, string Settles);

/// <summary>One position with trials.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="Sign">A shape that says the same as the word.</param>
/// <param name="State">Where it stands, in words.</param>
/// <param name="Outside">Reading or trials together lie outside the band.</param>
/// <param name="Margin">Distance to the nearer edge, named.</param>
/// <param name="Drift">Drift with its interval, or whose figure it mostly is.</param>
/// <param name="Exit">When it leaves its band; empty where nothing is forecast.</param>
/// <param name="Alarm">Since when a drift alarm stands; else empty.</param>
/// <param name="Link">Address of the boat's page; empty where none is set.</param>
[InTemplates]
public sealed record BoatRow(string Name, string Sign, string State, bool Outside, string Margin, string Drift, string Exit, string Alarm, string Link);

/// <summary>A trial that would decide something.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="Dock">Its dock; empty while it is not registered.</param>
/// <param name="Decides">Chance that it changes what one does.</param>
/// <param name="Shows">What it would take from the doubt, and what its gauge can show.</param>
[InTemplates]
public sealed record TrialRow(string Name, string Dock, string Decides, string Shows);

/// <summary>Something that is due.</summary>
/// <param name="Boat">Boat and position.</param>
/// <param name="Dock">Its dock.</param>
/// <param name="What">What is due.</param>
/// <param name="When">Date, and days overdue or to go.</param>
[InTemplates]
public sealed record DueRow(string Boat, string Dock, string What, string When);
