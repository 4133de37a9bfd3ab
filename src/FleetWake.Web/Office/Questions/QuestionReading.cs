using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Questions;

/// <summary>Gathers what records leave open.</summary>
internal sealed class QuestionReading(FleetReading reading, FleetPeople people)
{
    /// <summary>Questions shown at once: nobody answers more of a morning.</summary>
    public const int Most = 50;

    /// <summary>The open questions, by boat; one that two boats share is asked once.</summary>
    public async Task<(IReadOnlyList<OpenQuestion> Open, int More)> OfAsync(HttpContext http, Measures measures)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (boat, dock) = (http.Request.Query["boat"].ToString(), http.Request.Query["dock"].ToString());
        var office = await reading.OfficeAsync(tenant, ct);
        var asked = (await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding)
            .Where(f => (boat.Length == 0 || f.Boat == boat) && (dock.Length == 0 || f.Registered?.Dock == dock))
            .SelectMany(f => f.Contradictions.Select(c => (Finding: f, Asked: c)))
            .DistinctBy(q => $"{q.Asked.Kind} {string.Join(' ', q.Asked.Entries.Order())}").ToList();
        var names = await people.NamesAsync(tenant, ct);
        var logs = new Dictionary<string, IReadOnlyDictionary<Guid, IFact>>(StringComparer.Ordinal);
        var open = new List<OpenQuestion>();
        foreach (var (finding, question) in asked.Take(Most))
        {
            if (!logs.TryGetValue(finding.Boat, out var facts))
                logs[finding.Boat] = facts = await FactsAsync(tenant, finding, ct);
            var entries = new List<IFact>();
            foreach (var entry in question.Entries)
                if ((facts.GetValueOrDefault(entry) ?? await ElsewhereAsync(tenant, entry, ct)) is { } fact) entries.Add(fact);

            open.Add(new OpenQuestion(
                finding.Boat,
                Phrases.Plain(finding.DisplayName()),
                finding.Registered is { } card ? office.DockName(card.Dock) : null,
                question,
                [.. entries.Select(f => new QuestionEntry(
                    measures.Clock(f.Entry.Happened()), TimelineWords.Of(f, measures), names.GetValueOrDefault(f.Entry.By, f.Entry.By), f.Entry.Device))]));
        }

        return (open, asked.Count - open.Count);
    }

    /// <summary>What the boat's log, its engines' and its props' hold, by entry.</summary>
    private async Task<IReadOnlyDictionary<Guid, IFact>> FactsAsync(string tenant, BoatFinding finding, CancellationToken ct)
    {
        var engines = finding.Positions.Select(p => p.Engine?.Engine).OfType<string>().Select(StreamName.Engine);
        var props = finding.Positions.Select(p => p.Mounting?.Prop.Prop).OfType<string>().Select(StreamName.Prop);
        return ByEntry(await reading.LogsAsync(tenant, engines.Concat(props).Prepend(StreamName.Boat(finding.Boat)), ct));
    }

    /// <summary>What another boat's log holds of a question that two boats share.</summary>
    private async Task<IFact?> ElsewhereAsync(string tenant, Guid entry, CancellationToken ct)
    {
        var boats = await reading.BoatsOfEntryAsync(tenant, entry, ct);
        return ByEntry(await reading.LogsAsync(tenant, boats.Select(StreamName.Boat), ct)).GetValueOrDefault(entry);
    }

    private static Dictionary<Guid, IFact> ByEntry(IReadOnlyDictionary<string, FactLog> logs) =>
        logs.Values.SelectMany(l => l.Facts).GroupBy(f => f.Entry.Id).ToDictionary(g => g.Key, g => g.First());
}

/// <summary>A question to a person.</summary>
/// <param name="Boat">The boat that asks.</param>
/// <param name="BoatName">Its name.</param>
/// <param name="DockName">Its dock; null while it is not registered.</param>
/// <param name="Asked">The question.</param>
/// <param name="Entries">The records it is about, as far as they stand with the boat.</param>
public sealed record OpenQuestion(string Boat, string BoatName, string? DockName, Contradiction Asked, IReadOnlyList<QuestionEntry> Entries)
{
    /// <summary>What an answer sends: boat, kind and entries. None of them holds a stroke.</summary>
    public string Key => $"{Boat}|{Words.Of(Asked.Kind)}|{string.Join(',', Asked.Entries)}";
}

/// <summary>A record that a question is about.</summary>
/// <param name="Happened">When it happened.</param>
/// <param name="Sentence">What it says.</param>
/// <param name="By">Who told it.</param>
/// <param name="Device">On which device.</param>
public sealed record QuestionEntry(string Happened, string Sentence, string By, string Device);
