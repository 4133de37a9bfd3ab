using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Props;

/// <summary>What is known of one prop over its whole life. It does not depend on the clock.</summary>
/// <param name="Prop">The tag.</param>
/// <param name="Registered">Its registration; null while only records of it have arrived.</param>
/// <param name="Numbers">Pitch and diameter that it goes by now.</param>
/// <param name="Condition">What state it came in, when told.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Loan">Whose it is, while it is on loan.</param>
/// <param name="Fit">What it fits on, as stated last; null when nobody stated it.</param>
/// <param name="Mountings">Where it ran, in order.</param>
/// <param name="Hours">Engine hours it ran, over the mountings whose hours are known [h]; null when none is.</param>
/// <param name="HoursBridged">Some of them were reckoned rather than read, or those of a mounting are missing.</param>
/// <param name="CameOff">Why it came off the last time, when that was a reason not to fit it again as it is and nobody has mended it since.</param>
/// <param name="Readings">Its numbers as told and measured, in order.</param>
/// <param name="LastMeasured">The last time somebody held a gauge to it.</param>
/// <param name="Costs">What was paid for it, by currency.</param>
public sealed record PropLife(
    string Prop,
    PropRegistered? Registered,
    PropNumbers Numbers,
    PropCondition? Condition,
    PropPlace Place,
    PropLoan? Loan,
    PropFit? Fit,
    IReadOnlyList<MountedHours> Mountings,
    double? Hours,
    bool HoursBridged,
    PropCameOff? CameOff,
    IReadOnlyList<PropReading> Readings,
    PropReading? LastMeasured,
    IReadOnlyList<Money> Costs)
{
    /// <summary>Tells a prop's life.</summary>
    /// <param name="log">The prop's own log.</param>
    /// <param name="boats">Histories of the boats that its log names (<see cref="Dossier.BoatsNamed"/>); others do no harm.</param>
    public static PropLife Of(FactLog log, IReadOnlyList<BoatHistory> boats)
    {
        var prop = StreamName.PropOf(log.Id) ?? throw new ArgumentException($"{log.Id} is no prop's stream", nameof(log));

        // A correction may lie on a boat's log: a history has settled it, and each holds every boat that the prop was on.
        var known = boats.FirstOrDefault(b => b.Props.ContainsKey(prop));
        var facts = known?.Props[prop] ?? Effective.Of(log.Facts).Facts;
        var order = known?.Order ?? EntryOrder.Instance;
        var spans = boats.SelectMany(b => b.Mountings.Where(m => m.Fitted.Prop == prop).Select(m => (Boat: b, Span: m)))
            .OrderBy(m => m.Span.Fitted.Entry, order).ToList();
        var hours = spans.Select(m => MountedHours.Of(m.Boat, m.Span)).ToList();
        var readings = PropReading.Of(facts, spans, order);
        return new PropLife(
            prop,
            facts.OfType<PropRegistered>().FirstOrDefault(),
            PropNumbers.Of(facts),
            facts.OfType<PropAcquired>().LastOrDefault()?.Condition,
            PropPlace.Of(facts, spans, order),
            PropLoan.Of(facts),
            PropFit.Of(facts),
            hours,
            hours.Any(h => h.Hours is not null) ? hours.Sum(h => h.Hours ?? 0) : null,
            hours.Any(h => h.Bridged || h.Hours is null),
            PropCameOff.Of(facts, spans, order),
            readings,
            readings.LastOrDefault(r => r.Measured()),
            Money.Sums(facts.OfType<PropCostTold>().Select(c => new Money(c.Amount, c.Currency))));
    }
}

/// <summary>One mounting in a prop's life.</summary>
/// <param name="Mounting">Id of the mounting.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that turned it, when one is on record.</param>
/// <param name="From">Dock's date on which it was fitted.</param>
/// <param name="To">Dock's date on which it came off; null while it is fitted.</param>
/// <param name="Hours">Engine hours in between, while it is fitted up to the last reading [h]; null when the meter was never read in time.</param>
/// <param name="Bridged">Begin or end was reckoned rather than read; hours before the first reading are left out.</param>
public sealed record MountedHours(
    string Mounting, string Boat, Position Position, string? Engine, DateOnly From, DateOnly? To, double? Hours, bool Bridged)
{
    internal static MountedHours Of(BoatHistory boat, MountingSpan span)
    {
        var (at, to) = (span.Fitted.Entry, span.To);
        var engine = boat.EngineOf(span)?.Engine;
        var (hours, bridged) = engine is not null && boat.Meters.TryGetValue(engine, out var meter) ? Between(meter, span) : (null, false);
        return new MountedHours(span.Id, span.Fitted.Boat, span.Fitted.Position, engine, at.Date(), to?.Date(), hours, bridged);
    }

    private static (double? Hours, bool Bridged) Between(Engines.MeterChain meter, MountingSpan span)
    {
        var during = meter.Readings.Where(r => span.Holds(r.Entry)).ToList();
        var first = meter.At(span.Fitted.Entry) ?? (during.Count > 0 ? new Engines.HoursAt(during[0].Hours, true) : null);
        var last = span.To is { } to ? meter.At(to) : during.Count > 0 ? new Engines.HoursAt(during[^1].Hours, false) : null;
        return first is { } begin && last is { } end ? (Math.Max(0, end.Hours - begin.Hours), begin.Bridged || end.Bridged) : (null, false);
    }
}

/// <summary>What a prop fits on.</summary>
/// <param name="Spline">Id of the spline of its own hub.</param>
/// <param name="SplineTeeth">Teeth of that spline.</param>
/// <param name="HubKit">Id of the hub kit in it: as stated, or as replaced since.</param>
/// <param name="ThrustWasher">Id of the thrust washer it wants.</param>
public sealed record PropFit(string? Spline, int? SplineTeeth, string? HubKit, string? ThrustWasher)
{
    internal static PropFit? Of(IReadOnlyList<IFact> facts) => facts.Aggregate((PropFit?)null, (fit, fact) => fact switch
    {
        PropFitStated f => new PropFit(f.Spline, f.SplineTeeth, f.HubKit, f.ThrustWasher),
        // Another hub kit is another spline; one that nobody named leaves both open.
        HubReplaced h when fit is not null && h.HubKit != fit.HubKit => fit with { HubKit = h.HubKit, Spline = null, SplineTeeth = null },
        HubReplaced { HubKit: { } kit } when fit is null => new PropFit(null, null, kit, null),
        _ => fit,
    });
}

/// <summary>A prop that is somebody else's.</summary>
/// <param name="Lender">Id of whom it belongs to.</param>
/// <param name="Since">Dock's date since when it is here.</param>
/// <param name="DueBackOn">Date by which they want it back.</param>
public sealed record PropLoan(string Lender, DateOnly Since, DateOnly? DueBackOn)
{
    internal static PropLoan? Of(IReadOnlyList<IFact> facts) =>
        facts.LastOrDefault(f => f is LoanerTaken or LoanerReturned) is LoanerTaken taken ? new PropLoan(taken.Lender, taken.Entry.Date(), taken.DueBackOn) : null;
}

/// <summary>A prop came off for a reason that stands until somebody mends it.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Why">The reason.</param>
public sealed record PropCameOff(DateOnly On, RemovalReason Why)
{
    internal static PropCameOff? Of(IReadOnlyList<IFact> facts, IReadOnlyList<(BoatHistory Boat, MountingSpan Span)> mountings, IComparer<Entry> order)
    {
        if (mountings.Count == 0 || mountings[^1] is not { Span.To: { } to, Boat: var boat }) return null;
        if (boat.Facts.OfType<PropRemoved>().FirstOrDefault(r => r.Entry.Id == to.Id) is not { Why: RemovalReason.Worn or RemovalReason.Struck or RemovalReason.HubSlip } off)
            return null;
        var mended = facts.Any(f => order.Compare(f.Entry, to) > 0 && Mends(f, off.Why));
        return mended ? null : new PropCameOff(to.Date(), off.Why);
    }

    /// <summary>A hub that slipped is mended by a hub; a blade is not. Whatever a shop was sent, it is taken to have done.</summary>
    private static bool Mends(IFact fact, RemovalReason why) => fact switch
    {
        PropBackFromShop => true,
        HubReplaced => why == RemovalReason.HubSlip,
        Repitched or PropRepaired => why != RemovalReason.HubSlip,
        _ => false,
    };
}
