using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    private static IReadOnlyList<IFact> OfBoats() => [];
}
