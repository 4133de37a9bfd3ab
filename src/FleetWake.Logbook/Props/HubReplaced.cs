using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop got a new hub or hub kit. It is the same prop with a new baseline; a slipping hub that an inspection saw is cleared by a "fit" after it, not by this.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="HubKit">Id of the hub kit, when told.</param>
[StoredAs("hub_replaced", 1)]
public sealed record HubReplaced(Entry Entry, string Prop, string? HubKit) : IFact;

/// <summary>Records that a prop got a new hub.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="HubKit">Id of the hub kit.</param>
public sealed record ReplaceHub(Stamp? Entry, string? Prop, string? HubKit = null) : ICommand<ReplaceHub>
{
    /// <inheritdoc/>
    public static string Kind => "hub_replaced";

    /// <inheritdoc/>
    public static ReplaceHub Example => new(Examples.At(105, "2026-06-20T16:20:00"), Examples.Prop, "hub-21");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop got a new hub or hub kit; an inspection still has to say fit after a slipping hub.";

    /// <inheritdoc/>
    public static Decision Decide(ReplaceHub command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var kit = check.MaybeId(command.HubKit, "/hubKit");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new HubReplaced(entry!, prop, kit))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
