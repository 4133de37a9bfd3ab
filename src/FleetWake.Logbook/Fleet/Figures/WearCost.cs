using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;
using FleetWake.Statistics.Life;
using PropCost = FleetWake.Statistics.Life.PropCost;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>What a hundred engine hours of a prop cost, by material: bought, mended, and what its strikes did to the lower unit.</summary>
/// <param name="Currency">The currency of every amount, the one that most props have all theirs in; null when nothing is priced.</param>
/// <param name="ByMaterial">By material.</param>
/// <param name="Props">The fleet's own props that ran, whose hours are known.</param>
/// <param name="WithoutPrice">Those of them with no price told and none on the price list: in no figure.</param>
/// <param name="OtherCurrency">Those with an amount in another currency: in no figure, for nobody told the rate.</param>
/// <param name="WithoutHours">Props that ran with hours nobody knows, or found fitted: in no figure.</param>
/// <param name="JobsWithoutPrice">Shop jobs in the figures that nobody billed and no list prices: the cost is more.</param>
/// <param name="ClaimsWithoutCost">Claims in the figures that nobody costed: the cost is more.</param>
/// <param name="Level">Level of all limits [1].</param>
/// <param name="Sentence">The figure in words.</param>
public sealed record WearCost(
    string? Currency,
    IReadOnlyList<MaterialCost> ByMaterial,
    int Props,
    int WithoutPrice,
    int OtherCurrency,
    int WithoutHours,
    int JobsWithoutPrice,
    int ClaimsWithoutCost,
    double Level,
    string Sentence)
{
    /// <summary>Reckons what a fleet's props cost.</summary>
    public static WearCost Of(FleetRecord fleet)
    {
        var lives = PropLives.Of(fleet).ByMaterial.ToDictionary(g => g.Group, g => g.Weibull?.MeanHours, StringComparer.Ordinal);
        var own = fleet.Props.Where(p => p.Mountings.Count > 0 && p.Life.Registered is not null && !p.Facts.Any(f => f is LoanerTaken)).ToList();
        var ran = own.Select(p => (Prop: p, Hours: HoursOf(p))).Where(p => p.Hours is not null)
            .Select(p => (p.Prop, Hours: p.Hours!.Value, Bill: PropBill.Of(p.Prop, fleet.Office))).ToList();
        var priced = ran.Where(p => p.Bill.Price is not null).ToList();
        var currency = priced.Select(p => Single(p.Bill)).OfType<string>().GroupBy(c => c, StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault()?.Key;
        var counted = priced.Where(p => Single(p.Bill) == currency).ToList();
        var groups = counted.GroupBy(p => p.Prop.Life.Registered!.Material).OrderBy(g => g.Key)
            .Select(g => MaterialCost.Of(g.Key, currency!, [.. g.Select(p => (p.Prop, p.Hours, p.Bill))], lives.GetValueOrDefault(Entries.Words.Of(g.Key)))).ToList();
        var cost = new WearCost(
            currency, groups, ran.Count, ran.Count - priced.Count, priced.Count - counted.Count, own.Count - ran.Count,
            counted.Sum(p => p.Bill.JobsWithoutPrice), counted.Sum(p => p.Bill.ClaimsWithoutCost), Limits.Level, "");
        return cost with { Sentence = cost.InWords() };
    }

    /// <summary>The one currency of a bill; null when it has several.</summary>
    private static string? Single(PropBill bill) => bill.Amounts.Select(m => m.Currency).Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : null;

    /// <summary>Hours of all mountings of a prop [h]; null when those of one are not known, or it was found fitted at first.</summary>
    private static double? HoursOf(PropRecord prop)
    {
        if (prop.Mountings[0].Span.Found) return null;
        var runs = prop.Mountings.Select(m => PropLifetime.Run(prop, m.Boat, m.Span)).ToList();
        var known = runs.Zip(prop.Mountings).All(r => r.First is not null || r.Second.Span.To is null);
        return known && runs.Any(r => r is not null) ? runs.Sum(r => r?.Hours ?? 0) : null;
    }

    private static string Have(int count) => count == 1 ? "has" : "have";

    private string InWords()
    {
        if (Props == 0) return "No prop with known hours is on record, so no cost is told.";
        List<string> aside = [];
        if (WithoutPrice > 0) aside.Add($"{WithoutPrice} of {Props} props {Have(WithoutPrice)} no price");
        if (OtherCurrency > 0) aside.Add($"{OtherCurrency} {Have(OtherCurrency)} amounts in another currency, which are not added");
        if (WithoutHours > 0) aside.Add($"{WithoutHours} more {Have(WithoutHours)} hours that nobody knows");
        if (JobsWithoutPrice > 0) aside.Add($"{JobsWithoutPrice} shop {(JobsWithoutPrice == 1 ? "job has" : "jobs have")} no price, so the cost is more");
        if (ClaimsWithoutCost > 0) aside.Add($"{ClaimsWithoutCost} {(ClaimsWithoutCost == 1 ? "claim is" : "claims are")} not costed, so the cost is more");
        var told = Currency is null ? "Prices are not set, so no cost is told" : $"Costs of {ByMaterial.Sum(m => m.Props)} props in {Currency}";
        return aside.Count == 0 ? told + "." : $"{told}: {string.Join("; ", aside)}.";
    }
}

/// <summary>What the props of one material cost. Amounts are in the currency of the figure.</summary>
/// <param name="Material">The material.</param>
/// <param name="Props">Props counted.</param>
/// <param name="EngineHours">Engine hours that they ran [h].</param>
/// <param name="Bought">Their prices; of a prop still in use the share that is used up, when it is known how long they last.</param>
/// <param name="ShopWork">Shops and freight.</param>
/// <param name="StrikeDamage">What claims on their strikes cost beyond that: lower units above all.</param>
/// <param name="Recovered">What hirers paid of it; not taken off.</param>
/// <param name="PerHundredHours">Cost of 100 engine hours; null with fewer props than are wanted.</param>
/// <param name="MeanLifeHours">Mean life by which prices are shared out [h]; null when too few have ended to know it, and the whole price is charged.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record MaterialCost(
    PropMaterial Material,
    int Props,
    double EngineHours,
    decimal Bought,
    decimal ShopWork,
    decimal StrikeDamage,
    decimal Recovered,
    Limits? PerHundredHours,
    double? MeanLifeHours,
    string Sentence)
{
    /// <summary>Fewest props that a cost is told of: its interval was simulated with no fewer (see <see cref="CostPerHundredHours"/>).</summary>
    public const int FewestProps = 3;

    internal static MaterialCost Of(PropMaterial material, string currency, IReadOnlyList<(PropRecord Prop, double Hours, PropBill Bill)> props, double? meanLife)
    {
        var used = props.Select(p => UsedUp(p.Prop, p.Hours, p.Bill.Price!.Amount, meanLife)).ToList();
        var (shop, strikes) = (props.Sum(p => Sum(p.Bill.ShopWork)), props.Sum(p => Sum(p.Bill.StrikeDamage)));
        var costs = props.Select((p, i) => new PropCost((double)(used[i] + Sum(p.Bill.ShopWork) + Sum(p.Bill.StrikeDamage)), p.Hours)).ToList();
        var cost = new MaterialCost(
            material, props.Count, props.Sum(p => p.Hours), used.Sum(), shop, strikes, props.Sum(p => Sum(p.Bill.Recovered)),
            props.Count < FewestProps ? null : Limits.Of(CostPerHundredHours.Of(costs, Limits.Level)), meanLife, "");
        return cost with { Sentence = cost.InWords(currency) };
    }

    /// <summary>The price, or the share of it that a prop in use has used up.</summary>
    private static decimal UsedUp(PropRecord prop, double hours, decimal price, double? meanLife) =>
        meanLife is not { } life || prop.Retired is not null || PropLifetime.WornForGood(prop, prop.Mountings.Count - 1)
            ? price
            : Math.Round(price * (decimal)Math.Min(1, hours / life), 2);

    private static decimal Sum(IEnumerable<Money> amounts) => amounts.Sum(m => m.Amount);

    private string InWords(string currency)
    {
        var name = Words.Of(Material);
        if (PerHundredHours is not { } cost) return $"{Props} priced {name} {(Props == 1 ? "prop" : "props")}: too few to tell a cost of, {FewestProps} are wanted.";
        var high = cost.High is { } h ? $"to {h:0.0}" : "or more";
        var price = MeanLifeHours is null ? "; the whole price of each is charged, for nobody knows yet how long they last, and that is too dear while they are young" : "";
        var back = Recovered > 0 ? $"; hirers paid {Recovered:0} of it" : "";
        return $"{cost.Value:0.0} {currency} per 100 engine hours of {name} ({cost.Low:0.0} {high}), from {Props} props and {EngineHours:0} h: bought {Bought:0}, shops {ShopWork:0}, strike damage {StrikeDamage:0}{back}{price}.";
    }
}
