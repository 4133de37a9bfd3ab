using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Statistics;
using FleetWake.Statistics.Rates;
using FleetWake.Statistics.Spares;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>Props of one size, counted.</summary>
/// <param name="Fitted">Fitted now.</param>
/// <param name="Planned">Lines of prop plans that this size does for.</param>
/// <param name="AtHand">In store and fit to go on.</param>
/// <param name="ToMend">In store, but came off worn, struck or with a slipping hub and not mended since.</param>
/// <param name="AtShop">At a shop.</param>
public sealed record SizeCount(int Fitted, int Planned, int AtHand, int ToMend, int AtShop);

/// <summary>The spares of one size.</summary>
/// <param name="Size">The size.</param>
/// <param name="Count">How many there are, and where.</param>
/// <param name="FittedYears">Years that props of the size were fitted, added up: what the rate rests on [a].</param>
/// <param name="Wanted">How often another was wanted in them.</param>
/// <param name="PerFittedYear">That rate with the exact limits of Garwood [1/a]; null when none was ever fitted.</param>
/// <param name="Shrunk">The same drawn towards the other sizes [1/a]; what the need is reckoned with.</param>
/// <param name="ExpectedNeed">Props expected to be wanted over the lead time; null when none is fitted now.</param>
/// <param name="EnoughNow">Chance that what is at hand is enough for the lead time [1].</param>
/// <param name="BaseStock">Props in store, at shops and on order together that meet the service level.</param>
/// <param name="ToOrder">Base stock less what is at hand and at shops, at least none. What is on order is not on record.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record SpareNeed(
    PropSize Size,
    SizeCount Count,
    double FittedYears,
    int Wanted,
    Limits? PerFittedYear,
    Limits? Shrunk,
    double? ExpectedNeed,
    double? EnoughNow,
    int? BaseStock,
    int? ToOrder,
    string Sentence)
{
    internal static SpareNeed Of(PropSize size, SpareQuestion question, SizeCount count, Tally tally, ShrunkRate? rate)
    {
        var need = count.Fitted == 0 || rate is null ? null : NeedOver(rate.Rate, question.Years * count.Fitted);
        int? stock = need is null ? null : Statistics.Spares.BaseStock.ForReadyRate(need, question.ServiceLevel).Stock;
        int? order = stock is { } s ? Math.Max(0, s - count.AtHand - count.AtShop) : null;
        var told = new SpareNeed(
            size,
            count,
            tally.Exposure,
            tally.Count,
            Limits.Of(PoissonLimits.Rate(tally, Limits.Level)),
            count.Fitted == 0 ? null : Limits.Of(rate?.Rate),
            need?.Mean,
            need is null ? null : Statistics.Spares.BaseStock.Of(need, count.AtHand).ReadyRate,
            stock,
            order,
            "");
        return told with { Sentence = told.InWords(question) };
    }

    /// <summary>The need at a rate in doubt, its doubt cut to what <see cref="Need"/> takes; null when more is wanted than anybody stores.</summary>
    internal static Need? NeedOver(Estimate rate, double years)
    {
        var mean = rate.Value * years;
        if (!(mean <= Need.GreatestMean)) return null;
        var widest = Math.Min(5, mean > 0 ? Math.Sqrt(100 / mean) : 5); // relative
        return Need.During(rate with { StandardError = Math.Min(rate.StandardError, 0.999 * widest * rate.Value) }, years);
    }

    private string InWords(SpareQuestion question)
    {
        var beside = new[]
        {
            $"{Count.AtHand} at hand", Count.ToMend > 0 ? $"{Count.ToMend} to mend" : "", Count.AtShop > 0 ? $"{Count.AtShop} at a shop" : "",
        }.Where(p => p.Length > 0);
        var here = string.Join(", ", beside);
        if (ExpectedNeed is not { } need || BaseStock is not { } stock)
            return Count.Fitted > 0 ? $"{here}; more are wanted than can be reckoned" : $"{here}; none is fitted now, so no need is reckoned{(Count.Planned > 0 ? $" ({Count.Planned} planned)" : "")}.";
        var wanted = Wanted == 0 ? "none was wanted" : $"{Wanted} {(Wanted == 1 ? "was" : "were")} wanted";
        return $"{Count.Fitted} fitted; {wanted} in {FittedYears:0.0} fitted years; {need:0.00} expected in {question.LeadTimeDays:0} days. Hold {stock}: {here}{(ToOrder > 0 ? $", order {ToOrder}" : ", enough")}.";
    }
}

/// <summary>The need for a small part.</summary>
/// <param name="Part">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Kind">What it is; null while nobody stocked it.</param>
/// <param name="Uses">Records of its use.</param>
/// <param name="Pieces">Pieces used in them.</param>
/// <param name="Days">Days that they were counted over, from its first record to the end of the fleet's [d].</param>
/// <param name="UsesPerYear">Uses a year with the exact limits of Garwood [1/a]; null with no time counted over.</param>
/// <param name="ExpectedPieces">Pieces expected to be used over the lead time; null with too few uses.</param>
/// <param name="AtHand">Pieces at all docks; below zero it wants counting.</param>
/// <param name="BaseStock">Pieces that meet the service level: uses that are enough, each of the mean number of pieces.</param>
/// <param name="ToOrder">Base stock less what is at hand.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record PartNeed(
    string Part,
    string? Name,
    PartKind? Kind,
    int Uses,
    int Pieces,
    double Days,
    Limits? UsesPerYear,
    double? ExpectedPieces,
    int AtHand,
    int? BaseStock,
    int? ToOrder,
    string Sentence)
{
    /// <summary>Fewest uses that a need is told of; judgement, no source.</summary>
    public const int FewestUses = 3;

    internal static PartNeed? Of(PartRecord part, SpareQuestion question, DateTimeOffset? until)
    {
        var uses = part.Facts.OfType<PartUsed>().ToList();
        if (part.Facts.Count == 0 || until is not { } end) return null;
        var days = (end - part.Facts[0].Entry.Happened()).TotalDays;
        var tally = days < 1 ? default : new Tally(uses.Count, days / SpareQuestion.DaysPerYear);
        var rate = PoissonLimits.Rate(tally, Limits.Level);
        var (pieces, hand) = (uses.Sum(u => u.Quantity), part.Stock.Total());
        var need = uses.Count < FewestUses || rate is null ? null : SpareNeed.NeedOver(rate, question.Years);
        var each = uses.Count == 0 ? 0 : pieces / (double)uses.Count;
        int? stock = need is null ? null : (int)Math.Ceiling(Statistics.Spares.BaseStock.ForReadyRate(need, question.ServiceLevel).Stock * each);
        int? order = stock is { } s ? Math.Max(0, s - hand) : null;
        var name = part.Stock.Name ?? part.Stock.Part;
        var sentence = stock is null
            ? $"{name}: {(uses.Count == 0 ? "no use is" : $"{uses.Count} {(uses.Count == 1 ? "use is" : "uses are")}")} on record, too few to tell a need of ({FewestUses} are wanted); {hand} at hand."
            : $"{name}: {pieces} used in {days:0} days; {need!.Mean * each:0.0} expected in {question.LeadTimeDays:0} days. Hold {stock}: {hand} at hand{(order > 0 ? $", order {order}" : ", enough")}.";
        return new PartNeed(
            part.Stock.Part, part.Stock.Name, part.Stock.Kind, uses.Count, pieces, Math.Max(0, days), Limits.Of(rate), need?.Mean * each, hand, stock, order, sentence);
    }
}
