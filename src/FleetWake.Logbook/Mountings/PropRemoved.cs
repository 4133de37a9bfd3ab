using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Mountings;

/// <summary>A prop came off: the end of a mounting.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">The tag of what came off, when it could be read.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
/// <param name="Why">Why it came off.</param>
[StoredAs("prop_removed", 1)]
public sealed record PropRemoved(Entry Entry, string Boat, Position Position, string? Prop, double? Hours, RemovalReason Why) : IMetered;

/// <summary>Why a prop came off.</summary>
public enum RemovalReason
{
    /// <summary>To look at shaft and seal, or to service.</summary>
    Service,

    /// <summary>It is worn.</summary>
    Worn,

    /// <summary>It hit something.</summary>
    Struck,

    /// <summary>To be repitched or repaired by a shop.</summary>
    Shop,

    /// <summary>Another size for season, load or use.</summary>
    OtherSize,

    /// <summary>The hub slips.</summary>
    HubSlip,
}

/// <summary>Records that a prop came off.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Why">Why it came off.</param>
/// <param name="Prop">The tag of what came off, when it could be read.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
public sealed record RemoveProp(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    [property: OneOf(typeof(RemovalReason))] string? Why,
    string? Prop = null,
    double? Hours = null) : ICommand<RemoveProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_removed";

    /// <inheritdoc/>
    public static RemoveProp Example => new(Examples.At(9, "2026-06-12T09:00:00"), Examples.Boat, "single", "shop", Examples.Prop, 298);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop came off, and why.";

    /// <inheritdoc/>
    public static Decision Decide(RemoveProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var why = check.OneOf<RemovalReason>(command.Why, "/why");
        var prop = command.Prop is null ? null : check.Id(command.Prop, "/prop");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() =>
        {
            List<Placed> facts = [new(StreamName.Boat(boat), new PropRemoved(entry!, boat, position, prop, hours, why))];
            List<Reference> references = [new("/boat", StreamName.Boat(boat))];
            if (prop is not null)
            {
                facts.Add(new Placed(StreamName.Prop(prop), new PropReturned(entry!, prop, boat, position)));
                references.Add(new Reference("/prop", StreamName.Prop(prop)));
            }

            return new Decision.Keep(facts, references);
        });
    }
}
