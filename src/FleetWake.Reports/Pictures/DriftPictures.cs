using FleetWake.Logbook;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>Pictures of findings.</summary>
public static class DriftPictures
{
    /// <summary>Marks closer than this share one line and one label [h]: an hour meter's tenths are not worth two lines.</summary>
    private const double SameHour = 0.5;

    /// <summary>A reading that is likelier wrong than this is drawn so [1]; judgement.</summary>
    private const double ShownWrong = 0.2;

    /// <summary>The picture of a position; null when it has no trial that can be drawn.</summary>
    public static DriftPicture? Of(BoatFinding finding, PositionFinding position)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(position);
        if (position.Mounting is not { } mounting) return null;
        var drawn = mounting.Trials.Where(t => t.Hours is not null).ToList();
        if (drawn.Count == 0) return null;

        var present = mounting.Trials.Max(t => t.Stretch);
        var points = drawn.Select(t => Point(KindOf(t, present), t.Hours!.Value, t.SetAside is null ? t.LineRpm(mounting.AtReference) : t.Rpm, t.GrossChance ?? 0)).ToList();
        var band = position.Engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? new RatedBand(low, high) : null;
        if (band is not null && mounting.AtReference) points.AddRange(drawn.Where(t => t.SetAside is null && !t.Normalised && Holds(band, t.Rpm) != Holds(band, t.LineRpm(true)))
            .Select(t => new PicturePoint(PointKind.AtHelm, t.Hours!.Value, t.Rpm)));
        var subject = new PictureSubject(finding.Boat, position.Position, Phrases.Title(finding, position), Phrases.Statement(finding, position));
        return Of(subject, band, mounting.BaselineRpm, points, mounting.Line, Marks(mounting), ExitOf(mounting, band)) with
        {
            WithoutHours = mounting.Trials.Count - drawn.Count,
            AtReference = mounting.AtReference,
            AlarmHours = mounting.Watch?.RaisedAtHours,
            Outlook = Phrases.Outlook(mounting.Exit),
        };
    }

    /// <summary>A picture of what is known of a mounting, its window laid about that and the line cut to it.</summary>
    /// <param name="subject">What it is of.</param>
    /// <param name="band">The rated band; null when it is not on record.</param>
    /// <param name="baselineRpm">What the present stretch showed first [RPM].</param>
    /// <param name="points">The trials, one at least.</param>
    /// <param name="line">The level over the hours; null where the trials say nothing of a drift.</param>
    /// <param name="marks">What happened on the way, in order of hours.</param>
    /// <param name="exit">Where the line leaves the band; null when no forecast stands.</param>
    public static DriftPicture Of(
        PictureSubject subject, RatedBand? band, double? baselineRpm, IReadOnlyList<PicturePoint> points, DriftLine? line, IReadOnlyList<PictureMark> marks, PictureExit? exit)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var window = Windows.Of(points, band, baselineRpm, line, marks, exit);
        return new DriftPicture(
            subject.Boat, subject.Position, subject.Title, subject.Statement, window, band, baselineRpm, points, line is null ? null : Windows.Cut(line, window.ToHours), marks, exit, 0);
    }

    /// <summary>A trial with the chance that its reading is wrong, where that is worth showing.</summary>
    /// <param name="kind">How it counts.</param>
    /// <param name="hours">Engine hours [h].</param>
    /// <param name="rpm">RPM.</param>
    /// <param name="wrongChance">Chance that it is grossly wrong [1].</param>
    public static PicturePoint Point(PointKind kind, double hours, double rpm, double wrongChance) =>
        new(kind, hours, rpm) { WrongChance = wrongChance > ShownWrong ? wrongChance : null };

    private static bool Holds(RatedBand band, double rpm) => rpm >= band.LowRpm && rpm <= band.HighRpm;

    private static PointKind KindOf(TrialFinding trial, int present) => trial.SetAside switch
    {
        SetAsideReason.LimiterReached => PointKind.AtLeast,
        not null => PointKind.SetAside,
        null when trial.Stretch < present => PointKind.EarlierStretch,
        null => PointKind.Counted,
    };

    // Inspections are left out: they change nothing that a line shows, and their dates stand in the due list.
    private static List<PictureMark> Marks(MountingFinding mounting)
    {
        var all = mounting.Marks.Where(m => m.Hours is not null && m.Kind != HistoryMarkKind.Inspection).ToList();
        if (mounting.FittedAtHours is { } fitted && all.TrueForAll(m => m.Kind != HistoryMarkKind.Fitted))
            all.Add(new HistoryMark(HistoryMarkKind.Fitted, mounting.FittedOn, fitted, "fitted"));

        var effects = mounting.Steps.Where(s => s.ShownByTrials).Select(s => (s.On, Label: s.What[0], s.What.Count, s.Rpm)).ToList();
        var marks = new List<PictureMark>();
        foreach (var mark in all.OrderBy(m => m.Hours).ThenBy(m => m.On))
        {
            var near = marks.Count > 0 && mark.Hours!.Value - marks[^1].Hours < SameHour;
            var effect = effects.Where(e => e.On == mark.On && e.Label == mark.Label).Select(e => StepWords.Of(e.Rpm) + (e.Count > 1 ? " together" : "")).FirstOrDefault();
            if (near)
            {
                var last = marks[^1];
                marks[^1] = new PictureMark(Graver(last.Kind, mark.Kind), last.Hours, $"{last.Label} + {mark.Label}") { Effect = last.Effect ?? effect };
            }
            else
            {
                marks.Add(new PictureMark(mark.Kind, mark.Hours!.Value, mark.Label) { Effect = effect });
            }
        }

        return marks;
    }

    internal static HistoryMarkKind Graver(HistoryMarkKind a, HistoryMarkKind b) =>
        a == HistoryMarkKind.Strike || b == HistoryMarkKind.Strike ? HistoryMarkKind.Strike
        : a == HistoryMarkKind.Repitch || b == HistoryMarkKind.Repitch ? HistoryMarkKind.Repitch
        : a;

    private static PictureExit? ExitOf(MountingFinding mounting, RatedBand? band)
    {
        if (band is null || mounting.Exit is not { State: BandExitState.Forecast, Edge: { } edge, HoursFromLastTrial: { } from, EarliestHours: { } earliest } exit)
            return null;
        if (LastCounted(mounting) is not { } last) return null;
        return new PictureExit(
            edge, edge == BandEdge.Top ? band.HighRpm : band.LowRpm, last + from, last + earliest, exit.LatestHours is { } l ? last + l : null);
    }

    /// <summary>Hours of the last trial that counts [h]: a forecast is reckoned from there.</summary>
    internal static double? LastCounted(MountingFinding mounting) =>
        mounting.Trials.Where(t => t.SetAside is null && t.Hours is not null).Max(t => t.Hours);
}

/// <summary>What a picture is of, in words.</summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Position">The position.</param>
/// <param name="Title">Boat, position and prop.</param>
/// <param name="Statement">The finding in one sentence.</param>
public sealed record PictureSubject(string Boat, Position Position, string Title, string Statement);
