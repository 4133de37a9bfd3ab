using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop is used no more.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Why">Why.</param>
[StoredAs("prop_retired", 1)]
public sealed record PropRetired(Entry Entry, string Prop, PropRetirement Why) : IFact;

/// <summary>Why a prop is used no more.</summary>
public enum PropRetirement
{
    /// <summary>Worn past use.</summary>
    Worn,

    /// <summary>Struck past repair.</summary>
    Struck,

    /// <summary>Lost overboard, or nobody knows where it is.</summary>
    Lost,

    /// <summary>Eaten by corrosion.</summary>
    Corroded,
}

/// <summary>Retires a prop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Why">Why.</param>
public sealed record RetireProp(Stamp? Entry, string? Prop, [property: OneOf(typeof(PropRetirement))] string? Why) : ICommand<RetireProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_retired";

    /// <inheritdoc/>
    public static RetireProp Example => new(Examples.At(212, "2026-11-20T09:00:00"), Examples.Prop, "worn");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop is used no more, and why.";

    /// <inheritdoc/>
    public static Decision Decide(RetireProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var why = check.OneOf<PropRetirement>(command.Why, "/why");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropRetired(entry!, prop, why))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
