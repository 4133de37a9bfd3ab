using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Season;

/// <summary>A boat that was laid up went into the water again.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
[StoredAs("boat_relaunched", 1)]
public sealed record BoatRelaunched(Entry Entry, string Boat) : IFact;

/// <summary>Records that a boat went into the water again.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
public sealed record RelaunchBoat(Stamp? Entry, string? Boat) : ICommand<RelaunchBoat>
{
    /// <inheritdoc/>
    public static string Kind => "boat_relaunched";

    /// <inheritdoc/>
    public static RelaunchBoat Example => new(Examples.At(307, "2026-11-09T10:00:00"), Examples.Boat);

    /// <inheritdoc/>
    public static string Summary => "Records that a boat that was laid up went into the water again.";

    /// <inheritdoc/>
    public static Decision Decide(RelaunchBoat command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new BoatRelaunched(entry!, boat))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
