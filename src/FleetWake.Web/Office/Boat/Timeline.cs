using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Mend;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Boat;

/// <summary>A page of a boat's records, the newest first, by both clocks.</summary>
/// <param name="Lines">The records.</param>
/// <param name="Page">Which page, from 1.</param>
/// <param name="Pages">How many there are.</param>
/// <param name="Count">How many records there are in all.</param>
/// <param name="KnownOn">Records that reached us after this day are left out; null for none.</param>
/// <param name="LeftOut">How many those are.</param>
public sealed record Timeline(IReadOnlyList<TimelineLine> Lines, int Page, int Pages, int Count, DateOnly? KnownOn, int LeftOut)
{
    private const int PageSize = 40;

    internal static async Task<Timeline> OfAsync(HttpRequest request, string tenant, string boat, string zone, FleetReading reading, EntryBeside beside, Measures measures, IReadOnlyDictionary<string, string> names, Namings namings)
    {
        var ct = request.HttpContext.RequestAborted;
        var known = DateOnly.TryParseExact(request.Query["known"], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : (DateOnly?)null;
        if (await reading.SettledLogAsync(tenant, StreamName.Boat(boat), ct) is not { } settled) return new Timeline([], 1, 1, 0, known, 0);

        var facts = request.HttpContext.User.May(Verb.Read, Matter.Money) ? settled.Log.Facts : settled.Log.Facts.RemoveAll(IsMoney);
        var (all, counting) = (facts.Count, settled.Counting);
        if (known is not null)
        {
            // What was kept back was known to nobody who reads the record until somebody let it through.
            var released = (await reading.OfficeLogAsync(tenant, ct)).Facts.OfType<QuarantinedEntryReleased>()
                .GroupBy(r => r.Released).ToDictionary(g => g.Key, g => g.First().Entry.ReceivedAt);
            var clock = TimeZoneInfo.FindSystemTimeZoneById(zone);
            DateOnly Known(Entry e) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(released.GetValueOrDefault(e.Id, e.ReceivedAt), clock).DateTime);
            facts = facts.RemoveAll(f => Known(f.Entry) > known);
            counting = Effective.Of(facts);
        }

        var counts = counting.Facts.Select(f => f.Entry.Id).ToHashSet();
        var corrected = facts.Where(f => f.Entry.Amends is not null).GroupBy(f => f.Entry.Amends!.Value).ToDictionary(g => g.Key, g => g.Last().Entry);
        var retracted = facts.OfType<Retracted>().GroupBy(f => f.Retracts).ToDictionary(g => g.Key, g => g.Last().Entry);
        var pages = Math.Max(1, (facts.Count + PageSize - 1) / PageSize);
        var page = int.TryParse(request.Query["page"], NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? Math.Clamp(asked, 1, pages) : 1;
        var shown = facts.Reverse().Skip((page - 1) * PageSize).Take(PageSize).ToList();
        var (signed, notes, photos) = await beside.OfAsync(tenant, [.. shown.Select(f => f.Entry)], ct);
        var lines = shown.Select(f => new TimelineLine(
            f.Entry,
            measures.Clock(f.Entry.Happened()),
            measures.Moment(f.Entry.ReceivedAt, f.Entry.Zone),
            TimelineWords.Of(f, measures, namings),
            Phrases.Plain(names.GetValueOrDefault(f.Entry.By, f.Entry.By)),
            f is Retracted || counts.Contains(f.Entry.Id),
            retracted.ContainsKey(f.Entry.Id) ? TimelineEnd.TakenBack : corrected.ContainsKey(f.Entry.Id) ? TimelineEnd.Corrected : null)
        {
            Device = namings.Device(f.Entry.Device),
            Mend = counts.Contains(f.Entry.Id) && known is null && MendReading.May(request.HttpContext, f)
                ? $"/office/mend/boat/{boat}/{f.Entry.Id}" : null,
            Confirmed = signed.TryGetValue(f.Entry.Id, out var by) ? by.ConfirmedAt is not null : null,
            Note = notes.TryGetValue(f.Entry.Id, out var note) ? Phrases.Plain(note) : null,
            Photos = [.. photos[f.Entry.Id].Select(p => p.Hash)],
        });
        return new Timeline([.. lines], page, pages, facts.Count, known, all - facts.Count);
    }

    /// <summary>Costs and claims are not everybody's to read.</summary>
    private static bool IsMoney(IFact fact) => RecordKind.Find(LogbookJson.StoredNames[fact.GetType()]) is { } kind && Permissions.Of(kind).Matter == Matter.Money;
}

/// <summary>A record in a line.</summary>
/// <param name="Entry">Its stamp.</param>
/// <param name="Happened">When it happened, by the dock's clock.</param>
/// <param name="Received">When it reached us, by the dock's clock.</param>
/// <param name="Sentence">What it says.</param>
/// <param name="By">Who told it.</param>
/// <param name="Counts">Whether it counts.</param>
/// <param name="End">Why it does not.</param>
public sealed record TimelineLine(Entry Entry, string Happened, string Received, string Sentence, string By, bool Counts, TimelineEnd? End)
{
    /// <summary>Told on a shared phone: whether a PIN confirms who told it. Null of what came otherwise.</summary>
    public bool? Confirmed { get; init; }

    /// <summary>Name of the device that it was told on.</summary>
    public string Device { get; init; } = "";

    /// <summary>Where the reader may put it right; null where that is not for them, or where it counts no more.</summary>
    public string? Mend { get; init; }

    /// <summary>What was written beside it.</summary>
    public string? Note { get; init; }

    /// <summary>Photos beside it, by their hashes.</summary>
    public IReadOnlyList<string> Photos { get; init; } = [];

    /// <summary>It reached us more than a day after it happened.</summary>
    public bool Late => (Entry.ReceivedAt - Entry.Happened()).TotalHours > 24;
}

/// <summary>What became of a record that counts no more.</summary>
public enum TimelineEnd
{
    /// <summary>Another record corrects it.</summary>
    Corrected,

    /// <summary>It was taken back.</summary>
    TakenBack,
}
