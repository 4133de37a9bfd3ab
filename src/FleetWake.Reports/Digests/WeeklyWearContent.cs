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
/// <param name="Decisions">What needs a person, one item per boat; boats that are not for hire first, then those to look at first.</param>
/// <param name="Charts">Of the boats that need a person: with the strip and the sums at most five.</param>
/// <param name="Sums">CUSUM pictures of positions with an open drift alarm, where there is room for them.</param>
/// <param name="ChartsLeftOut">Which boats have no chart for lack of room; null when none lacks one.</param>
/// <param name="Steps">What strikes and work on props did to the RPM in the last weeks, in words.</param>
/// <param name="Trials">Which trials would decide something, the likeliest first; at most five.</param>
/// <param name="TrialsLeftOut">What is said of trials that are not on that list; null when there is none.</param>
/// <param name="Overdue">What is overdue, longest first.</param>
/// <param name="DueSoon">What is due within 14 days.</param>
/// <param name="Boats">Every position with a trial, smallest margin first.</param>
/// <param name="BoatsLeftOut">Which boats found no room in the list; null when all did.</param>
/// <param name="WithoutTrials">Boats without a trial, in words.</param>
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
    IReadOnlyList<DueRow> DueSoon,
    IReadOnlyList<BoatRow> Boats,
    string? BoatsLeftOut,
    IReadOnlyList<string> WithoutTrials,
    IReadOnlyList<string> Method,
    IReadOnlyList<string> Caution)
{
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

    /// <summary>How much that is due found no room; null when all did.</summary>
    public string? DueLeftOut { get; init; }

    /// <summary>Address of the office's pages; empty where none is set.</summary>
    public string OfficeLink { get; init; } = "";
}

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
/// <param name="Prop">The prop.</param>
/// <param name="Hire">"not for hire" or "look first" while something keeps the boat, else empty: a good RPM must not read as leave to go out.</param>
/// <param name="Sign">A shape that says the same as the word.</param>
/// <param name="State">Where it stands, in words.</param>
/// <param name="Outside">Reading or trials together lie outside the band.</param>
/// <param name="Rpm">Last RPM.</param>
/// <param name="Read">When it was read.</param>
/// <param name="Band">The rated band.</param>
/// <param name="Margin">Distance to the nearer edge, named.</param>
/// <param name="Drift">Drift with its interval, and whether it is the fleet's.</param>
/// <param name="Exit">When it leaves its band.</param>
/// <param name="Alarm">An open drift alarm with its rate; else empty.</param>
/// <param name="Wrong">Which readings are out of line with the others; else empty.</param>
/// <param name="Causes">What its trials point to, where no decision says it; else empty.</param>
[InTemplates]
public sealed record BoatRow(
    string Name, string Prop, string Hire, string Sign, string State, bool Outside, string Rpm, string Read, string Band, string Margin, string Drift, string Exit,
    string Alarm, string Wrong, string Causes);

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
/// <param name="Why">Why it is due.</param>
[InTemplates]
public sealed record DueRow(string Boat, string Dock, string What, string When, string Why);
