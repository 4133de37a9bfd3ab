using FleetWake.Demo;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;
using FleetWake.Reports.Pictures.Fleet;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>Every picture of a whole fleet, on the demo's.</summary>
public class PicturesTests
{
    private static readonly DateOnly s_today = DemoDays.Usual;

    [Fact]
    public void Each_of_them_has_something_to_say_of_the_demo()
    {
        var record = InventedFleet.Write(s_today);
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(record));
        var fleet = FleetRecord.Of(logs);
        IReadOnlyList<Logbook.Findings.BoatFinding> findings = [.. AssessedFleet.Of(record).Values];
        var checks = new[] { 90, 60, 30 }.Select(days => s_today.AddDays(-days))
            .Select(made => ForecastCalibration.Of(made, [.. logs.Boats.SelectMany(b => ForecastChecks.Of(logs.DossierOf(b), made))])).ToList();
        var pictures = new Dictionary<string, Picture?>(StringComparer.Ordinal)
        {
            ["strip"] = FleetStrip.Of(findings, record.OperatorName),
            ["slip-map"] = SlipMap.Of(findings, record.OperatorName),
            ["life-material"] = LifeCurves.ByMaterial(fleet),
            ["life-water"] = LifeCurves.ByWater(fleet),
            ["strikes"] = StrikeRatePicture.Of(StrikeRates.Of(fleet)),
            ["calibration"] = CalibrationPicture.Of(checks),
        };
        foreach (var (i, panels) in DriftPanels.Of(findings).Index()) pictures[$"panels-{i + 1}"] = panels;
        var renderer = new PngRenderer();

        // LOOK_AT names a folder to put the pictures and their sentences in, for a person who wants to see them.
        var folder = Environment.GetEnvironmentVariable("LOOK_AT");
        foreach (var (name, picture) in pictures)
        {
            Assert.NotNull(picture);
            var png = renderer.Render(picture);
            if (folder is null) continue;
            File.WriteAllBytes(Path.Combine(folder, $"demo-{name}.png"), png);
            File.AppendAllText(Path.Combine(folder, "demo-sentences.txt"), $"{name}: {picture.Title}\n{picture.Statement}\n\n");
        }

        // The demo's trials scatter less than the trade expects, and before a fit the program leans on the trade: its intervals are wide, and it says so.
        Assert.All(checks, c => Assert.True(c.NextTrial.Judged > 5));
        Assert.InRange(checks.Sum(c => c.NextTrial.Held) / (double)checks.Sum(c => c.NextTrial.Judged), 0.75, 1);
        Assert.All(checks, c => Assert.Equal(c.NextTrial.InLine == false, c.Sentence.Contains("more than the 80 % claimed", StringComparison.Ordinal)));
    }
}
