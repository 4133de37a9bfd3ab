using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop came into the fleet.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Condition">What state it came in.</param>
[StoredAs("prop_acquired", 1)]
public sealed record PropAcquired(Entry Entry, string Prop, PropCondition Condition) : IFact;

/// <summary>What state a prop came in.</summary>
public enum PropCondition
{
    /// <summary>Never used.</summary>
    New,

    /// <summary>Used before.</summary>
    Used,

    /// <summary>Used before and rebuilt by a shop.</summary>
    Rebuilt,
}

/// <summary>Records that a prop came into the fleet.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Condition">What state it came in.</param>
public sealed record AcquireProp(Stamp? Entry, string? Prop, [property: OneOf(typeof(PropCondition))] string? Condition) : ICommand<AcquireProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_acquired";

    /// <inheritdoc/>
    public static AcquireProp Example => new(Examples.At(6, "2026-05-01T08:10:00"), Examples.Prop, "new");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop came into the fleet, and in what state.";

    /// <inheritdoc/>
    public static Decision Decide(AcquireProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var condition = check.OneOf<PropCondition>(command.Condition, "/condition");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropAcquired(entry!, prop, condition))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
