using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A spare prop lies at a dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Dock">Id of the dock.</param>
[StoredAs("prop_stored", 1)]
public sealed record PropStored(Entry Entry, string Prop, string Dock) : IFact;

/// <summary>Records where a spare lies.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Dock">Id of the dock.</param>
public sealed record StoreProp(Stamp? Entry, string? Prop, string? Dock) : ICommand<StoreProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_stored";

    /// <inheritdoc/>
    public static StoreProp Example => new(Examples.At(209, "2026-06-24T11:00:00"), Examples.Prop, "north-pier");

    /// <inheritdoc/>
    public static string Summary => "Records at which dock a spare prop lies.";

    /// <inheritdoc/>
    public static Decision Decide(StoreProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var dock = check.Id(command.Dock, "/dock");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropStored(entry!, prop, dock))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
