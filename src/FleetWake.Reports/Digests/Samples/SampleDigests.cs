using FleetWake.Reports.Digests.DueList;

namespace FleetWake.Reports.Digests.Samples;

/// <summary>Each digest of the invented fleet: what templates are tried on.</summary>
public static class SampleDigests
{
    /// <summary>Every digest that has templates.</summary>
    public static IReadOnlyList<DigestDraft> All { get; } = [WeeklyWearSample(), DueListSample()];

    /// <summary>The sample of a digest, or null when there is none of that name.</summary>
    public static DigestDraft? Of(string digest) => All.FirstOrDefault(d => d.Digest == digest);

    private static DigestDraft WeeklyWearSample() =>
        WeeklyWearDraft.Of(WeeklyWear.Build(SampleFleet.Name, "2026-W12", SampleFleet.Day, SampleFleet.Findings, ["loaner-9"]));

    private static DigestDraft DueListSample()
    {
        var names = new DueNames(new Dictionary<string, string> { ["main-pier"] = "Main pier" }, new Dictionary<string, string>(), new Uri("https://office.skerry-bay.example/"));
        return DueListDraft.Of(
            DueListDigest.Build(SampleFleet.Name, "2026-W12", SampleFleet.Day, SampleFleet.Findings, names),
            "skerry-bay",
            "Pacific/Auckland",
            DueListDigest.Items(SampleFleet.Day, SampleFleet.Findings, null).Select(d => d.Item),
            new DateTimeOffset(2026, 3, 17, 18, 0, 0, TimeSpan.Zero));
    }
}
