using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Mountings;

/// <summary>Somebody looked and found a prop fitted. It says what is there, not since when nor how it was fitted: no mounting sheet goes with it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">The prop's tag; null when it could not be read, or it has none.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("found_fitted", 1)]
public sealed record FoundFitted(Entry Entry, string Boat, Position Position, string? Prop, double? Hours) : IMetered
{
    /// <summary>Stands for the tag of a prop that nobody knows. No id: an id holds no blank.</summary>
    public const string NotKnown = "not known";
}

/// <summary>Records that a prop was found fitted.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">The prop's tag; left out when it could not be read, or it has none.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
public sealed record FindFitted(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    string? Prop = null,
    double? Hours = null) : ICommand<FindFitted>
{
    /// <inheritdoc/>
    public static string Kind => "found_fitted";

    /// <inheritdoc/>
    public static FindFitted Example => new(Examples.At(111, "2026-07-02T08:00:00"), Examples.Boat, "single", Examples.Prop, 312);

    /// <inheritdoc/>
    public static string Summary => "Records which prop was found fitted, or that one was whose tag nobody could read.";

    /// <inheritdoc/>
    public static Decision Decide(FindFitted command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var prop = check.MaybeId(command.Prop, "/prop");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() =>
        {
            List<Placed> facts = [new(StreamName.Boat(boat), new FoundFitted(entry!, boat, position, prop, hours))];
            List<Reference> references = [new("/boat", StreamName.Boat(boat))];
            if (prop is not null)
            {
                facts.Add(new Placed(StreamName.Prop(prop), new PropFound(entry!, prop, boat, position)));
                references.Add(new Reference("/prop", StreamName.Prop(prop)));
            }

            return new Decision.Keep(facts, references);
        });
    }
}
