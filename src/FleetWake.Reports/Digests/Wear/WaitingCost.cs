using System.Globalization;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What it costs not to decide, by the operator's own prices and nothing else.</summary>
internal static class WaitingCost
{
    /// <summary>What is said where a price is missing.</summary>
    public const string NotSet = "prices not set";

    private const int WeekDays = 7;

    /// <summary>Whether a boat loses hire until what is the matter with it is settled: one that is laid up has none to lose.</summary>
    /// <param name="finding">The boat.</param>
    /// <param name="attentions">What is the matter with it.</param>
    public static bool LosesHire(BoatFinding finding, IReadOnlyList<Attention> attentions) => !finding.IsLaidUp() && attentions.Any(a => a.Blocks);

    /// <summary>The cost of waiting with a boat; empty where waiting has no price of its own, as while it is laid up.</summary>
    /// <param name="finding">The boat.</param>
    /// <param name="attentions">What is the matter with it.</param>
    /// <param name="news">The operator's prices.</param>
    /// <param name="day">The day whose prices count.</param>
    public static string Of(BoatFinding finding, IReadOnlyList<Attention> attentions, WearNews news, DateOnly day)
    {
        if (finding.IsLaidUp()) return "";
        var hire = news.Price(day, PricedThing.HireDay);
        if (LosesHire(finding, attentions)) return hire is null ? $"Cost of waiting: {NotSet} (a day of hire)." : $"Cost of waiting: {Text(hire)} for each day of hire lost, {Text(hire with { Amount = hire.Amount * WeekDays })} a week.";
        if (!attentions.Any(a => a.Kind is AttentionKind.OutsideBand or AttentionKind.LeavingBand or AttentionKind.Drifting or AttentionKind.OutOfLine)) return "";

        // What an over-revved engine costs nobody has on record; what it takes to mend a prop in time, and too late, the operator has.
        var (repitch, prop) = (news.Price(day, PricedThing.ShopRepitch), news.Price(day, PricedThing.NewProp));
        return (repitch, prop) switch
        {
            (null, null) => $"Cost of waiting: {NotSet} (shop work, a new prop).",
            ({ } r, { } p) => $"Cost of waiting: shop work is {Text(r)} by your price, a prop worn past it {Text(p)}; what an engine outside its band suffers has no price on record.",
            ({ } r, null) => $"Cost of waiting: shop work is {Text(r)} by your price; a new prop: {NotSet}.",
            (null, { } p) => $"Cost of waiting: a new prop is {Text(p)} by your price; shop work: {NotSet}.",
        };
    }

    /// <summary>An amount as it is written.</summary>
    public static string Text(Money money) => string.Create(CultureInfo.InvariantCulture, $"{money.Amount:#,##0.00}\u00A0{money.Currency}");
}
