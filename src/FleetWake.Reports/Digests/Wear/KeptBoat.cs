using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>A boat that stays at the dock until something is done. One that is laid up is none: it stays anyhow.</summary>
/// <param name="Finding">The boat.</param>
/// <param name="Word">Out of hire, or only a look away from it.</param>
/// <param name="Reasons">What keeps it, the strictest first.</param>
/// <param name="Work">The longest work that releasing it takes; null where it is nobody's work at the dock.</param>
internal sealed record KeptBoat(BoatFinding Finding, HireWord Word, IReadOnlyList<HireReason> Reasons, ReleaseWork? Work)
{
    private const int MostReasons = 2;

    /// <summary>The boats that stay, those that are out before those that wait for a look.</summary>
    public static IReadOnlyList<KeptBoat> Of(IEnumerable<BoatFinding> findings, FleetPolicy? policy) =>
    [
        .. findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .Select(f => (Finding: f, Kept: Attentions.Of(f, policy).Where(a => a.Blocks).ToList(), Hire: HireStates.Of(f, policy)))
            .Where(f => f.Hire.Word != HireWord.InHire)
            .OrderByDescending(f => f.Hire.Word).ThenBy(f => f.Kept.Count == 0 ? default : f.Kept.Min(a => a.Kind)).ThenBy(f => f.Finding.DisplayName(), StringComparer.OrdinalIgnoreCase)
            .Select(f => new KeptBoat(
                f.Finding,
                f.Hire.Word,
                f.Hire.Reasons,
                f.Kept.Select(a => ReleaseWork.Of(a, f.Finding.Positions.FirstOrDefault(p => p.Position == a.Position))).OfType<ReleaseWork>().MaxBy(w => w.Minutes))),
    ];

    /// <summary>Why it stays and what releases it, to stand behind its name.</summary>
    /// <param name="things">Names of boats and engines.</param>
    public string Sentence(NamedThings things)
    {
        // That somebody took it out of hire for what is told beside it needs no word of its own; that it has to be put back does.
        var told = Reasons.Where(r => r.Position is not null).ToList() is { Count: > 0 } at ? at : Reasons;
        var why = string.Join("; ", told.Take(MostReasons).Select(r => Lower(things.Say(Phrases.Plain(r.Sentence)))));
        var more = told.Count > MostReasons ? $"; and {told.Count - MostReasons} more" : "";
        var by = string.Join("; ", Reasons.OrderBy(r => r.Position is null).Select(r => Lower(r.ReleasedBy)).Distinct(StringComparer.Ordinal));
        return $"{(Word == HireWord.Out ? "stays at the dock" : "waits for a look")}: {why}{more}. Released by {by}{(Work is null ? "" : $"; {Work.Text()}")}.";
    }

    private static string Lower(string sentence) => sentence.Length == 0 ? "" : $"{char.ToLowerInvariant(sentence[0])}{sentence[1..].TrimEnd('.')}";
}
