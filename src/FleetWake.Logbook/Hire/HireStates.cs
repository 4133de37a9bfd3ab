using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Hire;

/// <summary>Holds a finding against the operator's table.</summary>
public static class HireStates
{
    /// <summary>What releases a boat that somebody took out of hire.</summary>
    internal const string PutBack = "The record that it is back in hire.";

    private const string Fit = "An inspection dated after the strike with the verdict fit";

    /// <summary>Whether a boat may go out on hire, and what releases it.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    public static HireState Of(BoatFinding finding, FleetPolicy? policy = null)
    {
        var table = (policy ?? FleetPolicy.Usual).Hire;
        var reasons = OfBoat(finding)
            .Concat(finding.Retired is not null ? [] : finding.Positions.SelectMany(p => At(p, table).Select(k => k.Reason)))
            .Concat(CannotSail.Of(finding, policy))
            .OrderByDescending(r => r.Word).ToList();
        return new HireState(reasons.Count == 0 ? HireWord.InHire : reasons[0].Word, reasons);
    }

    /// <summary>What a strike at this position means for hire now.</summary>
    public static HireWord Of(OpenStrike strike, HireTable table)
    {
        var word = table.Of(strike.Severity, strike.Material);
        return strike.LiftedOn is not null || (word == HireWord.LookFirst && strike.LookedOverOn is not null) ? HireWord.InHire : word;
    }

    /// <summary>What an inspection that nothing has cleared means for hire now. A slipping hub or a crack keeps a boat whatever the table says of the verdict.</summary>
    public static HireWord Of(InspectionCard inspection, HireTable table)
    {
        var word = Keeps(inspection.Marks) ? HireWord.Out : table.Of(inspection.Verdict, inspection.Material);
        return inspection is { LiftedOn: not null, Verdict: not Verdict.TakeOff } ? HireWord.InHire : word;
    }

    /// <summary>What something brought along means for hire now.</summary>
    public static HireWord Of(CarriedSuspicion carried, HireTable table)
    {
        if (carried is { LiftedOn: not null, Verdict: not Verdict.TakeOff }) return HireWord.InHire;
        if (carried.Severity is { } severity)
            return table.Of(severity, carried.Material) is var word && word == HireWord.LookFirst && carried.LookedOverOn is not null ? HireWord.InHire : word;
        return Keeps(carried.Marks) ? HireWord.Out : carried.Verdict is { } verdict ? table.Of(verdict, carried.Material) : HireWord.LookFirst;
    }

    private static bool Keeps(IEnumerable<InspectionMark> marks) => marks.Any(m => m is InspectionMark.HubSlip or InspectionMark.Crack);

    private static IEnumerable<HireReason> OfBoat(BoatFinding finding)
    {
        if (finding.Retired is { } retired)
        {
            yield return new HireReason(HireWord.Out, null, $"Left the fleet on {retired.On:yyyy-MM-dd} ({Words.Prose(retired.Why)}).", "Nothing, unless that record is retracted.");
            yield break;
        }

        if (finding.IsLaidUp())
        {
            var until = finding.LayUp!.RelaunchOn is { } on ? $", to go out again on {on:yyyy-MM-dd}" : "";
            yield return new HireReason(HireWord.Out, null, $"Laid up since {finding.LayUp.On:yyyy-MM-dd}{until}.", "A look at prop and shaft, then the record that it was relaunched.");
        }

        if (finding.Hold is { } hold)
            yield return new HireReason(HireWord.Out, null, $"Taken out of hire on {hold.On:yyyy-MM-dd} ({Words.Prose(hold.Why)}).", PutBack);
    }

    /// <summary>What keeps the boat at one position, each with what of the finding it is about.</summary>
    internal static IReadOnlyList<(object About, HireReason Reason)> At(PositionFinding position, HireTable table)
    {
        var kept = new List<(object About, HireReason Reason)>();
        void Keep(object about, HireWord word, string sentence, string releasedBy)
        {
            if (word != HireWord.InHire) kept.Add((about, new HireReason(word, position.Position, sentence, releasedBy)));
        }

        foreach (var strike in position.OpenStrikes)
        {
            var hit = strike.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(strike.Object);
            var word = Of(strike, table);
            Keep(strike, word, $"Strike on {hit} ({Words.Prose(strike.Severity)}) on {strike.On:yyyy-MM-dd}.", Release(strike.Severity, strike.Material, word));
        }

        // A later look that says less takes nothing back, so the strictest of them counts and each is named.
        var watched = position.LastInspection is { Verdict: Verdict.Watch } last && !position.Uncleared.Any(i => i.On == last.On && i.Verdict == last.Verdict) ? [last] : Array.Empty<InspectionCard>();
        foreach (var inspection in position.Uncleared.Concat(watched))
            Keep(inspection, Of(inspection, table), $"Inspection of {inspection.On:yyyy-MM-dd}: {Said(inspection.Verdict, inspection.Marks)}.", Release(inspection));

        foreach (var carried in position.Carried)
            Keep(carried, Of(carried, table), Sentence(carried), Release(carried, Of(carried, table)));

        // What already waits for a "fit" here accounts for damage that was seen as well.
        if (position.Damage is { LiftedOn: null } damage && !kept.Any(k => k.About is OpenStrike { Severity: >= StrikeSeverity.Chipped } or InspectionCard))
            Keep(damage, HireWord.LookFirst, Sentence(damage), "An inspection after that look with the verdict fit.");
        return kept;
    }

    /// <summary>A short look that saw damage, in a sentence.</summary>
    internal static string Sentence(DamageSeen damage)
    {
        var when = damage.Moment switch { LookMoment.BeforeHire => " before a hire", LookMoment.AfterHire => " after a hire", _ => "" };
        return $"The short look{when} on {damage.On:yyyy-MM-dd} saw damage, and no inspection since says fit.";
    }

    /// <summary>What somebody brought along, in a sentence.</summary>
    public static string Sentence(CarriedSuspicion carried)
    {
        var part = carried.Part == SuspectPart.Prop ? $"Prop {carried.Thing}" : $"Engine {carried.Thing}";
        var told = carried.Severity is { } severity ? $"was struck ({Words.Prose(severity)})"
            : carried.Verdict is { } verdict ? $"was inspected ({Said(verdict, carried.Marks)})"
            : "was looked over (damage)";
        var (scuffed, seen) = (carried.Severity == StrikeSeverity.Scuffed, carried.Part == SuspectPart.Prop ? "the prop" : "shaft and gear oil");
        return $"{part} {told} on {carried.From} on {carried.On:yyyy-MM-dd}, and {Since(scuffed, carried.ShortFitOn, seen)}.";
    }

    /// <summary>Why it still stands.</summary>
    /// <param name="scuffed">It is no more than a scuff.</param>
    /// <param name="shortFitOn">Day of a "fit" since that cleared nothing.</param>
    /// <param name="seen">What that one had to see.</param>
    internal static string Since(bool scuffed, DateOnly? shortFitOn, string seen) =>
        shortFitOn is { } on ? $"the inspection of {on:yyyy-MM-dd} that says fit does not say that it saw {seen}"
        : scuffed ? "no look since found it harmless"
        : "no inspection since says fit";

    /// <summary>What releases a boat from a strike.</summary>
    public static string Release(StrikeSeverity severity, PropMaterial? material, HireWord word) =>
        severity == StrikeSeverity.Scuffed && word == HireWord.LookFirst ? "A short look that sees no damage, recorded."
        : material == PropMaterial.Stainless && severity >= StrikeSeverity.Chipped ? $"{Fit}, with shaft and gear oil seen."
        : $"{Fit}.";

    /// <summary>What releases a boat from what it was brought.</summary>
    private static string Release(CarriedSuspicion carried, HireWord word) =>
        carried.Severity == StrikeSeverity.Scuffed && word == HireWord.LookFirst ? "A short look that sees no damage, recorded."
        : carried.Part == SuspectPart.LowerUnit ? "An inspection on this boat with the verdict fit, with shaft and gear oil seen."
        : carried is { Material: PropMaterial.Stainless, Severity: >= StrikeSeverity.Chipped } ? "An inspection of the prop on this boat with the verdict fit, with the prop named among what was seen."
        : "An inspection of the prop on this boat with the verdict fit.";

    private static string Release(InspectionCard inspection) =>
        inspection.Verdict == Verdict.TakeOff ? "The prop off, and a later inspection with the verdict fit."
        : inspection.Marks.Contains(InspectionMark.HubSlip) ? "A new hub, and a later inspection with the verdict fit."
        : inspection.Verdict == Verdict.Watch ? "A later inspection with the verdict fit."
        : "The repair, and a later inspection with the verdict fit.";

    private static string Said(Verdict verdict, IReadOnlyList<InspectionMark> marks) =>
        marks.Count == 0 ? Words.Prose(verdict) : $"{Words.Prose(verdict)}, with {string.Join(", ", marks.Select(m => Words.Prose(m)))}";
}
