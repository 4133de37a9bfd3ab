using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop went to a shop. What was wished is not what was done: the shop's own numbers come with what it did.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Shop">Id of the shop.</param>
/// <param name="Wish">What it was sent for.</param>
/// <param name="PitchWantedInches">Pitch asked for [in], with a repitch.</param>
/// <param name="DueBackOn">Date on which the shop said it would be back.</param>
[StoredAs("prop_sent_to_shop", 1)]
public sealed record PropSentToShop(Entry Entry, string Prop, string Shop, ShopWish Wish, double? PitchWantedInches, DateOnly? DueBackOn) : IFact;

/// <summary>What a prop is sent to a shop for.</summary>
public enum ShopWish
{
    /// <summary>Another pitch.</summary>
    Repitch,

    /// <summary>Straightened, welded or built up again.</summary>
    Repair,

    /// <summary>A hub or hub kit.</summary>
    Hub,

    /// <summary>Polished.</summary>
    Polish,
}

/// <summary>Sends a prop to a shop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Shop">Id of the shop.</param>
/// <param name="Wish">What it is sent for.</param>
/// <param name="PitchWantedInches">Pitch asked for [in]; with a repitch only.</param>
/// <param name="DueBackOn">Date on which it should be back, e.g. <c>2026-06-26</c>.</param>
public sealed record SendPropToShop(
    Stamp? Entry,
    string? Prop,
    string? Shop,
    [property: OneOf(typeof(ShopWish))] string? Wish,
    double? PitchWantedInches = null,
    string? DueBackOn = null) : ICommand<SendPropToShop>
{
    /// <inheritdoc/>
    public static string Kind => "prop_sent_to_shop";

    /// <inheritdoc/>
    public static SendPropToShop Example => new(Examples.At(204, "2026-06-12T11:00:00"), Examples.Prop, "fjord-props", "repitch", 13, "2026-06-26");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop went to a shop, what for and until when.";

    /// <inheritdoc/>
    public static Decision Decide(SendPropToShop command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var shop = check.Id(command.Shop, "/shop");
        var wish = check.OneOf<ShopWish>(command.Wish, "/wish");
        var pitch = check.Maybe(command.PitchWantedInches, "/pitchWantedInches", 3, 40, "in");
        if (command.PitchWantedInches is not null && Words.TryRead<ShopWish>(command.Wish ?? "", out var known) && known != ShopWish.Repitch)
            check.Refuse("/pitchWantedInches", "not_a_repitch", "a pitch is asked for with a repitch only: set the wish to repitch, or leave the pitch out");
        var due = check.DueDate(command.DueBackOn, entry, "/dueBackOn");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropSentToShop(entry!, prop, shop, wish, pitch, due))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
