using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Schedules;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Entries;

/// <summary>A record as a device sends it.</summary>
public interface ICommand
{
    /// <summary>The stamp as sent.</summary>
    Stamp? Entry { get; }
}

/// <summary>A record of one kind, with its name and its pure decision.</summary>
/// <typeparam name="TSelf">The command itself.</typeparam>
public interface ICommand<TSelf> : ICommand
    where TSelf : ICommand<TSelf>
{
    /// <summary>Name of the kind on the wire; also the stored name of its main fact.</summary>
    static abstract string Kind { get; }

    /// <summary>One sentence for the API description.</summary>
    static abstract string Summary { get; }

    /// <summary>A worked example, for the API description and the docs.</summary>
    static abstract TSelf Example { get; }

    /// <summary>Holds the record against the rules. Pure: no clock, no I/O, no new id.</summary>
    static abstract Decision Decide(TSelf command, Arrival arrival);
}

/// <summary>One kind of record: its name, its shape and its decision.</summary>
/// <param name="Name">Name on the wire, e.g. <c>strike_reported</c>.</param>
/// <param name="Summary">One sentence for the API description.</param>
/// <param name="Example">A worked example.</param>
/// <param name="CommandType">Shape of the record as sent.</param>
/// <param name="Decide">The pure decision.</param>
public sealed partial record RecordKind(string Name, string Summary, Type CommandType, ICommand Example, Func<ICommand, Arrival, Decision> Decide)
{
    /// <summary>Version of the wire shapes as a whole; part of what a receipt's hash covers.</summary>
    public const int SchemaVersion = 1;

    /// <summary>Every kind of record that a device may send, in the order of the docs.</summary>
    public static IReadOnlyList<RecordKind> All { get; } =
        [.. OfBoatsAndEngines(), .. OfProps(), .. OfMountings(), .. OfUse(), .. OfTheOffice(), Of<Retract>()];

    private static readonly Dictionary<string, RecordKind> ByName = All.ToDictionary(k => k.Name, StringComparer.Ordinal);

    /// <summary>The kind of this name, or null.</summary>
    public static RecordKind? Find(string? name) => name is not null && ByName.TryGetValue(name, out var kind) ? kind : null;

    private static RecordKind Of<T>()
        where T : ICommand<T> =>
        new(T.Kind, T.Summary, typeof(T), T.Example, (command, arrival) => T.Decide((T)command, arrival));

    private static IEnumerable<RecordKind> OfBoatsAndEngines() =>
    [
        Of<RegisterBoat>(),
        Of<RegisterEngine>(),
        Of<FitEngine>(),
        Of<ReadHours>(),
        Of<ReplaceMeter>(),
        Of<CheckTachometer>(),
        Of<RemoveEngine>(),
        Of<RehomeBoat>(),
        Of<CleanHull>(),
        Of<ChangeRig>(),
        Of<PlanProp>(),
        Of<SettleContradiction>(),
    ];

    /// <summary>Props, their shop, and what holds and fits them.</summary>
    private static IEnumerable<RecordKind> OfProps() =>
    [
        Of<StateEngineFit>(),
        Of<StateFastening>(),
        Of<ServiceEngine>(),
        Of<RegisterProp>(),
        Of<AcquireProp>(),
        Of<StatePropFit>(),
        Of<SendPropToShop>(),
        Of<RepitchProp>(),
        Of<RepairProp>(),
        Of<TakePropBackFromShop>(),
        Of<MeasureProp>(),
        Of<TellPropCost>(),
        Of<StoreProp>(),
        Of<TakeLoaner>(),
        Of<ReturnLoaner>(),
        Of<RetireProp>(),
    ];

    private static IEnumerable<RecordKind> OfMountings() =>
    [
        Of<MountProp>(),
        Of<FindFitted>(),
        Of<RemoveProp>(),
        Of<CleanProp>(),
        Of<ReplaceHub>(),
        Of<ReportStrike>(),
        Of<Inspect>(),
        Of<RunTrial>(),
        Of<ReadNormalisedRpm>(),
    ];

    /// <summary>Rules, looks, duties, hire and lay-up.</summary>
    private static IEnumerable<RecordKind> OfUse() =>
    [
        Of<SetInspectionRule>(),
        Of<SetHireStates>(),
        Of<LookOver>(),
        Of<RetorqueNut>(),
        Of<TakeDuty>(),
        Of<DoDuty>(),
        Of<TakeOutOfHire>(),
        Of<ReturnToHire>(),
        Of<LayUp>(),
        Of<RelaunchBoat>(),
        Of<RetireBoat>(),
    ];

    /// <summary>Parts, prices, claims, docks, people and rules.</summary>
    private static IEnumerable<RecordKind> OfTheOffice() =>
    [
        Of<OpenDock>(),
        Of<InvitePerson>(),
        Of<GiveRole>(),
        Of<EnrolDevice>(),
        Of<RevokeDevice>(),
        Of<SetSchedule>(),
        Of<TimeDigest>(),
        Of<SetHolidays>(),
        Of<SetAlerts>(),
        Of<SetPrice>(),
        Of<ReleaseQuarantinedEntry>(),
        Of<StockPart>(),
        Of<CountPart>(),
        Of<UsePart>(),
        Of<OpenClaim>(),
        Of<CostClaim>(),
        Of<CloseClaim>(),
    ];
}
