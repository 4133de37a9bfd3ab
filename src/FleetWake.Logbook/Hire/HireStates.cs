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
            .Concat(finding.Retired is not null ? [] : finding.Positions.SelectMany(p => At(p, table)))
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
    public static HireWord Of(InspectionCard inspection, PropMaterial? material, HireTable table)
    {
        var word = Keeps(inspection.Marks) ? HireWord.Out : table.Of(inspection.Verdict, material);
        return inspection is { LiftedOn: not null, Verdict: not Verdict.TakeOff } ? HireWord.InHire : word;
    }

    /// <summary>What something brought along means for hire now.</summary>
    public static HireWord Of(CarriedSuspicion carried, HireTable table)
    {
        var word = carried.Severity is { } severity ? table.Of(severity, carried.Material) : Keeps(carried.Marks) ? HireWord.Out : table.Of(carried.Verdict!.Value, carried.Material);
        return carried is { LiftedOn: not null, Verdict: not Verdict.TakeOff } ? HireWord.InHire : word;
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

    private static IEnumerable<HireReason> At(PositionFinding position, HireTable table)
    {
        foreach (var strike in position.OpenStrikes)
        {
            var hit = strike.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(strike.Object);
            if (Of(strike, table) is var word and not HireWord.InHire)
                yield return new HireReason(word, position.Position, $"Strike on {hit} ({Words.Prose(strike.Severity)}) on {strike.On:yyyy-MM-dd}.", Release(strike.Severity, strike.Material, word));
        }

        // A later look that says less takes nothing back, so the strictest of them counts and each is named.
        var material = position.Mounting?.Prop.Material;
        var watched = position.LastInspection is { Verdict: Verdict.Watch } last && !position.Uncleared.Any(i => i.On == last.On && i.Verdict == last.Verdict) ? [last] : Array.Empty<InspectionCard>();
        foreach (var inspection in position.Uncleared.Concat(watched))
        {
            if (Of(inspection, material, table) is var word and not HireWord.InHire)
                yield return new HireReason(word, position.Position, $"Inspection of {inspection.On:yyyy-MM-dd}: {Said(inspection.Verdict, inspection.Marks)}.", Release(inspection));
        }

        foreach (var carried in position.Carried)
        {
            if (Of(carried, table) is var word and not HireWord.InHire)
                yield return new HireReason(word, position.Position, Sentence(carried), Release(carried));
        }
    }

    /// <summary>What somebody brought along, in a sentence.</summary>
    public static string Sentence(CarriedSuspicion carried)
    {
        var part = carried.Part == SuspectPart.Prop ? $"Prop {carried.Thing}" : $"Engine {carried.Thing}";
        var told = carried.Severity is { } severity ? $"was struck ({Words.Prose(severity)})" : $"was inspected ({Said(carried.Verdict!.Value, carried.Marks)})";
        return $"{part} {told} on {carried.From} on {carried.On:yyyy-MM-dd}, and no inspection since says fit.";
    }

    /// <summary>What releases a boat from a strike.</summary>
    public static string Release(StrikeSeverity severity, PropMaterial? material, HireWord word) =>
        severity == StrikeSeverity.Scuffed && word == HireWord.LookFirst ? "A short look that sees no damage, recorded."
        : material == PropMaterial.Stainless && severity >= StrikeSeverity.Chipped ? $"{Fit}, with shaft and gear oil seen."
        : $"{Fit}.";

    /// <summary>What releases a boat from what it was brought.</summary>
    internal static string Release(CarriedSuspicion carried) =>
        $"An inspection of {(carried.Part == SuspectPart.Prop ? "the prop" : "shaft and lower unit")} on this boat with the verdict fit.";

    private static string Release(InspectionCard inspection) =>
        inspection.Verdict == Verdict.TakeOff ? "The prop off, and a later inspection with the verdict fit."
        : inspection.Marks.Contains(InspectionMark.HubSlip) ? "A new hub, and a later inspection with the verdict fit."
        : inspection.Verdict == Verdict.Watch ? "A later inspection with the verdict fit."
        : "The repair, and a later inspection with the verdict fit.";

    private static string Said(Verdict verdict, IReadOnlyList<InspectionMark> marks) =>
        marks.Count == 0 ? Words.Prose(verdict) : $"{Words.Prose(verdict)}, with {string.Join(", ", marks.Select(m => Words.Prose(m)))}";
}
