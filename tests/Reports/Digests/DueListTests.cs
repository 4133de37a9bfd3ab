using System.Text;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.DueList;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Mail;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Tests.Mail;
using Ical.Net;
using MimeKit;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>What is due, for whoever does it.</summary>
public class DueListTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 16, 6, 0, 0, TimeSpan.Zero);
    private static readonly MailNames Names = new(new Dictionary<string, string> { ["North slip"] = "North slip" }, new Dictionary<string, string> { ["mech-1"] = "Mo Ness" }, new Uri("https://office.example/"));

    private static DueListContent Build(params BoatFinding[] boats) => DueListDigest.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, boats.Length > 0 ? boats : SkerryBay.Fleet(), Names);

    private static DigestDraft Draft(DueListContent content, IReadOnlyList<BoatFinding> boats) =>
        DueListDraft.Of(content, "skerry-bay", "Atlantic/Faroe", DueListDigest.Items(SkerryBay.Monday, boats, null).Select(d => d.Item), Now, Names);

    [Fact]
    public void The_headline_counts_what_is_overdue_and_what_is_due_within_the_week()
    {
        var list = Build();
        var tasks = list.Docks.SelectMany(d => d.Sections).SelectMany(s => s.Tasks).ToList();
        Assert.Equal(2, tasks.Count(t => t.When.EndsWith("overdue", StringComparison.Ordinal)));
        Assert.StartsWith("3 boats stay until released. 2 duties are overdue; ", list.Headline, StringComparison.Ordinal);
        Assert.StartsWith("Skerry Bay Hire, North slip: 3 to release, 2 overdue", list.Subject, StringComparison.Ordinal);
        Assert.Equal(SkerryBay.Monday.AddDays(6), list.Until);
    }

    [Fact]
    public void What_a_strike_calls_for_comes_first()
    {
        var sections = Assert.Single(Build(SkerryBay.StruckBoat(), SkerryBay.Quiet("Turnstone", 190)).Docks).Sections;
        Assert.Equal(["After a strike", "Overdue"], sections.Select(s => s.Title));
    }

    [Fact]
    public void What_keeps_a_boat_and_is_no_duty_is_on_the_list_too_with_what_releases_it()
    {
        var list = Build(SkerryBay.TakenOff());
        Assert.Equal("1 boat stays until released. Nothing is due until 2026-11-22.", list.Headline);
        var section = Assert.Single(Assert.Single(list.Docks).Sections);
        Assert.Equal("Stays until released", section.Title);
        var task = Assert.Single(section.Tasks);
        Assert.Equal(("Dipper", "not for hire", "https://office.example/office/boats/boat-dipper"), (task.Boat, task.When, task.Link));
        Assert.Equal("stays at the dock: inspection of 2026-11-12: take off. Released by the prop off, and a later inspection with the verdict fit; about 60 min, another prop, or this one mended", task.What);
    }

    [Fact]
    public void A_week_without_anything_due_says_so()
    {
        var list = Build(SkerryBay.Quiet());
        Assert.Equal("Nothing is due until 2026-11-22.", list.Headline);
        Assert.Equal("Skerry Bay Hire: nothing is due", list.Subject);
        Assert.Empty(list.Docks);
    }

    [Fact]
    public void Each_task_leads_to_its_boat_in_the_office()
    {
        var task = Assert.Single(Assert.Single(Build(SkerryBay.Quiet("Turnstone", 190)).Docks[0].Sections).Tasks);
        Assert.Equal("https://office.example/office/boats/boat-turnstone", task.Link);
    }

    [Fact]
    public void The_calendar_goes_along_with_a_zone_a_stamp_and_ids_that_stay()
    {
        var boats = SkerryBay.Fleet();
        var file = Assert.Single(Draft(Build(), boats).Attachments);
        Assert.Equal("due.ics", file.FileName);
        var text = Encoding.UTF8.GetString(file.Bytes);
        Assert.Contains("BEGIN:VTIMEZONE", text, StringComparison.Ordinal); // RFC 5545, 3.6.5
        var calendar = Calendar.Load(text)!;
        Assert.Equal(DueListDigest.Items(SkerryBay.Monday, boats, null).Count, calendar.Events.Count);
        Assert.All(calendar.Events, e => Assert.Equal(Now.UtcDateTime, e.DtStamp!.AsUtc)); // 3.8.7.2
        Assert.All(calendar.Events, e => Assert.False(e.Start!.HasTime));

        // The same duty a day later is the same event (3.8.4.7).
        var later = DueCalendarFile.Write("skerry-bay", SkerryBay.Hire, "Atlantic/Faroe", DueListDigest.Items(SkerryBay.Monday.AddDays(1), boats, null).Select(d => d.Item), Now.AddDays(1));
        Assert.Subset(Calendar.Load(later)!.Events.Select(e => e.Uid!).ToHashSet(), calendar.Events.Select(e => e.Uid!).ToHashSet());
        Assert.All(calendar.Events, e => Assert.StartsWith("skerry-bay.boat-", e.Uid, StringComparison.Ordinal));
    }

    [Fact]
    public void The_calendar_calls_docks_and_people_by_name_and_leads_to_the_boat()
    {
        var boats = SkerryBay.Fleet();
        var due = DueListDigest.Items(SkerryBay.Monday, boats, null).Select(d => d.Item with { TakenBy = "mech-1" });
        var calendar = Calendar.Load(Encoding.UTF8.GetString(DueListDraft.Of(Build(), "skerry-bay", "Atlantic/Faroe", due, Now, Names).Attachments[0].Bytes))!;
        Assert.All(calendar.Events, e => Assert.Contains("Taken by Mo Ness.", e.Description, StringComparison.Ordinal));
        Assert.All(calendar.Events, e => Assert.StartsWith("https://office.example/office/boats/boat-", e.Url!.AbsoluteUri, StringComparison.Ordinal));
    }

    [Fact]
    public void The_message_carries_page_text_and_calendar()
    {
        var draft = Draft(Build(), SkerryBay.Fleet());
        var digest = new DigestRenderer(new PngRenderer()).Render(draft);
        Assert.Empty(digest.Faults);
        var message = MailComposer.Compose(digest, Letters.To with { Digest = DueListDigest.Digest });
        var mixed = Assert.IsType<Multipart>(message.Body);
        Assert.Equal("mixed", mixed.ContentType.MediaSubtype);
        Assert.IsType<MultipartAlternative>(mixed[0]);
        var file = Assert.IsAssignableFrom<MimePart>(mixed[1]);
        Assert.Equal(("text", "calendar", "PUBLISH", "due.ics"), (file.ContentType.MediaType, file.ContentType.MediaSubtype, file.ContentType.Parameters["method"], file.FileName));
        Assert.Contains("@media print", digest.Html, StringComparison.Ordinal);
        Assert.Contains("[ ] Turnstone: ", digest.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thousand_boats_keep_under_100_kilobytes_and_what_is_not_listed_is_counted()
    {
        List<BoatFinding> boats = [.. Enumerable.Range(1, 1000).Select(i => SkerryBay.Quiet($"Boat {i:0000}", 190))];
        var content = Build([.. boats]);
        Assert.Contains($"{1000 - DueListDigest.MostTasks} more are in the calendar", content.Docks[0].Summary, StringComparison.Ordinal);
        Assert.Contains(DueListDraft.Of(content, "skerry-bay", "Atlantic/Faroe", [], DateTimeOffset.UnixEpoch, Names).Plain, s => s.Lines.Contains(content.Docks[0].Summary));
        Assert.InRange(Encoding.UTF8.GetByteCount(new DigestRenderer(new PngRenderer()).Render(Draft(content, boats)).Html), 10_000, 100_000);
    }

    [Fact]
    public void A_boat_named_as_markup_is_shown_as_its_name()
    {
        var boat = SkerryBay.Quiet("x", 190) with { Registered = SkerryBay.Quiet().Registered! with { Name = "<img src=x onerror=1>" } };
        var digest = new DigestRenderer(new PngRenderer()).Render(Draft(Build(boat), [boat]));
        Assert.DoesNotContain("<img", digest.Html, StringComparison.Ordinal);
        Assert.Contains("&lt;img", digest.Html, StringComparison.Ordinal);
    }
}
