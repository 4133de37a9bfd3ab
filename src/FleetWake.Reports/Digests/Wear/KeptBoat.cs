using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>A boat that stays at the dock until something is done. One that is laid up is none: it stays anyhow.</summary>
/// <param name="Finding">The boat.</param>
/// <param name="Word">Out of hire, or only a look away from it.</param>
/// <param name="Reasons">What keeps it, the strictest first.</param>
/// <param name="Matters">The same as matters that need a person; less than the reasons where one tells of several.</param>
internal sealed record KeptBoat(BoatFinding Finding, HireWord Word, IReadOnlyList<HireReason> Reasons, IReadOnlyList<Attention> Matters)
{
    private const int MostReasons = 2;

    /// <summary>The boats that stay, those that are out before those that wait for a look.</summary>
    public static IReadOnlyList<KeptBoat> Of(IEnumerable<BoatFinding> findings, FleetPolicy? policy) =>
    [
        .. findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .Select(f => (Finding: f, Kept: Attentions.Of(f, policy).Where(a => a.Blocks).ToList(), Hire: HireStates.Of(f, policy)))
            .Where(f => f.Hire.Word != HireWord.InHire)
            .OrderByDescending(f => f.Hire.Word).ThenBy(f => f.Kept.Count == 0 ? default : f.Kept.Min(a => a.Kind)).ThenBy(f => f.Finding.DisplayName(), StringComparer.OrdinalIgnoreCase)
            .Select(f => new KeptBoat(f.Finding, f.Hire.Word, f.Hire.Reasons, f.Kept)),
    ];

    /// <summary>What releasing it takes: at each engine the longest of the works that it needs. Null where it is nobody's work at the dock.</summary>
    public ReleaseWork? Work { get; } = Matters.GroupBy(a => a.Position)
        .Select(g => g.Select(a => ReleaseWork.Of(a, Finding.Positions.FirstOrDefault(p => p.Position == a.Position))).OfType<ReleaseWork>().MaxBy(w => w.Minutes))
        .OfType<ReleaseWork>().ToList() is { Count: > 0 } works
            ? new ReleaseWork(works.Sum(w => w.Minutes), works.Select(w => w.Part).OfType<string>().Distinct(StringComparer.Ordinal).ToList() is { Count: > 0 } parts ? string.Join("; ", parts) : null)
            : null;

    /// <summary>Whether a duty after a strike, or before a relaunch, says already what keeps it, so that nobody has to be told of it twice.</summary>
    /// <param name="due">What is due.</param>
    public bool ToldByDuty(IEnumerable<DueItem> due)
    {
        var own = due.Where(d => d.Boat == Finding.Boat).ToList();
        return Finding.Hold is null && Matters.Count > 0 && Matters.All(a => a.Kind switch
        {
            AttentionKind.OpenStrike => own.Any(d => d.Kind == DutyKind.AfterStrikeInspection && d.Position == a.Position),
            AttentionKind.CannotSail => own.Any(d => d.Kind == DutyKind.BeforeRelaunch && d.Position == a.Position) && Matters.Count(m => m.Kind == a.Kind && m.Position == a.Position) == 1,
            _ => false,
        });
    }

    /// <summary>Why it stays and what releases it, to stand behind its name.</summary>
    /// <param name="things">Names of boats and engines.</param>
    public string Sentence(NamedThings things)
    {
        // That somebody took it out of hire for the strike or the damage that is told beside it needs no word of its own; that it has to be put back does.
        var at = Reasons.Where(r => r.Position is not null).ToList();
        var told = at.Count > 0 && Finding.Hold is null or { Why: OutOfHireReason.Strike or OutOfHireReason.Damage } ? at : Reasons;
        var why = string.Join("; ", told.Take(MostReasons).Select(r => Lower(things.Say(Phrases.Plain(r.Sentence)))));
        var more = told.Count > MostReasons ? $"; and {told.Count - MostReasons} more" : "";
        var by = string.Join("; ", Reasons.OrderBy(r => r.Position is null).Select(r => Lower(r.ReleasedBy)).Distinct(StringComparer.Ordinal));
        return $"{(Word == HireWord.Out ? "stays at the dock" : "waits for a look")}: {why}{more}. Released by {by}{(Work is null ? "" : $"; {Work.Text()}")}.";
    }

    private static string Lower(string sentence) => sentence.Length == 0 ? "" : $"{char.ToLowerInvariant(sentence[0])}{sentence[1..].TrimEnd('.')}";
}
