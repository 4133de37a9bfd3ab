using System.Text.Json;
using FleetWake.Logbook.Entries;
using FleetWake.Reports.Digests.Samples;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>
/// The boats that templates are tried on come out of the demo's invented fleet. FLEETWAKE_WRITE_SAMPLE=1 writes them anew,
/// which is needed when findings gain what a digest shows.
/// </summary>
public class SampleFleetTests
{
    private static readonly string[] Chosen = ["Gannet", "Redshank", "Merganser", "Teal", "Wigeon", "Albatross", "Turnstone", "Oystercatcher", "Cormorant", "Pelican", "Knot", "Eider"];

    [Fact]
    public void The_sample_is_boats_of_the_demo_and_can_be_read()
    {
        if (Environment.GetEnvironmentVariable("FLEETWAKE_WRITE_SAMPLE") is not null) Write();
        Assert.InRange(SampleFleet.Findings.Count, 8, Chosen.Length);
        Assert.Subset(Chosen.ToHashSet(), SampleFleet.Findings.Select(f => f.DisplayName()).ToHashSet());
        Assert.Contains(SampleFleet.Findings, f => f.Positions.Count > 1);
    }

    private static void Write()
    {
        var findings = AssessedFleet.Of(DemoDays.Records[SampleFleet.Day]).Values.Where(f => Chosen.Contains(f.DisplayName())).OrderBy(f => Array.IndexOf(Chosen, f.DisplayName())).ToList();
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FleetWake.sln"))) folder = folder.Parent!;
        File.WriteAllText(Path.Combine(folder.FullName, "src/FleetWake.Reports/Digests/Samples/fleet.json"), JsonSerializer.Serialize(findings, LogbookJson.Options));
        Assert.Fail($"Written: {string.Join(", ", findings.Select(f => f.DisplayName()))}. Build and run it again.");
    }
}
