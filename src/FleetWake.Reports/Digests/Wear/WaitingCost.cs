using System.Globalization;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Operators;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What it costs not to decide, by the operator's own prices and nothing else.</summary>
internal static class WaitingCost
{
    /// <summary>What is said where a price is missing.</summary>
    public const string NotSet = "prices not set";

    private const int WeekDays = 7;

    /// <summary>What the boats that stay lose together, and what releasing them takes; empty when none stays.</summary>
    /// <param name="kept">The boats that stay.</param>
    /// <param name="news">The operator's prices.</param>
    /// <param name="day">The day whose prices count.</param>
    public static string Together(IReadOnlyList<KeptBoat> kept, WearNews news, DateOnly day)
    {
        if (kept.Count == 0) return "";

        // Nobody hires out a boat that is on no list.
        var fleet = kept.Count(k => k.Finding.Registered is not null);
        var who = fleet == kept.Count ? fleet == 1 ? "It loses" : "They lose" : $"Of these the {fleet} registered {(fleet == 1 ? "loses" : "lose")}";
        var lost = fleet == 0 ? "" : news.Price(day, PricedThing.HireDay) is { } hire
            ? $"{who} up to {Text(hire with { Amount = hire.Amount * fleet })} of hire a day, {Text(hire with { Amount = hire.Amount * fleet * WeekDays })} a week. "
            : $"{who} hire: {NotSet}. ";
        var minutes = kept.Sum(k => k.Work?.Minutes ?? 0);
        var labour = news.Price(day, PricedThing.LabourHour) is { } hour ? $" ({Text(hour with { Amount = decimal.Round(hour.Amount * minutes / 60, 2) })})" : "";
        return $"{lost}{(minutes == 0 ? "" : $"Releasing {(kept.Count == 1 ? "it" : "them")} is about {Duration(minutes)} of work{labour}, parts apart.")}".Trim();
    }

    /// <summary>The cost of waiting with a matter of band or drift.</summary>
    /// <param name="kind">The most urgent of the boat's matters.</param>
    /// <param name="position">The position that it is of.</param>
    /// <param name="news">The operator's prices.</param>
    /// <param name="day">The day whose prices count.</param>
    public static string Of(AttentionKind kind, PositionFinding? position, WearNews news, DateOnly day) => kind switch
    {
        AttentionKind.OutsideBand when position?.Mounting?.Band.State == BandState.BelowBottom => "Cost of waiting: it lugs, and what that does to an engine has no price on record.",
        AttentionKind.OutsideBand or AttentionKind.LeavingBand or AttentionKind.Drifting => $"Cost of waiting: {Worn(news, day)}",
        AttentionKind.OutOfLine => "Cost of waiting: not known before somebody looked.",
        _ => "",
    };

    /// <summary>A prop that is mended in time costs the shop's work, one that is worn past it a new prop: the difference is what waiting may cost.</summary>
    private static string Worn(WearNews news, DateOnly day) => (news.Prices(day, PricedThing.ShopRepitch), news.Prices(day, PricedThing.NewProp)) switch
    {
        (null, null) => $"{NotSet} (shop work, a new prop).",
        ({ } work, null) => $"{NotSet} (a new prop); shop work is {Text(work)}.",
        (null, { } prop) => $"{NotSet} (shop work); a new prop is {Text(prop)}.",
        ({ } work, { } prop) when prop.High.Currency != work.High.Currency => $"a new prop ({Text(prop)}) in place of shop work ({Text(work)}).",
        ({ } work, { } prop) when prop.High.Amount <= work.Low.Amount => $"none by your prices: a new prop ({Text(prop)}) is no dearer than shop work ({Text(work)}).",
        ({ } work, { } prop) => $"up to {Text(prop.High with { Amount = prop.High.Amount - work.Low.Amount })}, a new prop ({Text(prop)}) in place of shop work ({Text(work)}).",
    };

    /// <summary>An amount as it is written.</summary>
    public static string Text(Money money) => string.Create(CultureInfo.InvariantCulture, $"{money.Amount:#,##0.00}\u00A0{money.Currency}");

    private static string Text((Money Low, Money High) prices) =>
        prices.Low.Amount == prices.High.Amount ? Text(prices.Low) : string.Create(CultureInfo.InvariantCulture, $"{prices.Low.Amount:#,##0.00} to {Text(prices.High)}");

    private static string Duration(int minutes) => minutes < 60 ? $"{minutes} min" : minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
}
