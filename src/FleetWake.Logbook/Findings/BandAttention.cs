using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Findings;

/// <summary>What about a mounting's band and drift needs a person.</summary>
internal static class BandAttention
{
    /// <summary>A reading that is likelier out of line than this is spoken of [1]; judgement.</summary>
    private const double Doubtful = 0.5;

    public static void Add(MountingFinding mounting, PositionFinding position, Action<AttentionKind, string> add)
    {
        if (mounting.Band is { State: BandState.AboveTop or BandState.BelowBottom } band)
        {
            // What the trials themselves point to says more than the usual list, where it speaks of the same side. Of a reading that
            // is out of line with all of them they cannot speak.
            var side = band.State == BandState.AboveTop ? CauseGroup.RpmUp : CauseGroup.RpmDown;
            var misfit = Misfit(mounting, position);
            var told = misfit.Length == 0 && mounting.PointsTo is { } points && points.Group == side ? CauseWords.Of(points) : "";
            var causes = told.Length > 0 ? told : mounting.Causes.Count > 0 ? $" May be: {string.Join(", ", mounting.Causes)}." : "";
            var since = mounting.Exit.State == BandExitState.NoTrialSinceNewBaseline ? " That was before a strike, work on the prop or a change of the boat; no trial since." : "";
            add(AttentionKind.OutsideBand, Outside(mounting, band, position.Engine!) + misfit + causes + since);
        }
        else
        {
            var leaving = mounting.Exit.Within100HoursChance >= NextTrialCard.ActAtChance;
            if (leaving) add(AttentionKind.LeavingBand, Leaving(mounting) + Pointing(mounting));
            if (Misfit(mounting, position) is { Length: > 0 } misfit) add(AttentionKind.OutOfLine, $"Its last trial turned {mounting.Band.ObservedRpm:0} RPM, inside its band.{misfit}");
            if (mounting.Watch is { RaisedOn: { } on } watch && !LookedAtSince(position, on)) add(AttentionKind.Drifting, Drifting(mounting, watch, on) + (leaving ? "" : Pointing(mounting)) + FalseAlarms(watch));
        }
    }

    private static string Drifting(MountingFinding mounting, DriftWatch watch, DateOnly on)
    {
        var rate = mounting.Drift is { } d ? $" It drifts by {d.Value:+0;-0;0} RPM per 100 h ({d.Low:+0;-0;0} to {d.High:+0;-0;0})." : "";
        return $"Drift alarm since the trial of {on:yyyy-MM-dd}: by now its trials are {watch.EvidenceInWords()} times as likely with drift as without.{rate}";
    }

    private static string Leaving(MountingFinding mounting)
    {
        var exit = mounting.Exit;
        var latest = exit.LatestHours is { } h ? $"{h:0}" : "more than the horizon";
        var hours = exit.HoursFromLastTrial is { } median ? $"about {median:0} engine hours after its last trial ({exit.EarliestHours:0} to {latest} at {100 * exit.Level:0} %)" : "else beyond the horizon";
        var date = exit.Dates is { On: { } on } dates ? $", by its use about {on:yyyy-MM-dd}{Earliest(dates)}" : "";
        return $"{100 * exit.Within100HoursChance:0} % likely to leave its band at the {Words.Prose(exit.Edge!)} within {NextTrialCard.ActWithinHours:0} engine hours from now: {hours}{date}.";
    }

    /// <summary>A day that is the reading's own says that it may have come already.</summary>
    private static string Earliest(BandExitDates dates) =>
        dates.Earliest is not { } early ? ""
        : early <= dates.ReckonedFrom ? ", and it may be outside already"
        : $", with 90 % chance not before {early:yyyy-MM-dd}";

    private static string Pointing(MountingFinding mounting) => CauseWords.Of(mounting.PointsTo);

    private static string FalseAlarms(DriftWatch watch) =>
        $" Of boats that do not drift {watch.FalseAlarmsPerBoatYear:0.00} such alarms come a boat-year{(watch.OnOwnSchedule ? " on this fleet's trials" : "")}.";

    private static string Outside(MountingFinding mounting, BandStanding band, EngineCard engine)
    {
        var above = band.State == BandState.AboveTop;
        var edge = above ? $"the top ({engine.BandHighRpm:0}) of its band" : $"the bottom ({engine.BandLowRpm:0}) of its band";
        if (mounting.LastWideOpen(engine)?.SetAside == SetAsideReason.LimiterReached)
            return $"Over-revving: the limiter held it at {band.ObservedRpm:0} RPM at wide-open throttle; without it, it would turn over {edge}.";
        var by = Math.Abs(band.MarginRpm!.Value);
        var place = $"{(by < 0.5 ? "just" : $"{by:0}")} {(above ? "above" : "below")} {edge}";
        var word = above ? "Over-revving" : "Lugging";
        if (Math.Abs(band.ObservedRpm!.Value - band.PresentRpm!.Value) < 1)
            return $"{word}: {band.PresentRpm:0} RPM at wide-open throttle{Gauge(band)}, {place}.";
        var of = mounting.AtReference ? " at reference air" : "";
        return $"{word} by its trials together: {band.PresentRpm:0} RPM{of}, {place}. The last of them {(band.GaugeRpm is null ? "read" : "turned")} {band.ObservedRpm:0}{Gauge(band)}.";
    }

    private static string Gauge(BandStanding band) => band.GaugeRpm is { } shown ? $" (the gauge showed {shown:0})" : "";

    /// <summary>It stands outside by that reading all the same until another trial says otherwise: a hub that let go reads like a slip of the pen.</summary>
    private static string Misfit(MountingFinding mounting, PositionFinding position) =>
        mounting.LastWideOpen(position.Engine)?.GrossChance is >= Doubtful and { } chance
            ? $" That reading is out of line with its other trials ({(chance > 0.99 ? "over 99" : $"{100 * chance:0}")} % likely): it was misread, or something gave way since. Look at blades and hub first, then run it again."
            : "";

    /// <summary>Whoever looked since the alarm and let it go on knows of it, until the next look is due; its place in the table stays.</summary>
    private static bool LookedAtSince(PositionFinding position, DateOnly on) =>
        position.LastInspection is { Verdict: Verdict.Fit or Verdict.Watch } look && look.On > on
        && position.Mounting!.Trials[^1].On <= Outlook.InspectionDue(look.On);
}
