using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    private static IReadOnlyList<IFact> OfBoats() =>
    [
        new NormalisedRpmRead(Entry, "kea", Position.Port, 5478.3, 412.7, 18.3, -150.5),
    ];
}
