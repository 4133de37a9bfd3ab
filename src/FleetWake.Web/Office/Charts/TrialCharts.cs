using FleetWake.Logbook.Findings;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Charts;

/// <summary>Slip and speed of a mounting's trials: what RPM alone does not tell.</summary>
internal static class TrialCharts
{
    public static SmallChart? Slip(MountingFinding mounting, Measures measures) => Of(
        mounting, t => t.SlipPercent, t => t.SlipSdPercent, 4, PageTexts.English["boat.slip"], "%", v => $"{measures.Number(v, 1)} %");

    public static SmallChart? Speed(MountingFinding mounting, Measures measures) => Of(
        mounting, t => t.SpeedKnots is { } knots ? measures.SpeedOf(knots) : null, _ => null, 4, PageTexts.English["boat.speed"], measures.SpeedUnit, v => $"{measures.Number(v, 1)} {measures.SpeedUnit}");

    private static SmallChart? Of(
        MountingFinding mounting, Func<TrialFinding, double?> value, Func<TrialFinding, double?> half, double leastSpan, string title, string unit, Func<double, string> say)
    {
        // A part-throttle run is another speed for another reason: it would flatten the rest.
        var points = mounting.Trials.Where(t => t.SetAside != SetAsideReason.PartThrottle && t.Hours is not null && value(t) is not null)
            .Select(t => new SmallPoint(t.Hours!.Value, value(t)!.Value, half(t), t.SetAside is null)).OrderBy(p => p.Hours).ToList();
        if (points.Count < 2) return null;
        var (low, high) = (points.Min(p => p.Value - (p.Half ?? 0)), points.Max(p => p.Value + (p.Half ?? 0)));
        var room = Math.Max((leastSpan - (high - low)) / 2, 0.1 * (high - low));
        var sentence = PageTexts.English.With("boat.small-sentence", ("title", title), ("first", say(points[0].Value)), ("last", say(points[^1].Value)), ("n", points.Count));
        return new SmallChart(title, unit, sentence, points, low - room, high + room);
    }
}
