using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>What was done at one position and how much its engine runs: what due dates are reckoned from.</summary>
/// <param name="history">The boat's history.</param>
/// <param name="position">The position.</param>
/// <param name="engine">The engine that hangs there, since when.</param>
/// <param name="meter">Its hours.</param>
/// <param name="mounting">The prop fitted there.</param>
internal sealed class AssessUse(BoatHistory history, Position position, EngineSpan? engine, MeterChain? meter, MountingSpan? mounting)
{
    /// <summary>Use is judged by readings of this long before the last one [d]: a season's use, not a life's.</summary>
    private const int UseDays = 90;

    /// <summary>A rate is a mean over at least this long [d]: one busy Saturday is no season.</summary>
    private const int LeastUseDays = 14;

    /// <summary>More than this was run before a reading counts as an outing [h]; less may be the warming-up at the dock. Common practice, no source.</summary>
    private const double OutingHours = 0.3;

    private IEnumerable<(Entry Entry, DutyDoneBy By, string? Rule)> Done =>
        history.Inspections.Where(i => i.Position == position).Select(i => (i.Entry, DutyDoneBy.Inspection, (string?)null))
            .Concat(history.Mountings.Where(m => m.Fitted.Position == position && !m.Found).Select(m => (m.Fitted.Entry, DutyDoneBy.Inspection, (string?)null)))
            .Concat(Retorques.Select(r => (r.Entry, DutyDoneBy.Retorque, (string?)null)))
            .Concat(Services.Select(s => (s.Entry, DutyDoneBy.Service, (string?)null)))
            .Concat(history.Facts.OfType<DutyDone>().Where(d => d.Position is null || d.Position == position).Select(d => (d.Entry, DutyDoneBy.DutyDone, (string?)d.Rule)))
            .OrderBy(d => d.Item1, history.Order);

    private IEnumerable<NutRetorqued> Retorques => history.Facts.OfType<NutRetorqued>().Where(r => r.Position == position);

    private IEnumerable<EngineServiced> Services =>
        engine is null ? [] : (history.EngineFacts.GetValueOrDefault(engine.Engine) ?? []).OfType<EngineServiced>();

    public IReadOnlyList<Doing> Doings() =>
        [.. Done.GroupBy(d => (d.By, d.Rule)).Select(g => Doing(g.Last().Entry, g.Key.By, g.Key.Rule)).OrderBy(d => d.By).ThenBy(d => d.Rule, StringComparer.Ordinal)];

    public Doing? Began() => engine is null ? null : Doing(engine.From, DutyDoneBy.DutyDone, null);

    public IReadOnlyList<TakenDuty> Taken() =>
    [
        .. history.Facts.OfType<DutyTaken>().Where(t => t.Position is null || t.Position == position).GroupBy(t => t.Rule, StringComparer.Ordinal).Select(g => g.Last())
            .Select(t => new TakenDuty(
                t.Rule, t.Entry.By, t.Entry.Date(),
                [.. Done.Where(d => history.Order.Compare(d.Entry, t.Entry) > 0 && (d.Rule is null || d.Rule == t.Rule)).Select(d => d.By).Distinct().Order()]))
            .OrderBy(t => t.Rule, StringComparer.Ordinal),
    ];

    /// <summary>The first sign that the present mounting was out. A trial is an outing; so is a hire it came back from, and so are hours run.</summary>
    public Entry? FirstOuting()
    {
        // A prop that was found fitted was out before anybody recorded it: when it was first, nobody can say.
        if (mounting is null || mounting.Found) return null;
        var signs = history.Facts.Where(f => mounting.Holds(f.Entry) && (
                (f is TrialRun trial && trial.Runs.Any(r => r.Tachometers.Any(t => t.Position == position)))
                || f is NormalisedRpmRead read && read.Position == position
                || f is LookedOver { Moment: LookMoment.AfterHire } look && look.Position == position))
            .Select(f => f.Entry);
        var readings = meter?.Readings.Where(r => mounting.Holds(r.Entry)).ToList() ?? [];
        var start = meter?.At(mounting.Fitted.Entry)?.Hours ?? readings.FirstOrDefault()?.Hours;
        return signs.Concat(readings.Where(r => r.Hours > start + OutingHours).Select(r => r.Entry)).Order(history.Order).FirstOrDefault();
    }

    /// <summary>A re-torque since the first outing does it, or one of a later day than the fitting. A "fit" since then does too: nut and pin were in view.</summary>
    public bool RetorqueSeenTo(Entry? outing) => mounting is not null && (
        Retorques.Any(r => mounting.Holds(r.Entry) && (r.Entry.Date() > mounting.Fitted.Entry.Date() || (outing is not null && history.Order.Compare(r.Entry, outing) >= 0)))
        || (outing is not null && history.Inspections.Any(i =>
            i.Position == position && i.Verdict == Verdict.Fit && mounting.Holds(i.Entry) && history.Order.Compare(i.Entry, outing) > 0)));

    /// <summary>
    /// The highest mean rate from any reading of the last ninety days to the last one, so that a date by hours is the
    /// earliest plausible. A mean over less than two weeks counts only where there is no longer one.
    /// </summary>
    public UseRate? Use()
    {
        if (meter is null || meter.Readings.Count < 2) return null;
        var last = meter.Readings[^1];
        double Days(MeterPoint earlier) => (last.Entry.Happened() - earlier.Entry.Happened()).TotalDays;
        var window = meter.Readings.Where(r => r != last && Days(r) is > 0 and <= UseDays).ToList();
        if (window.Count == 0) window = [.. meter.Readings.Where(r => Days(r) > 0).TakeLast(1)];
        var settled = window.Where(r => Days(r) >= LeastUseDays).ToList();
        var rate = (settled.Count > 0 ? settled : [.. window.Take(1)]).Select(r => (last.Hours - r.Hours) / Math.Max(Days(r), 1)).DefaultIfEmpty(0).Max();
        return rate > 0 ? new UseRate(Math.Min(rate, 24), last.Entry.Date(), last.Hours) : null;
    }

    private Doing Doing(Entry entry, DutyDoneBy by, string? rule)
    {
        var hours = meter?.At(entry);
        return new Doing(by, rule, entry.Date(), hours?.Hours, hours?.Bridged ?? false);
    }
}
