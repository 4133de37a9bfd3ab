using System.Text;
using FleetWake.Logbook.Duties;

namespace FleetWake.Reports.Digests.DueList;

/// <summary>The due list, ready to be laid out, with its calendar.</summary>
public static class DueListDraft
{
    /// <summary>The draft of a content.</summary>
    /// <param name="content">The list.</param>
    /// <param name="operator">Id of the operator; it stands in the ids of the events.</param>
    /// <param name="zone">IANA zone of the dock or the office.</param>
    /// <param name="due">What is due, for the calendar.</param>
    /// <param name="now">When it is written.</param>
    /// <param name="names">Names of docks and people, and the office's address.</param>
    public static DigestDraft Of(DueListContent content, string @operator, string zone, IEnumerable<DueItem> due, DateTimeOffset now, MailNames names) => new(DueListDigest.Digest, content.Subject, content, [.. Sections(content)])
    {
        Attachments = [new DigestAttachment("due.ics", "text/calendar; charset=utf-8; method=PUBLISH", Encoding.UTF8.GetBytes(DueCalendarFile.Write(@operator, content.OperatorName, zone, due, now, names.Dock, names.Office?.AbsoluteUri.TrimEnd('/'), names.Person)))],
    };

    private static IEnumerable<PlainSection> Sections(DueListContent content)
    {
        yield return new("", [$"{content.OperatorName}, due list {content.Period}, {content.Day:yyyy-MM-dd}", content.Headline]);
        foreach (var dock in content.Docks)
        {
            yield return new(dock.Dock, [dock.Summary]);
            foreach (var section in dock.Sections)
                yield return new($"{dock.Dock}: {section.Title}", [.. section.Tasks.Select(t => $"{t.Boat}: {t.What}, {t.When}\n{string.Join("; ", new[] { t.Why, t.Hours, t.Who }.Where(x => x.Length > 0))}")]);
        }

        yield return new("", content.Caution, Small: true);
    }
}
