using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Findings;

/// <summary>Something about a boat that a person has to decide or should know, with the reason.</summary>
/// <param name="Kind">What.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Dock">Its dock; null while the boat is not registered.</param>
/// <param name="Position">The position, where there is one.</param>
/// <param name="Sentence">What is the matter and what settles it.</param>
/// <param name="Blocks">The boat is not for hire until it is settled.</param>
public sealed record Attention(AttentionKind Kind, string Boat, string BoatName, string? Dock, Position? Position, string Sentence, bool Blocks)
{
    /// <summary>What releases the boat; null where nothing keeps it.</summary>
    public string? ReleasedBy { get; init; }
}

/// <summary>Kinds of attention, most urgent first.</summary>
public enum AttentionKind
{
    /// <summary>A verdict of "take off".</summary>
    TakeOff,

    /// <summary>A strike that nobody has cleared.</summary>
    OpenStrike,

    /// <summary>A short look saw damage.</summary>
    Damage,

    /// <summary>An inspection saw a slipping hub.</summary>
    HubSlip,

    /// <summary>Somebody took the boat out of hire.</summary>
    OutOfHire,

    /// <summary>An inspection asked for a repair, or saw what cannot be left: a crack, water in the gear oil.</summary>
    Repair,

    /// <summary>An inspection said "watch", and the operator keeps such a boat.</summary>
    Watch,

    /// <summary>No engine or prop on, or the boat went out again without the look that was asked for.</summary>
    CannotSail,

    /// <summary>Outside the rated band.</summary>
    OutsideBand,

    /// <summary>Records that contradict each other.</summary>
    Contradiction,

    /// <summary>Records of a boat that is not registered.</summary>
    NotRegistered,

    /// <summary>It will leave its band soon.</summary>
    LeavingBand,

    /// <summary>Its last trial is inside the band and out of line with the others: misread, or something gave way.</summary>
    OutOfLine,

    /// <summary>Its trials speak for drift: an alarm.</summary>
    Drifting,
}

/// <summary>What on a boat needs a person.</summary>
public static class Attentions
{
    /// <summary>
    /// Everything on a boat that needs a person, most urgent first. A boat that left the fleet needs nobody; the RPM of
    /// one that is laid up can wait.
    /// </summary>
    /// <param name="finding">The finding.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    public static IReadOnlyList<Attention> Of(BoatFinding finding, FleetPolicy? policy = null)
    {
        if (finding.Retired is not null) return [];
        var found = new List<Attention>();
        var table = (policy ?? FleetPolicy.Usual).Hire;
        if (finding.Hold is { } hold)
            found.Add(new Attention(
                AttentionKind.OutOfHire, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, null,
                $"Taken out of hire on {hold.On:yyyy-MM-dd} ({Words.Prose(hold.Why)}), and not put back since.", true)
            { ReleasedBy = HireStates.PutBack });
        foreach (var position in finding.Positions)
        {
            // What keeps the boat is asked of the hire state alone, so that the two cannot differ.
            var kept = HireStates.At(position, table);
            void Add(AttentionKind kind, string sentence, params IEnumerable<object> about)
            {
                var by = kept.Where(k => about.Contains(k.About, ReferenceEqualityComparer.Instance)).Select(k => k.Reason).MaxBy(r => r.Word);
                found.Add(new Attention(kind, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, position.Position, sentence, by is not null) { ReleasedBy = by?.ReleasedBy });
            }

            AddVerdicts(position, kept.Select(k => k.About), Add);
            foreach (var strike in position.OpenStrikes.Where(s => s.LookedOverOn is null || HireStates.Of(s, table) == HireWord.Out))
                Add(AttentionKind.OpenStrike, Strike(strike, table), strike);
            foreach (var carried in position.Carried.Where(c => c.LookedOverOn is null || HireStates.Of(c, table) == HireWord.Out))
                Add(AttentionKind.OpenStrike, HireStates.Sentence(carried) + Lifted(carried.LiftedOn), carried);
            if (position.Damage is { } damage && (damage.LiftedOn is not null || kept.Any(k => ReferenceEquals(k.About, damage))))
                Add(AttentionKind.Damage, HireStates.Sentence(damage) + Lifted(damage.LiftedOn), damage);
            if (position.Mounting is { } mounting && !finding.IsLaidUp()) BandAttention.Add(mounting, position, (kind, sentence) => Add(kind, sentence));
        }

        found.AddRange(finding.Contradictions.Select(c =>
            new Attention(AttentionKind.Contradiction, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, null, c.Question, false)));
        found.AddRange(CannotSail.Attentions(finding, policy));
        if (finding is { Registered: null, Held: > 0 })
            found.Add(new Attention(
                AttentionKind.NotRegistered, finding.Boat, finding.Boat, null, null, $"{Count(finding.Held, "record")} held: register the boat, or retract what was typed for another.", true)
            { ReleasedBy = CannotSail.Registration });
        return [.. found.OrderBy(a => a.Kind)];
    }

    private static void AddVerdicts(PositionFinding position, IEnumerable<object> kept, Action<AttentionKind, string, IEnumerable<object>> add)
    {
        var takeOff = position.Uncleared.Where(i => i.Verdict == Verdict.TakeOff).ToList();
        if (takeOff is [.., var last])
            add(AttentionKind.TakeOff, $"Inspection of {last.On:yyyy-MM-dd}: take off. Not for hire until a later inspection says fit.", takeOff);

        // A hub that slips is said once, however often it was seen.
        var slipping = position.Uncleared.Where(i => i.Marks.Contains(InspectionMark.HubSlip)).ToList();
        var keeps = slipping.Exists(s => kept.Contains(s, ReferenceEqualityComparer.Instance));
        if (slipping is [.., var seen] && !ReferenceEquals(seen, takeOff.LastOrDefault()))
            add(AttentionKind.HubSlip, $"Inspection of {seen.On:yyyy-MM-dd} saw a slipping hub. {(keeps ? "Not for hire until" : "It stands until")} the hub is replaced and an inspection says fit.{Lifted(seen.LiftedOn)}", slipping);
        var broken = position.Uncleared.Where(i => NeedsRepair(i) && !takeOff.TakeLast(1).Concat(slipping.TakeLast(1)).Contains(i, ReferenceEqualityComparer.Instance) && !(i.Marks.Count > 0 && i.Marks.All(m => m == InspectionMark.HubSlip))).ToList();
        if (broken is [.., var repair])
            add(AttentionKind.Repair, $"Inspection of {repair.On:yyyy-MM-dd}: {Words.Prose(repair.Verdict)}{Seen(repair)}.{Lifted(repair.LiftedOn)}", broken);
        if (position.LastInspection is { Verdict: Verdict.Watch } watch && kept.Contains(watch, ReferenceEqualityComparer.Instance))
            add(AttentionKind.Watch, $"Inspection of {watch.On:yyyy-MM-dd}: watch{Seen(watch)}.", [watch]);
    }

    private static string Lifted(DateOnly? on) => on is { } day ? $" Put back in hire on {day:yyyy-MM-dd} all the same." : "";

    private static bool NeedsRepair(InspectionCard inspection) =>
        inspection.Verdict == Verdict.Repair || inspection.Marks.Any(m => m is InspectionMark.Crack or InspectionMark.WaterInOil);

    private static string Seen(InspectionCard inspection) =>
        inspection.Marks.Count == 0 ? "" : $", with {string.Join(", ", inspection.Marks.Select(m => Words.Prose(m)))}";

    private static string Strike(OpenStrike strike, HireTable table)
    {
        var hit = strike.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(strike.Object);
        var scuffed = strike.Severity == StrikeSeverity.Scuffed && table.Of(strike.Severity, strike.Material) != HireWord.Out;
        var stainless = strike.Material == PropMaterial.Stainless && strike.Severity >= StrikeSeverity.Chipped;
        var told = $"Strike on {hit} ({Words.Prose(strike.Severity)}) on {strike.On:yyyy-MM-dd}, and {HireStates.Since(scuffed, strike.ShortFitOn, stainless ? "shaft and gear oil" : "the prop")}.";
        if (scuffed) return $"{told} A short look that sees no damage clears it for hire.{Lifted(strike.LiftedOn)}";
        var passes = strike.Material == PropMaterial.Stainless ? " Stainless passes a strike on: look at shaft and lower unit, and at the gear oil." : "";
        // "Only that clears it" beside "put back all the same" would contradict itself.
        return told + (strike.LiftedOn is null ? $" Only {(strike.ShortFitOn is null ? "that" : "one that does")} clears it." : "") + passes + Lifted(strike.LiftedOn);
    }

    private static string Count(int n, string thing) => n == 1 ? $"1 {thing}" : $"{n} {thing}s";
}
