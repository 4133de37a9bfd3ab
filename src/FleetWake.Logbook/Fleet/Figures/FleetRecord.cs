using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>What a fleet's figures are made from. Pure: the same logs give the same figures, whatever order they come in, and no clock is asked.</summary>
/// <param name="Boats">Histories of all boats, by id.</param>
/// <param name="Props">All props, by tag.</param>
/// <param name="Parts">All small parts, by id.</param>
/// <param name="Office">The operator's docks and prices.</param>
public sealed record FleetRecord(
    IReadOnlyList<BoatHistory> Boats, IReadOnlyList<PropRecord> Props, IReadOnlyList<PartRecord> Parts, OfficeRecord Office)
{
    /// <summary>The last moment that anything of boats, props or parts is on record; null when nothing is. Stands for today.</summary>
    public DateTimeOffset? Until { get; } = Last(Boats, Props, Parts);

    /// <summary>A fleet out of logs at hand.</summary>
    public static FleetRecord Of(FleetLogs logs) => Of(logs.Boats.Select(b => BoatHistory.Tell(logs.DossierOf(b))), logs.Logs);

    /// <summary>Gathers a fleet.</summary>
    /// <param name="boats">Histories of the fleet's boats.</param>
    /// <param name="logs">Logs of its props, its small parts and its office; those of boats settle what was corrected there, others do no harm.</param>
    public static FleetRecord Of(IEnumerable<BoatHistory> boats, IEnumerable<FactLog> logs)
    {
        List<BoatHistory> told = [.. boats.OrderBy(b => b.Boat, StringComparer.Ordinal)];
        var byId = told.ToDictionary(b => b.Boat, StringComparer.Ordinal);
        List<FactLog> all = [.. logs.OrderBy(l => l.Id, StringComparer.Ordinal)];
        var ofBoats = all.Where(l => StreamName.BoatOf(l.Id) is not null).ToDictionary(l => l.Id, StringComparer.Ordinal);
        return new FleetRecord(
            told,
            [.. all.Where(l => StreamName.PropOf(l.Id) is not null && l.Facts.Count > 0).Select(l => PropRecord.Of(l, byId))],
            [.. all.Where(l => StreamName.PartOf(l.Id) is not null && l.Facts.Count > 0).Select(l => PartRecord.Of(l, ofBoats))],
            OfficeRecord.Of(all.FirstOrDefault(l => l.Id == StreamName.Operator) ?? FactLog.Empty(StreamName.Operator)));
    }

    private static DateTimeOffset? Last(IReadOnlyList<BoatHistory> boats, IReadOnlyList<PropRecord> props, IReadOnlyList<PartRecord> parts)
    {
        var entries = boats.SelectMany(b => b.Facts.Concat(b.EngineFacts.Values.SelectMany(f => f)))
            .Concat(props.SelectMany(p => p.Facts)).Concat(parts.SelectMany(p => p.Facts)).Select(f => f.Entry);
        return entries.Select(e => (DateTimeOffset?)e.Happened()).Max();
    }
}

/// <summary>A prop with every mounting it had on any boat.</summary>
/// <param name="Life">Its life as it is told elsewhere.</param>
/// <param name="Facts">Its own facts that count, in order.</param>
/// <param name="Mountings">Its mountings in order, each with the boat's history.</param>
/// <param name="Order">The order of things.</param>
public sealed record PropRecord(
    PropLife Life, IReadOnlyList<IFact> Facts, IReadOnlyList<(BoatHistory Boat, MountingSpan Span)> Mountings, IComparer<Entry> Order)
{
    /// <summary>Its retirement; null while it is in use, and when it was fitted again afterwards.</summary>
    public PropRetired? Retired { get; } =
        Facts.OfType<PropRetired>().LastOrDefault() is { } retired && !Mountings.Any(m => Order.Compare(m.Span.Fitted.Entry, retired.Entry) > 0) ? retired : null;

    internal static PropRecord Of(FactLog log, IReadOnlyDictionary<string, BoatHistory> boats)
    {
        var prop = StreamName.PropOf(log.Id)!;
        List<BoatHistory> its = [.. Dossier.BoatsNamed(log).Select(boats.GetValueOrDefault).OfType<BoatHistory>()];
        var known = its.FirstOrDefault(b => b.Props.ContainsKey(prop));
        var order = known?.Order ?? EntryOrder.Instance;
        return new PropRecord(
            PropLife.Of(log, its),
            known?.Props[prop] ?? Effective.Of(log.Facts).Facts,
            [.. its.SelectMany(b => b.Mountings.Where(m => m.Fitted.Prop == prop).Select(m => (b, m))).OrderBy(m => m.m.Fitted.Entry, order)],
            order);
    }

    /// <summary>Why it came off at the end of a mounting; null while it is fitted, and when nobody said.</summary>
    internal static RemovalReason? CameOff((BoatHistory Boat, MountingSpan Span) mounting) => mounting.Span.To is { } to
        ? mounting.Boat.Facts.OfType<PropRemoved>().FirstOrDefault(r => r.Entry.Id == to.Id)?.Why
        : null;
}

/// <summary>A small part with its stock and its uses.</summary>
/// <param name="Stock">What there is of it.</param>
/// <param name="Facts">Its facts that count, in order.</param>
public sealed record PartRecord(PartStock Stock, IReadOnlyList<IFact> Facts)
{
    internal static PartRecord Of(FactLog log, IReadOnlyDictionary<string, FactLog> boats)
    {
        List<FactLog> beside = [.. PartStock.BoatsNamed(log).Select(b => boats.GetValueOrDefault(StreamName.Boat(b))).OfType<FactLog>()];
        return new PartRecord(PartStock.Of(log, beside), Effective.Of(log.Facts, Settlement.Of([.. beside, log])).Facts);
    }
}
