using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>Pictures of findings.</summary>
public static class DriftPictures
{
    /// <summary>Marks closer than this share one line and one label [h]: an hour meter's tenths are not worth two lines.</summary>
    private const double SameHour = 0.5;

    /// <summary>The picture of a position; null when it has no trial that can be drawn.</summary>
    public static DriftPicture? Of(BoatFinding finding, PositionFinding position)
    {
        if (position.Mounting is not { } mounting) return null;
        var drawn = mounting.Trials.Where(t => t.Hours is not null).ToList();
        if (drawn.Count == 0) return null;

        var present = mounting.Trials.Max(t => t.Stretch);
        var points = drawn.Select(t => new PicturePoint(KindOf(t, present), t.Hours!.Value, t.SetAside is null ? t.LineRpm(mounting.AtReference) : t.Rpm)).ToList();
        var band = position.Engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? new RatedBand(low, high) : null;
        if (band is not null && mounting.AtReference) points.AddRange(drawn.Where(t => t.SetAside is null && !t.Normalised && Holds(band, t.Rpm) != Holds(band, t.LineRpm(true)))
            .Select(t => new PicturePoint(PointKind.AtHelm, t.Hours!.Value, t.Rpm)));
        var marks = Marks(mounting);
        var exit = ExitOf(mounting, band);
        var window = Windows.Of(points, band, mounting, marks, exit);
        return new DriftPicture(
            finding.Boat,
            position.Position,
            Phrases.Title(finding, position),
            Phrases.Statement(finding, position),
            window,
            band,
            mounting.BaselineRpm,
            points,
            mounting.Line is { } line ? Windows.Cut(line, window.ToHours) : null,
            marks,
            exit,
            mounting.Trials.Count - drawn.Count)
        {
            AtReference = mounting.AtReference,
        };
    }

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

        var marks = new List<PictureMark>();
        foreach (var mark in all.OrderBy(m => m.Hours).ThenBy(m => m.On))
        {
            if (marks.Count > 0 && mark.Hours!.Value - marks[^1].Hours < SameHour)
            {
                var last = marks[^1];
                marks[^1] = new PictureMark(Graver(last.Kind, mark.Kind), last.Hours, $"{last.Label} + {mark.Label}");
            }
            else
            {
                marks.Add(new PictureMark(mark.Kind, mark.Hours!.Value, mark.Label));
            }
        }

        return marks;
    }

    private static HistoryMarkKind Graver(HistoryMarkKind a, HistoryMarkKind b) =>
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
