using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>Something about a boat that a person has to decide or should know, with the reason.</summary>
/// <param name="Kind">What.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Dock">Its dock; null while the boat is not registered.</param>
/// <param name="Position">The position, where there is one.</param>
/// <param name="Sentence">What is the matter and what settles it.</param>
/// <param name="Blocks">The boat is not for hire until it is settled.</param>
public sealed record Attention(AttentionKind Kind, string Boat, string BoatName, string? Dock, Position? Position, string Sentence, bool Blocks);

/// <summary>Kinds of attention, most urgent first.</summary>
public enum AttentionKind
{
    /// <summary>A verdict of "take off".</summary>
    TakeOff,

    /// <summary>A strike that nobody has cleared.</summary>
    OpenStrike,

    /// <summary>An inspection saw a slipping hub.</summary>
    HubSlip,

    /// <summary>An inspection asked for a repair, or saw what cannot be left: a crack, water in the gear oil.</summary>
    Repair,

    /// <summary>Outside the rated band.</summary>
    OutsideBand,

    /// <summary>Records that contradict each other.</summary>
    Contradiction,

    /// <summary>Records of a boat that is not registered.</summary>
    NotRegistered,

    /// <summary>It will leave its band soon.</summary>
    LeavingBand,
}

/// <summary>What on a boat needs a person.</summary>
public static class Attentions
{
    /// <summary>A band exit whose earliest end lies within this many engine hours of the last trial is brought up [h]. Common practice, no source: about a season's months for a hire boat.</summary>
    public const double SoonHours = 100;

    /// <summary>Everything on a boat that needs a person, most urgent first.</summary>
    public static IReadOnlyList<Attention> Of(BoatFinding finding)
    {
        var found = new List<Attention>();
        foreach (var position in finding.Positions)
        {
            void Add(AttentionKind kind, string sentence, bool blocks = false) =>
                found.Add(new Attention(kind, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, position.Position, sentence, blocks));

            var takeOff = position.Uncleared.LastOrDefault(i => i.Verdict == Verdict.TakeOff);
            if (takeOff is { } last)
                Add(AttentionKind.TakeOff, $"Inspection of {last.On:yyyy-MM-dd}: take off. Not for hire until a later inspection says fit.", blocks: true);
            foreach (var strike in position.OpenStrikes)
                Add(AttentionKind.OpenStrike, Strike(strike, position.Mounting), blocks: true);
            var slipping = position.Uncleared.LastOrDefault(i => i.Marks.Contains(InspectionMark.HubSlip));
            if (slipping is { } seen && seen != takeOff)
                Add(AttentionKind.HubSlip, $"Inspection of {seen.On:yyyy-MM-dd} saw a slipping hub. Not for hire until the hub is replaced and an inspection says fit.", blocks: true);
            if (position.Uncleared.LastOrDefault(i => i != takeOff && i != slipping && NeedsRepair(i)) is { } broken)
                Add(AttentionKind.Repair, $"Inspection of {broken.On:yyyy-MM-dd}: {Words.Prose(broken.Verdict)}{Seen(broken)}.", position.Uncleared.Any(i => i.Marks.Contains(InspectionMark.Crack)));
            if (position.Mounting is { } mounting) AddBand(mounting, position, Add);
        }

        found.AddRange(finding.Contradictions.Select(c =>
            new Attention(AttentionKind.Contradiction, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, null, c.Question, false)));
        if (finding is { Registered: null, Held: > 0 })
            found.Add(new Attention(
                AttentionKind.NotRegistered, finding.Boat, finding.Boat, null, null, $"{Count(finding.Held, "record")} held: register the boat, or retract what was typed for another.", false));
        return [.. found.OrderBy(a => a.Kind)];
    }

    private static bool NeedsRepair(InspectionCard inspection) =>
        inspection.Verdict == Verdict.Repair || inspection.Marks.Any(m => m is InspectionMark.Crack or InspectionMark.WaterInOil);

    private static string Seen(InspectionCard inspection) =>
        inspection.Marks.Count == 0 ? "" : $", with {string.Join(", ", inspection.Marks.Select(m => Words.Prose(m)))}";

    private static void AddBand(MountingFinding mounting, PositionFinding position, Action<AttentionKind, string, bool> add)
    {
        if (mounting.Band is { State: BandState.AboveTop or BandState.BelowBottom } band)
        {
            var causes = mounting.Causes.Count > 0 ? $" May be: {string.Join(", ", mounting.Causes)}." : "";
            var since = mounting.Exit.State == BandExitState.NoTrialSinceNewBaseline ? " That was before a strike, work on the prop or a change of the boat; no trial since." : "";
            add(AttentionKind.OutsideBand, Outside(mounting, band, position.Engine!) + causes + since, false);
        }
        else if (mounting.Exit is { State: BandExitState.Forecast, EarliestHours: <= SoonHours } exit)
        {
            var latest = exit.LatestHours is { } h ? $"{h:0}" : "more than the horizon";
            add(
                AttentionKind.LeavingBand,
                $"Leaves its band at the {Words.Prose(exit.Edge!)} about {exit.HoursFromLastTrial:0} engine hours after its last trial ({exit.EarliestHours:0} to {latest} at {exit.Level:P0}).",
                false);
        }
    }

    private static string Outside(MountingFinding mounting, BandStanding band, EngineCard engine)
    {
        var above = band.State == BandState.AboveTop;
        var edge = above ? $"the top ({engine.BandHighRpm:0}) of its band" : $"the bottom ({engine.BandLowRpm:0}) of its band";
        if (Banding.LastWideOpen(mounting.Trials)?.SetAside == SetAsideReason.LimiterReached)
            return $"Over-revving: the limiter held it at {band.ObservedRpm:0} RPM at wide-open throttle; without it, it would turn over {edge}.";
        var by = Math.Abs(band.MarginRpm!.Value);
        var observed = Math.Abs(band.ObservedRpm!.Value - band.PresentRpm!.Value) < 1 ? "" : $" By the line through its trials; the last of them read {band.ObservedRpm:0}.";
        return $"{(above ? "Over-revving" : "Lugging")}: {band.PresentRpm:0} RPM at wide-open throttle, {(by < 0.5 ? "just" : $"{by:0}")} {(above ? "above" : "below")} {edge}.{observed}";
    }

    private static string Strike(OpenStrike strike, MountingFinding? mounting)
    {
        var stainless = mounting?.Prop.Material == Props.PropMaterial.Stainless
            ? " Stainless passes a strike on: look at shaft and lower unit, and at the gear oil."
            : "";
        var hit = strike.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(strike.Object);
        return $"Strike on {hit} ({Words.Prose(strike.Severity)}) on {strike.On:yyyy-MM-dd}, and no inspection since says fit. Only that clears it.{stainless}";
    }

    private static string Count(int n, string thing) => n == 1 ? $"1 {thing}" : $"{n} {thing}s";
}
