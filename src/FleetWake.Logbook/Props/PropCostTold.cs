using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Somebody told what a prop cost: one bill, or one line of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="For">What was paid for.</param>
/// <param name="Amount">The amount, in <paramref name="Currency"/>.</param>
/// <param name="Currency">Currency by ISO 4217, e.g. <c>NOK</c>.</param>
[StoredAs("prop_cost_told", 1)]
public sealed record PropCostTold(Entry Entry, string Prop, PropCost For, decimal Amount, string Currency) : IFact;

/// <summary>What is paid for with a prop.</summary>
public enum PropCost
{
    /// <summary>The prop itself.</summary>
    Purchase,

    /// <summary>A shop's work.</summary>
    Shop,

    /// <summary>Sending it there and back.</summary>
    Freight,
}

/// <summary>Tells what a prop cost.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="For">What was paid for.</param>
/// <param name="Amount">The amount, in the currency given.</param>
/// <param name="Currency">Currency by ISO 4217, three capital letters.</param>
public sealed record TellPropCost(
    Stamp? Entry,
    string? Prop,
    [property: OneOf(typeof(PropCost))] string? For,
    decimal? Amount,
    string? Currency) : ICommand<TellPropCost>
{
    /// <inheritdoc/>
    public static string Kind => "prop_cost_told";

    /// <inheritdoc/>
    public static TellPropCost Example => new(Examples.At(208, "2026-06-24T10:30:00"), Examples.Prop, "shop", 1450.50m, "NOK");

    /// <inheritdoc/>
    public static string Summary => "Records what was paid for a prop, its shop work or its freight.";

    /// <inheritdoc/>
    public static Decision Decide(TellPropCost command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var paidFor = check.OneOf<PropCost>(command.For, "/for");
        var (amount, currency) = check.Amount(command.Amount, command.Currency);
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropCostTold(entry!, prop, paidFor, amount, currency))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
