using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Office;

/// <summary>The operator set a price. It counts from the day of the record until another is set for the same thing.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="What">What it is the price of.</param>
/// <param name="Item">Which of them: id of the part, the shop or the prop size; null for any.</param>
/// <param name="Amount">The price, in <paramref name="Currency"/>.</param>
/// <param name="Currency">Currency by ISO 4217.</param>
[StoredAs("price_set", 1)]
public sealed record PriceSet(Entry Entry, PricedThing What, string? Item, decimal Amount, string Currency) : IFact;

/// <summary>What has a price.</summary>
public enum PricedThing
{
    /// <summary>An hour of a mechanic's work.</summary>
    LabourHour,

    /// <summary>A day of hire.</summary>
    HireDay,

    /// <summary>A repitch at a shop.</summary>
    ShopRepitch,

    /// <summary>A repair at a shop.</summary>
    ShopRepair,

    /// <summary>A new prop.</summary>
    NewProp,

    /// <summary>One piece of a small part.</summary>
    Part,
}

/// <summary>Sets a price.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="What">What it is the price of.</param>
/// <param name="Amount">The price, in the currency given.</param>
/// <param name="Currency">Currency by ISO 4217, three capital letters.</param>
/// <param name="Item">Which of them: id of the part, the shop or the prop size; needed for a part.</param>
public sealed record SetPrice(
    Stamp? Entry,
    [property: OneOf(typeof(PricedThing))] string? What,
    decimal? Amount,
    string? Currency,
    string? Item = null) : ICommand<SetPrice>
{
    /// <inheritdoc/>
    public static string Kind => "price_set";

    /// <inheritdoc/>
    public static SetPrice Example => new(Examples.At(246, "2026-05-01T07:20:00"), "shop_repitch", 1450.50m, "NOK", "fjord-props");

    /// <inheritdoc/>
    public static string Summary => "Sets the price of labour, a hire day, shop work, a new prop or a part.";

    /// <inheritdoc/>
    public static Decision Decide(SetPrice command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var what = check.OneOf<PricedThing>(command.What, "/what");
        var item = check.MaybeId(command.Item, "/item");
        if (command.Item is null && command.What == Words.Of(PricedThing.Part))
            check.Refuse("/item", "missing", "missing: say of which part it is the price");
        var (amount, currency) = check.Amount(command.Amount, command.Currency);
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new PriceSet(entry!, what, item, amount, currency))], []));
    }
}
