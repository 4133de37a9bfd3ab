using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Engines;

/// <summary>
/// Somebody stated, from the manual, how an engine holds its prop. The mounting sheet follows it. A torque left out means
/// "see the manual": there is no default. A later statement replaces an earlier one as a whole.
/// </summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Fastening">What holds the nut, or the prop.</param>
/// <param name="TorqueLow">Torque, or the bottom of its range, in <paramref name="TorqueUnit"/>.</param>
/// <param name="TorqueHigh">Top of the range, in <paramref name="TorqueUnit"/>; null when the manual gives one number.</param>
/// <param name="TorqueUnit">Unit of both.</param>
/// <param name="MostSlots">Slots that the nut may be tightened on to line up, at most; null when the manual sets no limit.</param>
/// <param name="Retorque">Whether a re-torque after the first outing applies; null when the manual says nothing.</param>
[StoredAs("fastening_stated", 1)]
public sealed record FasteningStated(
    Entry Entry,
    string Engine,
    Fastening Fastening,
    double? TorqueLow,
    double? TorqueHigh,
    TorqueUnit? TorqueUnit,
    int? MostSlots,
    bool? Retorque) : IFact;

/// <summary>What holds a prop on its shaft.</summary>
public enum Fastening
{
    /// <summary>A castle nut with a cotter pin through a slot, new each time.</summary>
    CastleNutCotterPin,

    /// <summary>A self-locking nut, new when it no longer grips.</summary>
    LockNut,

    /// <summary>A nut under a tab washer whose tabs are bent up.</summary>
    TabWasher,

    /// <summary>A pin that shears before the gears do.</summary>
    ShearPin,
}

/// <summary>States how an engine holds its prop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Fastening">What holds the nut, or the prop.</param>
/// <param name="TorqueLow">Torque, or the bottom of its range, in the unit given.</param>
/// <param name="TorqueHigh">Top of the range, in the unit given.</param>
/// <param name="TorqueUnit">Unit of both.</param>
/// <param name="MostSlots">Slots that a castle nut may be tightened on to line up, at most, 0 to 10.</param>
/// <param name="Retorque">Whether a re-torque after the first outing applies.</param>
public sealed record StateFastening(
    Stamp? Entry,
    string? Engine,
    [property: OneOf(typeof(Fastening))] string? Fastening,
    double? TorqueLow = null,
    double? TorqueHigh = null,
    [property: OneOf(typeof(TorqueUnit))] string? TorqueUnit = null,
    int? MostSlots = null,
    bool? Retorque = null) : ICommand<StateFastening>
{
    /// <inheritdoc/>
    public static string Kind => "fastening_stated";

    /// <inheritdoc/>
    public static StateFastening Example => new(Examples.At(202, "2026-05-01T08:30:00"), Examples.Engine, "castle_nut_cotter_pin", 34, 40, "newton_metre", 2, true);

    /// <inheritdoc/>
    public static string Summary => "States how an engine holds its prop: nut, pin or washer, torque, slots, re-torque.";

    /// <inheritdoc/>
    public static Decision Decide(StateFastening command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var fastening = check.OneOf<Fastening>(command.Fastening, "/fastening");
        var (low, high, unit) = Torque(check, command);
        var slots = check.MaybeWhole(command.MostSlots, "/mostSlots", 0, 10, "slots");
        if (command.MostSlots is not null && Words.TryRead<Fastening>(command.Fastening ?? "", out var known) && known != Engines.Fastening.CastleNutCotterPin)
            check.Refuse("/mostSlots", "no_slots", "only a castle nut is lined up by its slots: leave this out");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new FasteningStated(entry!, engine, fastening, low, high, unit, slots, command.Retorque))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }

    private static (double? Low, double? High, TorqueUnit? Unit) Torque(Check check, StateFastening command)
    {
        // The unit belongs to both ends: an end is checked together with it, and the unit alone is refused once.
        if (command.TorqueLow is null && command.TorqueHigh is not null)
        {
            check.Refuse("/torqueLow", "missing", "missing: a range has a bottom too; a single torque stands in torqueLow alone");
            return (null, null, null);
        }

        var (low, unit) = check.Torque(command.TorqueLow, command.TorqueUnit, "/torqueLow", "/torqueUnit");
        if (command.TorqueHigh is null || unit is null) return (low, null, unit);
        var most = CheckTorque.Most(unit.Value);
        var high = check.Maybe(command.TorqueHigh, "/torqueHigh", 1, most, command.TorqueUnit!);
        if (command.TorqueHigh < command.TorqueLow) check.Refuse("/torqueHigh", "range_upside_down", "the top of the range must not lie below its bottom");
        return (low, high, unit);
    }
}
