using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Reports.Pictures.Figures;

/// <summary>The share of foretold intervals that held, with binomial limits, against the level claimed.</summary>
public sealed record CalibrationPicture(
    string Title, string Statement, string Caption, IReadOnlyList<LimitRow> Rows, double Reference, string ReferenceLabel, double To, string? Note)
    : LimitRows(Title, Statement, Caption, Rows, Reference, ReferenceLabel, To, Note)
{
    /// <summary>Most days of forecasts drawn.</summary>
    public const int MostDays = 6;

    /// <summary>The picture of the calibrations of some days, the newest first; null where none can be judged.</summary>
    /// <param name="calibrations">The calibrations, in any order.</param>
    public static CalibrationPicture? Of(IReadOnlyList<ForecastCalibration> calibrations)
    {
        ArgumentNullException.ThrowIfNull(calibrations);
        var days = calibrations.OrderByDescending(c => c.Made).Take(MostDays).ToList();
        if (days.TrueForAll(c => c.NextTrial.Judged + c.Exit.Judged == 0)) return null;
        List<LimitRow> rows =
        [
            .. days.Select(c => Row(days.Count == 1 ? "next trial's RPM" : $"RPM, {c.Made:yyyy-MM-dd}", c.NextTrial)),
            .. days.Where(c => c.Exit.Judged + c.Exit.Open > 0).Select(c => Row(days.Count == 1 ? "hours to the edge" : $"edge, {c.Made:yyyy-MM-dd}", c.Exit)),
        ];
        var level = days[0].NextTrial.Level;
        return new CalibrationPicture(
            "Were the intervals right?",
            string.Join(" ", days.Select(c => c.Sentence)),
            "share of the foretold intervals that held what came",
            rows,
            100 * level,
            $"claimed {Phrases.Percent(level)}",
            100,
            $"bars: {Phrases.Percent(ForecastCalibration.LimitsLevel)} limits; few judged, wide bars");
    }

    private static LimitRow Row(string name, IntervalFigures figures) => figures.Share is not { } share
        ? new LimitRow(name, null, 0, null, $"{figures.Open} open", false)
        : new LimitRow(name, 100 * share.Value, 100 * share.Low, 100 * (share.High ?? 1), $"{figures.Held} of {figures.Judged}", figures.InLine == false);
}
