using System.Text.Json;
using FleetWake.Logbook;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Benchmarks.Pictures;

/// <summary>The chart that is timed: fourteen trials, four events, a line of sixty samples with a forecast. Every number is made up.</summary>
internal static class InventedPictures
{
    public static DriftPicture Drift { get; } = Make();

    /// <summary>The same numbers for another program.</summary>
    public static string Json(DriftPicture p) => JsonSerializer.Serialize(new
    {
        width = 1200,
        height = 732,
        caption = "RPM at wide-open throttle, at reference air",
        band = new[] { p.Band!.LowRpm, p.Band.HighRpm },
        baseline = p.BaselineRpm,
        events = p.Marks.Select(m => new object[] { m.Hours, m.Label }),
        fitted = Samples(p, forecast: false),
        forecast = Samples(p, forecast: true),
        points = p.Points.Select(t => new[] { t.Hours, t.Rpm }),
        side = new object[][] { [p.Band.HighRpm, "top 6000", "#1B6B5A"], [p.Points[^1].Rpm, $"last {p.Points[^1].Rpm:0}", "#0B4F8A"], [p.BaselineRpm!.Value, $"baseline {p.BaselineRpm:0}", "#52606D"] },
        window = new[] { p.Window.FromHours, p.Window.ToHours, p.Window.FromRpm, p.Window.ToRpm },
    });

    private static IEnumerable<double[]> Samples(DriftPicture p, bool forecast) =>
        p.Line!.Points.Where(s => s.Forecast == forecast).Select(s => new[] { s.Hours, s.Rpm, s.LowRpm, s.HighRpm });

    private static DriftPicture Make()
    {
        var points = Enumerable.Range(0, 14).Select(i => DriftPictures.Point(PointKind.Counted, 100 + (22 * i), 5620 + (24 * i) + (18 * Math.Sin(i * 2.3)), 0)).ToList();
        var line = new DriftLine(0.8, [.. Enumerable.Range(0, 60).Select(i => 100 + (8.0 * i)).Select(h => (Hours: h, Rpm: 5615 + (1.1 * (h - 100)), Half: 14 + Math.Abs((h - 243) * 0.12)))
            .Select(s => new DriftPoint(s.Hours, s.Rpm, s.Rpm - s.Half, s.Rpm + s.Half, s.Hours > 386))]);
        PictureMark[] marks =
        [
            new(HistoryMarkKind.Fitted, 92, "fitted"), new(HistoryMarkKind.Strike, 170, "strike, no mark"), new(HistoryMarkKind.Strike, 262, "strike, scuffed"), new(HistoryMarkKind.HullCleaned, 320, "hull cleaned"),
        ];
        return DriftPictures.Of(
            new("gannet", Position.Single, "Gannet: prop P-07, 13.25 x 17 in", "Gannet: drift +110 RPM per 100 h."), new(5000, 6000), 5620, points, line, marks, new(BandEdge.Top, 6000, 450, 420, 490)) with
        { AtReference = true, Outlook = "reaches the top about 2026-12-20, 80 %: 2026-12-01 to 2027-02-10" };
    }
}
