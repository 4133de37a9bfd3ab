using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
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

    /// <summary>When the present prop was fitted.</summary>
    public Doing? Fitted() => mounting is null || mounting.Found ? null : Doing(mounting.Fitted.Entry, DutyDoneBy.Inspection, null);

    /// <summary>What was done since an entry, that entry with it: hours run may be told of by the very record of the work.</summary>
    public IReadOnlyList<DoneThing> DoneSince(Entry? since) => since is null
        ? []
        : [.. Done.Where(d => history.Order.Compare(d.Entry, since) >= 0).Select(d => new DoneThing(d.By, d.Rule)).Distinct().OrderBy(d => d.By).ThenBy(d => d.Rule, StringComparer.Ordinal)];

    /// <summary>Strikes here that left a mark. What shook an engine that is gone is no longer seen to here, unless it still keeps the boat.</summary>
    public IReadOnlyList<StruckCard> Struck(IReadOnlyList<OpenStrike> open) =>
    [
        .. history.Strikes
            .Where(s => s.Position == position && s.Severity != StrikeSeverity.NoMark && (engine?.Holds(s.Entry) != false || open.Any(o => o.Entry == s.Entry.Id)))
            .Select(s => new StruckCard(s.Entry.Id, s.Entry.Date(), s.Severity, MaterialAt(s.Entry), DoneSince(s.Entry))),
    ];

    public Doing? Began() => engine is null ? null : Doing(engine.From, DutyDoneBy.DutyDone, null);

    public IReadOnlyList<TakenDuty> Taken() =>
    [
        .. history.Facts.OfType<DutyTaken>().Where(t => t.Position is null || t.Position == position).GroupBy(t => t.Rule, StringComparer.Ordinal).Select(g => g.Last())
            .Select(t => new TakenDuty(
                t.Rule, t.Entry.By, t.Entry.Date(),
                [.. Done.Where(d => history.Order.Compare(d.Entry, t.Entry) > 0 && (d.Rule is null || d.Rule == t.Rule)).Select(d => d.By).Distinct().Order()]))
            .OrderBy(t => t.Rule, StringComparer.Ordinal),
    ];

    /// <summary>
    /// The first sign that the present mounting was out. A trial is an outing; so is a hire it came back from, and so is
    /// a strike. Hours run tell of one too, but not when it was: only that it lay before the reading.
    /// </summary>
    public (Entry At, bool Dated)? FirstOuting()
    {
        // A prop that was found fitted was out before anybody recorded it: when it was first, nobody can say.
        if (mounting is null || mounting.Found) return null;
        var signs = history.Facts.Where(f => mounting.Holds(f.Entry) && (
                (f is TrialRun trial && trial.Runs.Any(r => r.Tachometers.Any(t => t.Position == position)))
                || f is NormalisedRpmRead read && read.Position == position
                || f is StrikeReported strike && strike.Position == position
                || f is LookedOver { Moment: LookMoment.AfterHire } look && look.Position == position))
            .Select(f => (f.Entry, Dated: true));
        var readings = meter?.Readings.Where(r => mounting.Holds(r.Entry)).ToList() ?? [];
        var start = meter?.At(mounting.Fitted.Entry)?.Hours ?? readings.FirstOrDefault()?.Hours;
        var outings = signs.Concat(readings.Where(r => r.Hours > start + OutingHours).Select(r => (r.Entry, Dated: false))).OrderBy(o => o.Entry, history.Order).ToList();
        return outings.Count == 0 ? null : outings[0];
    }

    /// <summary>
    /// A re-torque since the first outing does it; while nobody knows when that was, one of a later day than the fitting
    /// does. A "fit" since the outing does too, where nut and pin were in view.
    /// </summary>
    public bool RetorqueSeenTo((Entry At, bool Dated)? outing)
    {
        if (mounting is null) return false;
        bool Since(Entry entry) => mounting.Holds(entry) && outing is { } known && history.Order.Compare(entry, known.At) >= 0;
        bool LaterDay(Entry entry) => mounting.Holds(entry) && outing is not { Dated: true } && entry.Date() > mounting.Fitted.Entry.Date();
        return Retorques.Any(r => Since(r.Entry) || LaterDay(r.Entry))
            || history.Inspections.Any(i => i.Position == position && i.Verdict == Verdict.Fit && NutInView(i) && Since(i.Entry));
    }

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
        var shown = meter.Readings.SkipWhile(r => r.Hours < last.Hours).First();
        return new UseRate(Math.Clamp(rate, 0, 24), last.Entry.Date(), last.Hours) { ShownOn = shown.Entry.Date() };
    }

    private static bool NutInView(Inspected look) => look.Seen is null || look.Seen.Contains(InspectedPart.Prop) || look.Seen.Contains(InspectedPart.Hub);

    private PropMaterial? MaterialAt(Entry entry) =>
        history.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.Holds(entry)) is { } struck
            ? history.PropOf(struck)?.Material
            : null;

    /// <summary>Hours that nobody read then are those of the last reading before: what they start is due at the earliest plausible date.</summary>
    private Doing Doing(Entry entry, DutyDoneBy by, string? rule)
    {
        var read = meter?.Readings.FirstOrDefault(r => r.Entry.Id == entry.Id);
        var hours = read ?? meter?.Readings.LastOrDefault(r => history.Order.Compare(r.Entry, entry) < 0);
        return new Doing(by, rule, entry.Date(), hours?.Hours, hours is not null && (read is null || hours.Bridged));
    }
}
