using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Pictures;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>The digest that the demo mails, made without a database.</summary>
public class DigestTests
{
    [Fact]
    public void Every_decision_is_one_of_the_stories() => Assert.Equal(
        [
            // Phalarope is no story: a false drift alarm, of which some 2 come in 90 boat-years.
            "Cormorant", "Gannet", "Knot", "loaner-7", "Pelican", "Phalarope", "Redshank", "Ruff", "Sanderling", "Teal",
        ],
        Content(DemoDays.Usual) is var c ? c.Decisions.Select(d => d.Boat).Concat(c.Monday.Select(m => m.Name).Where(n => n.Length > 0)).Distinct().Order(StringComparer.OrdinalIgnoreCase) : []);

    [Fact]
    public void Every_question_is_one_of_the_stories() => Assert.Equal(
        "3 questions wait for an answer: a prop in two places (Oystercatcher, Turnstone); an hour reading (Godwit); a trial without a prop (loaner-7).",
        Content(DemoDays.Usual).Questions);

    [Fact]
    public void Every_duty_is_one_of_the_stories()
    {
        var content = Content(DemoDays.Usual);
        Assert.Equal(
            ["Auklet", "Diver", "Merganser, port and starboard", "Puffin", "Skua", "Turnstone"],
            content.Overdue.Select(d => d.Boat).Order(StringComparer.OrdinalIgnoreCase));
        Assert.StartsWith("4 overdue looks are what the boats above stay for. 4 fall due within 14 days, the first on ", content.DueLeftOut, StringComparison.Ordinal);
    }

    [Fact]
    public void It_can_be_looked_at()
    {
        var digest = new DigestRenderer(new PngRenderer(), null).Render(WeeklyWearDraft.Of(Content(DemoDays.Usual)));
        Assert.InRange(digest.Pictures.Count, WeeklyWear.MostCharts, WeeklyWear.MostCharts + WeeklyWear.MostSums);

        // LOOK_AT names a folder to put the digest in, for a person who wants to see it.
        if (Environment.GetEnvironmentVariable("LOOK_AT") is not { } folder) return;
        var html = digest.Html;
        foreach (var p in digest.Pictures)
        {
            File.WriteAllBytes(Path.Combine(folder, p.FileName), p.Png);
            html = html.Replace("cid:" + p.ContentId, p.FileName, StringComparison.Ordinal);
        }

        File.WriteAllText(Path.Combine(folder, "demo.html"), html);
        File.WriteAllText(Path.Combine(folder, "demo.txt"), digest.Text);
    }

    private static WeeklyWearContent Content(DateOnly today)
    {
        var record = DemoDays.Records[today];
        var office = DecidedRecords.Facts(record).Where(p => p.Stream == StreamName.Operator)
            .Aggregate(FactLog.Empty(StreamName.Operator), (log, p) => log.Evolve(p.Fact));
        return WeeklyWear.Build(record.OperatorName, "2026-W12", today, [.. AssessedFleet.Of(record).Values], policy: FleetPolicy.Of(office));
    }
}
