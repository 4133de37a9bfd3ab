using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Store.People;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Due;

/// <summary>Gathers what is due.</summary>
internal sealed class DueReading(FleetReading reading, FleetPeople people, TimeProvider time)
{
    /// <summary>Everything due within the page's horizon, most overdue first, as somebody asked for it.</summary>
    public async Task<DueList> OfAsync(HttpContext http)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var office = await reading.OfficeAsync(tenant, ct);
        var names = await people.NamesAsync(tenant, ct);
        var filter = DueFilter.Of(http.Request);
        var findings = await reading.FindingsAsync(tenant, ct);
        var namings = Namings.Of(office, findings);
        var all = findings.Where(f => f.Finding.Registered is not null)
            .SelectMany(f => Outlook.Of(f.Finding, DueApi.TodayAt(f.Finding.Registered!.DockZone, time), office.Policy)
                .Select(d => new DueLine(d, Phrases.Plain(d.BoatName), office.DockName(d.Dock), d.TakenBy is { } by ? names.GetValueOrDefault(by, by) : null, RuleOf(office.Policy, d)?.DoneBy == DutyDoneBy.DutyDone, f.Finding.Positions.Count > 1) { Why = namings.Say(d.Why) }))
            .OrderBy(l => l.Item.DueOn).ThenBy(l => l.BoatName, StringComparer.OrdinalIgnoreCase).ThenBy(l => l.Item.Position).ToList();
        var me = http.User.PersonOf()!;
        return new DueList(
            [.. all.Where(l => filter.Takes(l, me))],
            [.. all.Select(l => (l.Item.Dock, l.DockName)).Distinct().OrderBy(d => d.DockName, StringComparer.OrdinalIgnoreCase)],
            filter,
            all.Count(l => l.Item.Overdue()));
    }

    /// <summary>A duty of a boat, and its boat's zone; null when it is not due any more.</summary>
    public async Task<(DueLine Line, string Zone)?> FindAsync(HttpContext http, string boat, string rule, string position)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (await reading.FindingAsync(tenant, boat, ct) is not { Finding: { Registered: { } card } finding }) return null;
        var office = await reading.OfficeAsync(tenant, ct);
        var due = Outlook.Of(finding, DueApi.TodayAt(card.DockZone, time), office.Policy).FirstOrDefault(d => d.RuleId == rule && DueLine.Word(d.Position) == position);
        return due is null ? null : (new DueLine(due, Phrases.Plain(due.BoatName), office.DockName(due.Dock), null, RuleOf(office.Policy, due)?.DoneBy == DutyDoneBy.DutyDone, finding.Positions.Count > 1)
        {
            Why = Namings.Of(office, await reading.FindingsAsync(tenant, ct)).Say(due.Why),
            LastReading = finding.Positions.FirstOrDefault(p => p.Position == due.Position) is { EngineHours: { } hours } at ? (hours, at.Use?.ReadOn) : null,
        }, card.DockZone);
    }

    /// <summary>Today by a zone's clock.</summary>
    public DateOnly Today(string zone) => DueApi.TodayAt(zone, time);

    /// <summary>The zone of a boat's dock; null when it is not registered.</summary>
    public async Task<string?> ZoneAsync(HttpContext http, string boat) =>
        (await reading.FindingAsync(http.User.OperatorOf(), boat, http.RequestAborted))?.Finding.Registered?.DockZone;

    /// <summary>Small parts by id, with their names.</summary>
    public async Task<IReadOnlyList<(string Part, string Name)>> PartsAsync(HttpContext http)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var ids = (await reading.StreamsAsync(tenant, Logbook.Entries.StreamName.Part(""), ct)).Select(s => Logbook.Entries.StreamName.PartOf(s)!).ToList();
        return [.. ids.Select(p => (p, p))];
    }

    private static InspectionRule? RuleOf(FleetPolicy policy, DueItem due) => policy.Rules.FirstOrDefault(r => r.Id == due.RuleId);
}

/// <summary>What is due, as somebody asked for it.</summary>
/// <param name="Lines">The duties, most overdue first.</param>
/// <param name="Docks">Docks that have any.</param>
/// <param name="Filter">What was asked for.</param>
/// <param name="Overdue">How many are overdue in the whole fleet.</param>
public sealed record DueList(IReadOnlyList<DueLine> Lines, IReadOnlyList<(string Dock, string DockName)> Docks, DueFilter Filter, int Overdue);

/// <summary>A duty in a line.</summary>
/// <param name="Item">The duty.</param>
/// <param name="BoatName">The boat's name.</param>
/// <param name="DockName">The dock's name.</param>
/// <param name="Taker">Name of who took it.</param>
/// <param name="DoneHere">No record of its own does it: it can be told done here.</param>
/// <param name="Several">The boat has more than one position.</param>
public sealed record DueLine(DueItem Item, string BoatName, string DockName, string? Taker, bool DoneHere, bool Several)
{
    /// <summary>Why it is due, with the names of what it speaks of.</summary>
    public string Why { get; init; } = Item.Why;

    /// <summary>Last credible reading of the engine's hour meter [h] and its day; null when nobody read it.</summary>
    public (double Hours, DateOnly? On)? LastReading { get; init; }

    /// <summary>The page that tells more: a claim's deadline is of the claim.</summary>
    public string Page => Item.Kind == DutyKind.ClaimDeadline ? $"/office/claims/{Item.RuleId}/statement" : $"/office/boats/{Item.Boat}";

    /// <summary>What a button sends: boat, rule and position. None of them holds a stroke.</summary>
    public string Key => $"{Item.Boat}|{Item.RuleId}|{Word(Item.Position)}";

    /// <summary>A claim runs out by its own deadline, and nobody takes it here.</summary>
    public bool CanBeTaken => Item.Kind != DutyKind.ClaimDeadline;

    internal static string Word(Logbook.Position? position) => position is { } p ? Logbook.Entries.Words.Of(p) : "";
}

/// <summary>Which duties somebody wants to see.</summary>
/// <param name="Dock">Id of a dock; empty for all.</param>
/// <param name="Boat">Id of a boat.</param>
/// <param name="Whose">mine, free, or empty for all.</param>
/// <param name="When">overdue, all, or empty for what is overdue or due soon.</param>
public sealed record DueFilter(string Dock, string Boat, string Whose, string When)
{
    /// <summary>What falls due within these days is shown unless all was asked for.</summary>
    public const int SoonDays = 30;

    internal static DueFilter Of(HttpRequest request)
    {
        string Read(string name) => request.Query[name].ToString() is { Length: <= 64 } text ? text : "";
        return new DueFilter(Read("dock"), Read("boat"), Read("whose"), Read("when"));
    }

    internal bool Takes(DueLine line, string me) =>
        (Dock.Length == 0 || line.Item.Dock == Dock)
        && (Boat.Length == 0 || line.Item.Boat == Boat)
        && (Whose switch { "mine" => line.Item.TakenBy == me, "free" => line.Item.TakenBy is null, _ => true })
        && (When switch { "all" => true, "overdue" => line.Item.Overdue(), _ => Boat.Length > 0 || line.Item.DaysOverdue > -SoonDays });

    /// <summary>The same as an address.</summary>
    public string Address()
    {
        var parts = new[] { ("dock", Dock), ("boat", Boat), ("whose", Whose), ("when", When) }.Where(p => p.Item2.Length > 0).Select(p => $"{p.Item1}={Uri.EscapeDataString(p.Item2)}");
        return string.Join('&', parts) is { Length: > 0 } query ? $"/office/due?{query}" : "/office/due";
    }
}
