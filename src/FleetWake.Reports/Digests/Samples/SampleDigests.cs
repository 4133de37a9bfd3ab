using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Digests.Alert;
using FleetWake.Reports.Digests.AnalystPack;
using FleetWake.Reports.Digests.DueList;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;

namespace FleetWake.Reports.Digests.Samples;

/// <summary>Each digest of the invented fleet: what templates are tried on.</summary>
public static class SampleDigests
{
    // Before the samples, which are made with them.
    private static MailNames Names { get; } = new(
        new Dictionary<string, string> { ["kittiwake-quay"] = "Kittiwake Quay", ["old-mole"] = "Old Mole", ["sallow-mere"] = "Sallow Mere" },
        new Dictionary<string, string> { ["mech-01"] = "Ada Holm" },
        new Uri("https://office.skerry-bay.example/"));

    /// <summary>Every digest that has templates.</summary>
    public static IReadOnlyList<DigestDraft> All { get; } = [WeeklyWearSample(), DueListSample(), AlertSample(), AnalystPackSample()];

    /// <summary>The sample of a digest, or null when there is none of that name.</summary>
    public static DigestDraft? Of(string digest) => All.FirstOrDefault(d => d.Digest == digest);

    private static DigestDraft WeeklyWearSample()
    {
        Price Of(PricedThing what, decimal amount) => new(what, null, new Money(amount, "NZD"), SampleFleet.Day.AddYears(-1));
        var news = new WearNews
        {
            Office = OfficeRecord.Of(FactLog.Empty(StreamName.Operator)) with { Prices = [Of(PricedThing.HireDay, 320), Of(PricedThing.LabourHour, 95), Of(PricedThing.ShopRepitch, 145), Of(PricedThing.NewProp, 265)] },
            Names = Names,
            Pages = Names.Office,
            Since = SampleFleet.Day.AddDays(-7),
        };
        return WeeklyWearDraft.Of(WeeklyWear.Build(SampleFleet.Name, "2026-W12", SampleFleet.Day, SampleFleet.Findings, ["loaner-9"], news: news));
    }

    private static DigestDraft DueListSample() =>
        DueListDraft.Of(
            DueListDigest.Build(SampleFleet.Name, "2026-W12", SampleFleet.Day, SampleFleet.Findings, Names),
            "skerry-bay",
            "Pacific/Auckland",
            DueListDigest.Items(SampleFleet.Day, SampleFleet.Findings, null).Select(d => d.Item),
            new DateTimeOffset(2026, 3, 17, 18, 0, 0, TimeSpan.Zero),
            Names);

    private static DigestDraft AlertSample()
    {
        var boat = SampleFleet.Findings.FirstOrDefault(f => DriftOf(f) is not null);
        var rows = new List<AlertRow>
        {
            new("Cormorant", "Main pier", "severe strike", true, "Strike on rock at 09:40, blade bent.", "Keep it in; look at prop and shaft.", "https://office.skerry-bay.example/office/boats/cormorant"),
            new("Knot", "North slip", "drift alarm", false, "Its trials have become several times as likely with drift as without.", "Look at blades and hub, then one more trial.", ""),
        };
        var content = new AlertContent(
            SampleFleet.Name, "2 matters that cannot wait, Cormorant (severe strike) first.", rows, "And 1 more: see the office.", ["This is a decision aid. The owner's manual, local rules and a licensed technician win."]);
        return new DigestDraft("alert", "Skerry Bay Hire: 2 alerts, Cormorant (severe strike) first", content, [new PlainSection("What cannot wait", [.. rows.Select(r => $"{r.Name}: {r.Word}\n{r.Sentence}")])])
        {
            Pictures = boat is not null && DriftOf(boat) is { } picture ? [new DraftPicture("drift", picture.Title, picture.Statement, r => r.Render(picture))] : [],
        };
    }

    private static DriftPicture? DriftOf(BoatFinding finding) => finding.Positions.Where(p => p.Mounting is not null).Select(p => DriftPictures.Of(finding, p)).OfType<DriftPicture>().FirstOrDefault();

    private static DigestDraft AnalystPackSample()
    {
        List<LimitRow> docks = [new("Main pier", 6.1, 4.2, 8.6, "6.1: 33 in 5410 h", true), new("North slip", 3.9, 2.4, 6.0, "3.9: 20 in 5128 h", false), new("Kelp Sound", 2.2, 1.1, 4.0, "2.2: 11 in 4990 h", false)];
        var strikes = new StrikeRatePicture(
            "Strikes by dock", "The fleet strikes 4.1 times per 1,000 engine hours (3.2 to 5.2); more at Main pier 6.1 (4.2 to 8.6).", "strikes per 1,000 engine hours, by home dock", docks, 4.1, "fleet 4.1", 9, "bars: 80 % limits");
        var content = new AnalystPackContent(
            SampleFleet.Name, "2026-02", new DateOnly(2026, 2, 28), "Skerry Bay Hire, February 2026: records and figures", "1,204 records and 61 trials in February 2026, of 45 boats.",
            ["Of 96 props 41 were used up in 38,112 engine hours.", "The fleet: 64 strikes in 15,528 engine hours: 4.1 per 1,000 h (3.2 to 5.2)."],
            [new PackFile("records.csv", "1,204 rows: a record of the month"), new PackFile("records.parquet", "1,204 rows: a record of the month"), new PackFile("methods.txt", "how the numbers came about")],
            "Too large for a mail: trials.parquet. They are in the office.", "https://office.skerry-bay.example/office/analyst/2026-02", AnalystPackDigest.Method,
            ["These figures are a decision aid. The owner's manual, local rules and a licensed technician come first."]);
        return AnalystPackDigest.Draft(content, [new DraftPicture("strikes", strikes.Title, strikes.Statement, r => r.Render(strikes))], []);
    }
}
