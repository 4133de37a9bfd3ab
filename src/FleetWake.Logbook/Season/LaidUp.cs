using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Season;

/// <summary>A boat was laid up. Its hours stand still, and nobody is reminded of anything but the look before it goes out again.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="RelaunchOn">Date on which it is meant to go out again; null when nobody knows yet.</param>
[StoredAs("laid_up", 1)]
public sealed record LaidUp(Entry Entry, string Boat, DateOnly? RelaunchOn) : IFact;

/// <summary>Records that a boat was laid up.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="RelaunchOn">Date on which it is meant to go out again, e.g. <c>2027-04-15</c>.</param>
public sealed record LayUp(Stamp? Entry, string? Boat, string? RelaunchOn = null) : ICommand<LayUp>
{
    /// <inheritdoc/>
    public static string Kind => "laid_up";

    /// <inheritdoc/>
    public static LayUp Example => new(Examples.At(306, "2026-10-05T11:00:00"), Examples.Boat, "2026-11-09");

    /// <inheritdoc/>
    public static string Summary => "Records that a boat was laid up, and until when.";

    /// <inheritdoc/>
    public static Decision Decide(LayUp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var relaunchOn = check.DueDate(command.RelaunchOn, entry, "/relaunchOn");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new LaidUp(entry!, boat, relaunchOn))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
