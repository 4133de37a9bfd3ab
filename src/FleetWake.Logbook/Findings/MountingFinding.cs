using FleetWake.Statistics;

namespace FleetWake.Logbook.Findings;

/// <summary>Wear of one mounting: its trials, its drift and where that leads.</summary>
/// <param name="Mounting">Id of the mounting: the entry that fitted the prop.</param>
/// <param name="Prop">The prop.</param>
/// <param name="FittedOn">Dock's date of fitting.</param>
/// <param name="FittedAtHours">Engine hours at fitting [h], when known.</param>
/// <param name="Trials">Its trials in order, each used or set aside with a reason.</param>
/// <param name="Marks">What happened during the mounting: strikes, inspections, and whatever began a new baseline.</param>
/// <param name="BaselineRpm">What the present stretch showed first [RPM].</param>
/// <param name="Drift">Drift [RPM per 100 engine hours] with its interval, from its own trials and what the fleet makes likely; null without a usable trial.</param>
/// <param name="Line">The fitted line of the present stretch, for pictures; null where its own trials say nothing of a drift.</param>
/// <param name="Band">Where the boat stands in its band.</param>
/// <param name="Exit">When drift carries it out of its band.</param>
/// <param name="Causes">What may lie behind a reading outside the band or a drift, most likely group first.</param>
public sealed record MountingFinding(
    string Mounting,
    PropCard Prop,
    DateOnly FittedOn,
    double? FittedAtHours,
    IReadOnlyList<TrialFinding> Trials,
    IReadOnlyList<HistoryMark> Marks,
    double? BaselineRpm,
    Estimate? Drift,
    DriftLine? Line,
    BandStanding Band,
    BandExit Exit,
    IReadOnlyList<string> Causes)
{
    /// <summary>The prop was found there, and nobody recorded the fitting: it was on for some time before.</summary>
    public bool Found { get; init; }

    /// <summary>The drift is the fleet's: its own trials say next to nothing of it, and no date is drawn from it.</summary>
    public bool FleetOnly { get; init; }

    /// <summary>RPM that the trials together say it turned at the last of them, with its interval [RPM]; null without a usable trial.</summary>
    public Estimate? LevelRpm { get; init; }

    /// <summary>The evidence for drift, and whether it raised an alarm; null with fewer than two usable trials.</summary>
    public DriftWatch? Watch { get; init; }

    /// <summary>What each strike, repitch or other new baseline did to the RPM, where trials on both sides tell.</summary>
    public IReadOnlyList<StepShown> Steps { get; init; } = [];

    /// <summary>What one more trial would decide; null without a usable trial or a rated band.</summary>
    public NextTrialCard? NextTrial { get; init; }

    /// <summary>
    /// Baseline, drift, line and exit are of RPM at reference conditions; else of RPM as read, where too little was read of the
    /// air to bring most of the trials there.
    /// </summary>
    public bool AtReference { get; init; }

    /// <summary>What the trials of the present stretch point to; null without two that can be compared, or without the numbers of prop and gear.</summary>
    public PointsTo? PointsTo { get; init; }

    /// <summary>
    /// What the trials of the present stretch together say it turned at the last of them [RPM]; null where they are fewer than three: of
    /// two that disagree nobody knows which is right.
    /// </summary>
    /// <param name="engine">The engine at the position.</param>
    public double? TogetherRpm(EngineCard? engine) => LastWideOpen(engine) is { } last ? Banding.LevelOf(Trials, last.Stretch, LevelRpm) : null;

    /// <summary>The trial whose reading <see cref="BandStanding.ObservedRpm"/> is; null without one.</summary>
    /// <param name="engine">The engine at the position.</param>
    public TrialFinding? LastWideOpen(EngineCard? engine) => Banding.LastWideOpen(Trials, engine);

    /// <summary>How often in the present stretch a trial read inside the band after one that read outside; 0 without a rated band.</summary>
    /// <param name="engine">The engine at the position.</param>
    public int TimesBackInBand(EngineCard? engine) => LastWideOpen(engine) is { } last ? Banding.TimesBack(Trials, engine, last.Stretch) : 0;
}

/// <summary>Something that happened during a mounting, for the picture.</summary>
/// <param name="Kind">What.</param>
/// <param name="On">Dock's date.</param>
/// <param name="Hours">Engine hours [h], when known.</param>
/// <param name="Label">Short label for people.</param>
public sealed record HistoryMark(HistoryMarkKind Kind, DateOnly On, double? Hours, string Label);

/// <summary>Kinds of marks.</summary>
public enum HistoryMarkKind
{
    /// <summary>The prop was fitted.</summary>
    Fitted,

    /// <summary>A strike.</summary>
    Strike,

    /// <summary>A repitch.</summary>
    Repitch,

    /// <summary>An inspection.</summary>
    Inspection,

    /// <summary>Work on the prop other than a repitch.</summary>
    Repair,

    /// <summary>A new hub.</summary>
    Hub,

    /// <summary>The prop was cleaned.</summary>
    PropCleaned,

    /// <summary>The hull was cleaned.</summary>
    HullCleaned,

    /// <summary>Something about hull or transom was changed.</summary>
    Rig,

    /// <summary>The tachometer shows other than before.</summary>
    Tachometer,

    /// <summary>The boat went into the water again after a lay-up.</summary>
    Relaunch,

    /// <summary>Another position got another prop.</summary>
    OtherProp,

    /// <summary>The engine got a new hour meter.</summary>
    HourMeter,
}

/// <summary>The fitted straight line of the present stretch, sampled for a picture: mean response with its interval.</summary>
/// <param name="Level">Level of the interval, e.g. 0.8.</param>
/// <param name="Points">The samples, in order of hours; those after the last trial are forecast.</param>
public sealed record DriftLine(double Level, IReadOnlyList<DriftPoint> Points);

/// <summary>One sample of a fitted line.</summary>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="Rpm">Mean [RPM].</param>
/// <param name="LowRpm">Lower end of the interval [RPM].</param>
/// <param name="HighRpm">Upper end of the interval [RPM].</param>
/// <param name="Forecast">Beyond the last trial.</param>
public sealed record DriftPoint(double Hours, double Rpm, double LowRpm, double HighRpm, bool Forecast);

/// <summary>Where a boat stands in its rated band.</summary>
/// <param name="State">In words.</param>
/// <param name="ObservedRpm">What the engine turned at its last wide-open-throttle trial: as read, brought right where its tachometer was checked; or as brought to reference conditions elsewhere where no later word of the helm says "over". Null without one.</param>
/// <param name="PresentRpm">RPM that the margin is reckoned from: the less favourable of the last reading and the fitted line at the last trial.</param>
/// <param name="MarginRpm">Signed distance to the nearer edge [RPM]; negative outside.</param>
/// <param name="NearerEdge">Which edge that is.</param>
public sealed record BandStanding(BandState State, double? ObservedRpm, double? PresentRpm, double? MarginRpm, BandEdge? NearerEdge)
{
    /// <summary>What the gauge showed at that trial [RPM], where a check of it says that it shows other than is true; null otherwise.</summary>
    public double? GaugeRpm { get; init; }

    /// <summary>
    /// What the same trial comes to at reference conditions [RPM], or a later reading at reference conditions where the helm read
    /// over the top before it: both are to be shown. Null when there is no other number to show.
    /// </summary>
    public double? ReferenceRpm { get; init; }
}

/// <summary>Where a reading lies.</summary>
public enum BandState
{
    /// <summary>No trial or no band on record.</summary>
    NotKnown,

    /// <summary>Inside the rated band.</summary>
    InBand,

    /// <summary>Above its top: over-revving.</summary>
    AboveTop,

    /// <summary>Below its bottom: lugging.</summary>
    BelowBottom,
}

/// <summary>An edge of the rated band.</summary>
public enum BandEdge
{
    /// <summary>The highest rated RPM.</summary>
    Top,

    /// <summary>The lowest rated RPM.</summary>
    Bottom,
}
