using System.Diagnostics;
using FleetWake.Demo;
using FleetWake.Figures;
using FleetWake.Journey.Tests.Demo;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Journey.Tests.Figures;

/// <summary>The figures of the demo's fleet. <c>LOOK_AT=FOLDER</c> writes them there as the command prints them.</summary>
public sealed class DemoFiguresTests
{
    private static readonly FleetFigures s_figures = Make();

    [Fact]
    public void Strikes_are_counted_at_the_docks_of_their_days_and_add_up_to_the_fleets()
    {
        var strikes = s_figures.Strikes;
        Assert.True(strikes.Fleet.Strikes >= 5 && strikes.Fleet.EngineHours > 5000, strikes.Sentence);
        foreach (var groups in new[] { strikes.ByDock, strikes.ByBoat, strikes.ByBottom })
        {
            Assert.Equal(strikes.Fleet.Strikes, groups.Sum(g => g.Strikes));
            Assert.Equal(strikes.Fleet.EngineHours, groups.Sum(g => g.EngineHours), 1e-6);
            Assert.All(groups.Where(g => g.All is not null), g => Assert.True(g.All!.Shrunk!.Low > 0 && g.All.Shrunk.Low < g.All.Shrunk.High));
        }

        Assert.Equal(45, strikes.ByBoat.Count(b => b.All is not null));
    }

    [Fact]
    public void Lives_and_spares_rest_on_the_props_of_the_record()
    {
        var props = s_figures.UsedUp.Props + s_figures.UsedUp.LeftOut.Sum(l => l.Props);
        Assert.InRange(props, 45, 200);
        Assert.True(s_figures.Worn.Ended <= s_figures.UsedUp.Ended);
        Assert.All(s_figures.Spares.Sizes.Where(s => s.Count.Fitted > 0), s => Assert.True(s.ExpectedNeed > 0 && s.BaseStock >= 0));
        Assert.Equal("NZD", s_figures.Costs.Currency);
    }

    [Fact]
    public void The_text_has_no_number_that_is_none()
    {
        var text = string.Join('\n', FiguresText.Of(s_figures)) + "\n";
        Assert.DoesNotContain("NaN", text + s_figures.Json(), StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("LOOK_AT") is not { } folder) return;
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "fleet.txt"), text);
        File.WriteAllText(Path.Combine(folder, "fleet.json"), s_figures.Json());
        File.WriteAllText(Path.Combine(folder, "speed.txt"), Speed());
    }

    /// <summary>Best of three of each step, of 45 boats; a look, not a test.</summary>
    private static string Speed()
    {
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(InventedFleet.Write(new DateOnly(2026, 3, 18))));
        var fleet = FleetRecord.Of(logs);
        (string, Action)[] steps =
        [
            ("histories", () => FleetRecord.Of(logs)), ("life", () => (PropLives.Of(fleet), PropLives.Of(fleet, LifeQuestion.Worn)).ToString()),
            ("costs", () => WearCost.Of(fleet)), ("strikes", () => StrikeRates.Of(fleet)), ("spares", () => SpareNeeds.Of(fleet)),
        ];
        return string.Concat(steps.Select(s => $"{s.Item1} {Enumerable.Range(0, 3).Min(_ => Milliseconds(s.Item2)):0} ms\n"));
    }

    private static double Milliseconds(Action step)
    {
        var clock = Stopwatch.StartNew();
        step();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static FleetFigures Make()
    {
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(InventedFleet.Write(new DateOnly(2026, 3, 18))));
        return FleetFigures.Of(FleetRecord.Of(logs), new SpareQuestion());
    }
}
