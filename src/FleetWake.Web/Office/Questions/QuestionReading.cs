using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Devices;
using FleetWake.Store.Histories;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Mend;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Questions;

/// <summary>Gathers what records leave open.</summary>
internal sealed class QuestionReading(FleetReading reading, FleetPeople people, FleetDevices devices)
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
        var namings = await Namings.OfAsync(reading, devices, tenant, ct);
        var logs = new Dictionary<string, IReadOnlyDictionary<Guid, MendedRecord>>(StringComparer.Ordinal);
        var open = new List<OpenQuestion>();
        foreach (var (finding, question) in asked.Take(Most))
        {
            if (!logs.TryGetValue(finding.Boat, out var facts))
                logs[finding.Boat] = facts = await FactsAsync(tenant, finding, ct);
            var entries = new List<MendedRecord>();
            foreach (var entry in question.Entries)
            {
                // A prop's own log has only the notice of a mounting, which stands with its boat.
                var here = facts.GetValueOrDefault(entry);
                if (here is not null && Amendment.KindOf(here.Fact) is not null) entries.Add(here);
                else if ((await ElsewhereAsync(tenant, entry, ct) ?? here) is { } record) entries.Add(record);
            }

            open.Add(new OpenQuestion(
                finding.Boat,
                Phrases.Plain(finding.DisplayName()),
                finding.Registered is { } card ? office.DockName(card.Dock) : null,
                question with { Question = namings.Say(question.Question) },
                [.. entries.Select(r => new QuestionEntry(
                    measures.Clock(r.Fact.Entry.Happened()),
                    TimelineWords.Of(r.Fact, measures, namings),
                    names.GetValueOrDefault(r.Fact.Entry.By, r.Fact.Entry.By),
                    namings.Device(r.Fact.Entry.Device),
                    r.About.Kind == "boat" ? namings.Boat(r.About.Id) : null,
                    r,
                    MendReading.May(http, r.Fact)))]));
        }

        return (open, asked.Count - open.Count);
    }

    /// <summary>What the boat's log, its engines' and its props' hold, by entry.</summary>
    private async Task<IReadOnlyDictionary<Guid, MendedRecord>> FactsAsync(string tenant, BoatFinding finding, CancellationToken ct)
    {
        var engines = finding.Positions.Select(p => p.Engine?.Engine).OfType<string>().Select(StreamName.Engine);
        var props = finding.Positions.Select(p => p.Mounting?.Prop.Prop).OfType<string>().Select(StreamName.Prop);
        return ByEntry(await reading.LogsAsync(tenant, engines.Concat(props).Prepend(StreamName.Boat(finding.Boat)), ct));
    }

    /// <summary>What another boat's log holds of a question that two boats share.</summary>
    private async Task<MendedRecord?> ElsewhereAsync(string tenant, Guid entry, CancellationToken ct)
    {
        var boats = await reading.BoatsOfEntryAsync(tenant, entry, ct);
        return ByEntry(await reading.LogsAsync(tenant, boats.Select(StreamName.Boat), ct)).GetValueOrDefault(entry);
    }

    // Of the facts of one record, the one that the record was, not the notice it left on another stream.
    private static Dictionary<Guid, MendedRecord> ByEntry(IReadOnlyDictionary<string, FactLog> logs) =>
        logs.SelectMany(l => l.Value.Facts.Select(f => new MendedRecord(f, MendSubject.OfStream(l.Key)!, true))).GroupBy(r => r.Fact.Entry.Id)
            .ToDictionary(g => g.Key, g => g.OrderBy(r => Amendment.KindOf(r.Fact) is null).First());
}

/// <summary>A question to a person.</summary>
/// <param name="Boat">The boat that asks.</param>
/// <param name="BoatName">Its name.</param>
/// <param name="DockName">Its dock; null while it is not registered.</param>
/// <param name="Asked">The question.</param>
/// <param name="Entries">The records it is about, as far as they stand with the boat.</param>
public sealed record OpenQuestion(string Boat, string BoatName, string? DockName, Contradiction Asked, IReadOnlyList<QuestionEntry> Entries)
{
    /// <summary>Of two records that put one prop in two places, each is one answer: the other is then taken back.</summary>
    public bool IsWhere => Asked.Kind == ContradictionKind.PropInTwoPlaces && Entries is [{ BoatName: not null, MayMend: true }, { BoatName: not null, MayMend: true }];

    /// <summary>Which of the readings is asked about; null when the question is about no gauge.</summary>
    public Func<GaugeNumber, bool>? Gauge => Asked.Kind switch
    {
        ContradictionKind.HoursOutOfLine => n => n.Hours,
        ContradictionKind.RpmOutOfLine => n => !n.Hours,
        _ => null,
    };

    /// <summary>The words of an answer: those of its kind of question, else the usual ones.</summary>
    /// <param name="what">answer or means.</param>
    /// <param name="answer">The answer.</param>
    public string Say(string what, SettlementAnswer answer)
    {
        var (usual, own) = ($"questions.{what}-{Words.Of(answer)}", $"questions.{what}-{Words.Of(answer)}-{Words.Of(Asked.Kind)}");
        return PageTexts.English[PageTexts.English.Keys.Contains(own) ? own : Entries.Count == 1 && PageTexts.English.Keys.Contains(usual + "-1") ? usual + "-1" : usual];
    }

    /// <summary>What an answer sends: boat, kind and entries. None of them holds a stroke.</summary>
    public string Key => $"{Boat}|{Words.Of(Asked.Kind)}|{string.Join(',', Asked.Entries)}";
}

/// <summary>A record that a question is about.</summary>
/// <param name="Happened">When it happened.</param>
/// <param name="Sentence">What it says.</param>
/// <param name="By">Who told it.</param>
/// <param name="Device">On which device.</param>
/// <param name="BoatName">Name of the boat it is of; null of a record of an engine or a prop.</param>
/// <param name="Record">The record.</param>
/// <param name="MayMend">The reader may put it right.</param>
public sealed record QuestionEntry(string Happened, string Sentence, string By, string Device, string? BoatName, MendedRecord Record, bool MayMend);
