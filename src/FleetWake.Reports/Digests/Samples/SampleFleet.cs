using System.Text.Json;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Digests.Samples;

/// <summary>A dozen boats of an invented fleet, to try templates on without a database. Everything about them is made up.</summary>
public static class SampleFleet
{
    /// <summary>Its operator.</summary>
    public const string Name = "Skerry Bay Hire";

    /// <summary>The day as of which it stands.</summary>
    public static readonly DateOnly Day = new(2026, 3, 18);

    /// <summary>Its boats.</summary>
    public static IReadOnlyList<BoatFinding> Findings { get; } = Read();

    private static List<BoatFinding> Read()
    {
        using var stream = typeof(SampleFleet).Assembly.GetManifestResourceStream("samples/fleet.json")!;
        return JsonSerializer.Deserialize<List<BoatFinding>>(stream, LogbookJson.Options)!;
    }
}
