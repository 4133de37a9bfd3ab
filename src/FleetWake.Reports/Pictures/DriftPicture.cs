using FleetWake.Logbook;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>
/// A chart of one mounting as data: RPM at wide-open throttle over engine hours. A renderer adds nothing to it,
/// so that the picture in a mail and the picture on a page say the same.
/// </summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Position">The position.</param>
/// <param name="Title">Boat, position and prop.</param>
/// <param name="Statement">The finding in one sentence; the alternative text of the picture.</param>
/// <param name="Window">What part of hours and RPM is shown.</param>
/// <param name="Band">The rated band; null when it is not on record.</param>
/// <param name="BaselineRpm">What the present stretch showed first [RPM].</param>
/// <param name="Points">The trials.</param>
/// <param name="Line">The level over the hours with its interval, cut to the window; null where the trials say nothing of a drift.</param>
/// <param name="Marks">What happened on the way, in order of hours.</param>
/// <param name="Exit">Where the line leaves the band; null when no forecast stands.</param>
/// <param name="WithoutHours">Trials that cannot be drawn since nobody knows the hours.</param>
public sealed record DriftPicture(
    string Boat,
    Position Position,
    string Title,
    string Statement,
    PictureWindow Window,
    RatedBand? Band,
    double? BaselineRpm,
    IReadOnlyList<PicturePoint> Points,
    DriftLine? Line,
    IReadOnlyList<PictureMark> Marks,
    PictureExit? Exit,
    int WithoutHours) : Picture(Title, Statement)
{
    /// <summary>RPM is that at reference air; else as read.</summary>
    public bool AtReference { get; init; }

    /// <summary>Engine hours of the trial at which a drift alarm was raised [h]; null without an open one.</summary>
    public double? AlarmHours { get; init; }

    /// <summary>When it leaves its band, or why that is not told: a line of its own under the hours.</summary>
    public string? Outlook { get; init; }
}

/// <summary>The part of hours [h] and RPM that a picture shows.</summary>
/// <param name="FromHours">Left.</param>
/// <param name="ToHours">Right.</param>
/// <param name="FromRpm">Bottom.</param>
/// <param name="ToRpm">Top.</param>
public sealed record PictureWindow(double FromHours, double ToHours, double FromRpm, double ToRpm);

/// <summary>The rated wide-open-throttle band [RPM].</summary>
/// <param name="LowRpm">Its bottom.</param>
/// <param name="HighRpm">Its top.</param>
public sealed record RatedBand(double LowRpm, double HighRpm);

/// <summary>A trial in a picture.</summary>
/// <param name="Kind">How it counts; each kind has a shape of its own.</param>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="Rpm">RPM, as read or at reference air as the picture says.</param>
public sealed record PicturePoint(PointKind Kind, double Hours, double Rpm)
{
    /// <summary>Chance that the reading is wrong [1]; null where that is too small to be shown.</summary>
    public double? WrongChance { get; init; }
}

/// <summary>How a trial counts.</summary>
public enum PointKind
{
    /// <summary>Counts, and belongs to the present stretch.</summary>
    Counted,

    /// <summary>Counted for an earlier stretch, before a strike, a repitch or the like.</summary>
    EarlierStretch,

    /// <summary>Held by the limiter: the engine would have turned at least this fast.</summary>
    AtLeast,

    /// <summary>Set aside: stays in the picture, does not count.</summary>
    SetAside,

    /// <summary>What the helm read of a trial whose RPM at reference air stands beside it, where the one is outside the band and the other is not.</summary>
    AtHelm,
}

/// <summary>Something that happened, with all that happened at the same hour.</summary>
/// <param name="Kind">The gravest of its kinds.</param>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="Label">Short label.</param>
public sealed record PictureMark(HistoryMarkKind Kind, double Hours, string Label)
{
    /// <summary>What it did to the RPM; null where trials do not tell. Written where there is room, and in the sentence always.</summary>
    public string? Effect { get; init; }
}

/// <summary>Where the line reaches an edge of the band.</summary>
/// <param name="Edge">Which edge.</param>
/// <param name="Rpm">That edge [RPM].</param>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="EarliestHours">Lower end of its interval [h].</param>
/// <param name="LatestHours">Upper end [h]; null when it lies beyond the horizon.</param>
public sealed record PictureExit(BandEdge Edge, double Rpm, double Hours, double EarliestHours, double? LatestHours);
