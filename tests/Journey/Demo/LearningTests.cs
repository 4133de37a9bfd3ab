using FleetWake.Import;
using FleetWake.Logbook.Boats;
using FleetWake.Store.Import;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>What the invented fleet's own record teaches of its engines. No database.</summary>
public class LearningTests
{
    private readonly IReadOnlyList<FamilyResponse> families = LearnRun.Of(Logs());

    [Fact]
    public void Every_family_keeps_to_the_gain_that_was_invented()
    {
        Assert.NotEmpty(families);
        Assert.All(families, f => Assert.InRange((f.Response.Gain.Value - 0.39) / f.Response.Gain.StandardDeviation, -2.5, 2.5)); // TrialMaker's RPM per power
        Assert.All(families, f => Assert.True(f.Response.PriorShare <= 1));
        Assert.Contains(families, f => f.Power > 10);
    }

    [Fact]
    public void It_is_told_with_what_to_give_to_the_commands()
    {
        var told = LearnRun.Told(families).ToList();
        Assert.Equal(3 * families.Count, told.Count);
        Assert.StartsWith($"{families[0].Model}: ", told[0], StringComparison.Ordinal);
        Assert.Matches(@"^  trial --gain 0\.\d{3}\+-0\.\d{3}      pitch --elasticity -[01]\.\d{3}\+-0\.\d{3}$", told[2]);
    }

    private static FleetLogs Logs()
    {
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(DemoDays.Records[DemoDays.Usual]));
        return logs;
    }
}
