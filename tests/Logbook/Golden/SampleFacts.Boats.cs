using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    private static IReadOnlyList<IFact> OfBoats() =>
    [
        new BoatRehomed(Entry, "kea", "quay", "Pacific/Chatham", WaterType.Silty, BottomKind.Gravel),
        new HullCleaned(Entry, "kea"),
        new RigChanged(Entry, "kea", Position.Centre, RigChange.BottomPaint),
        new PropPlanned(Entry, "kea", Position.Port, PropUse.FullLoad, 13.25, 17.1, 3, PropMaterial.Stainless),
        new ContradictionSettled(Entry, "kea", ContradictionKind.PropInTwoPlaces, [new("0198a6f2-5f00-7abc-8def-0123456789a9"), new("0198a6f2-5f00-7abc-8def-0123456789a8")], SettlementAnswer.BothStand),
        new EngineRemoved(Entry, "kea", Position.Port, "e1", 412.7),
        new EngineTakenOff(Entry, "e1", "kea", Position.Port),
        new MeterReplaced(Entry, "e1", 412.7, 0.3),
        new TachometerChecked(Entry, "e1", 5100.5, 5013.7),
        new FoundFitted(Entry, "kea", Position.Port, "p1", 412.7),
        new PropFound(Entry, "p1", "kea", Position.Port),
        new PropCleaned(Entry, "kea", Position.Port),
        new HubReplaced(Entry, "p1", "hub-21"),
        new NormalisedRpmRead(Entry, "kea", Position.Port, 5478.3, 412.7, 18.3, -150.5),
    ];
}
