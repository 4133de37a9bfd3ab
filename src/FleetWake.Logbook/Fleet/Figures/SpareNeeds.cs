using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Statistics.Rates;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>What is asked of the spares.</summary>
/// <param name="LeadTimeDays">Days from ordering a prop to having it [d], 1 to 730.</param>
/// <param name="ServiceLevel">Share of the time in which nobody is to wait for one [1], 0.5 to 0.999.</param>
/// <param name="SeasonFactor">How much busier the time ahead is than the year's average [1], 0 to 10: 2 in high season, 0.2 in winter.</param>
public sealed record SpareQuestion(double LeadTimeDays = 42, double ServiceLevel = 0.95, double SeasonFactor = 1)
{
    /// <summary>Days in a year, in which rates are told.</summary>
    internal const double DaysPerYear = 365.25;

    /// <summary>The lead time as years of the average season.</summary>
    internal double Years => LeadTimeDays / DaysPerYear * SeasonFactor;

    /// <summary>Throws when something is out of range.</summary>
    internal void Check()
    {
        if (LeadTimeDays is not (>= 1 and <= 730)) throw new ArgumentOutOfRangeException(nameof(LeadTimeDays), LeadTimeDays, "Must lie within 1 and 730 days.");
        if (ServiceLevel is not (>= 0.5 and <= 0.999)) throw new ArgumentOutOfRangeException(nameof(ServiceLevel), ServiceLevel, "Must lie within 0.5 and 0.999.");
        if (SeasonFactor is not (>= 0 and <= 10)) throw new ArgumentOutOfRangeException(nameof(SeasonFactor), SeasonFactor, "Must lie within 0 and 10.");
    }
}

/// <summary>How many spare props of each size, and small parts of each kind, the fleet should hold.</summary>
/// <param name="Question">Lead time, service level and season.</param>
/// <param name="Until">Last day of the record, which stands for today; null when nothing is on record.</param>
/// <param name="Sizes">Sizes that are fitted, planned or in store.</param>
/// <param name="Parts">Small parts.</param>
/// <param name="SizeNotTold">Fitted props of no known size: in no figure.</param>
/// <param name="Level">Level of all limits [1].</param>
/// <param name="Sentence">The figure in words.</param>
public sealed record SpareNeeds(
    SpareQuestion Question, DateOnly? Until, IReadOnlyList<SpareNeed> Sizes, IReadOnlyList<PartNeed> Parts, int SizeNotTold, double Level, string Sentence)
{
    /// <summary>Reckons what a fleet should hold.</summary>
    /// <remarks>
    /// A spare is wanted whenever a fitted prop comes off worn, struck, with a slipping hub or for the shop, or is retired
    /// or lost while fitted. The rate is counted over the days props of the size were fitted, drawn towards that of the other sizes,
    /// and goes on for as many as are fitted now. What wears hours does so through them: give the season.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The question is out of range.</exception>
    public static SpareNeeds Of(FleetRecord fleet, SpareQuestion? question = null)
    {
        question ??= new SpareQuestion();
        question.Check();
        var stays = fleet.Props.SelectMany(p => FittedStay.Of(p, fleet.Until)).ToList();
        var plans = fleet.Boats.Where(b => !b.Facts.Any(f => f is BoatRetired)).SelectMany(b => b.PropPlan).Select(PropSize.Of).ToList();
        var stock = fleet.Props.Where(p => p.Life.Loan is null).Select(p => (Size: PropSize.Of(p), p.Life)).Where(p => p.Size is not null).ToList();
        var known = stays.Select(s => s.Size).OfType<PropSize>()
            .Concat(stock.Where(p => p.Life.Place.Standing is PropStanding.Spare or PropStanding.AtShop).Select(p => p.Size!)).ToHashSet();
        List<PropSize> sizes =
        [
            .. known.Concat(plans.Where(plan => !known.Any(s => s.DoesFor(plan)))).Distinct()
                .OrderBy(s => s.DiameterInches).ThenBy(s => s.PitchInches).ThenBy(s => s.Material).ThenBy(s => s.Blades).ThenBy(s => s.Rotation),
        ];
        var tallies = sizes.Select(s => Tally(stays.Where(stay => stay.Size == s))).ToList();
        var rates = RateShrinkage.Of(tallies, Limits.Level)?.Units;
        List<SpareNeed> needs =
        [
            .. sizes.Select((size, i) => SpareNeed.Of(
                size,
                question,
                new SizeCount(
                    stays.Count(s => s.Size == size && s.Now),
                    plans.Count(size.DoesFor),
                    stock.Count(p => p.Size == size && p.Life is { Place.Standing: PropStanding.Spare, CameOff: null }),
                    stock.Count(p => p.Size == size && p.Life is { Place.Standing: PropStanding.Spare, CameOff: not null }),
                    stock.Count(p => p.Size == size && p.Life.Place.Standing == PropStanding.AtShop)),
                tallies[i],
                rates?[i])).Where(n => n.Count != new SizeCount(0, 0, 0, 0, 0)),
        ];
        var order = needs.Where(n => n.ToOrder > 0).ToList();
        return new SpareNeeds(
            question,
            fleet.Until is { } until ? DateOnly.FromDateTime(until.DateTime) : null,
            needs,
            [.. fleet.Parts.Select(p => PartNeed.Of(p, question, fleet.Until)).OfType<PartNeed>()],
            stays.Count(s => s.Now && s.Size is null),
            Limits.Level,
            needs.Count == 0 ? "No prop of a known size is on record, so no spares are reckoned."
                : order.Count == 0 ? $"By the record, what is in store is enough for {question.LeadTimeDays:0} days at {100 * question.ServiceLevel:0.#} %."
                : $"To have spares enough for {question.LeadTimeDays:0} days at {100 * question.ServiceLevel:0.#} %: {string.Join("; ", order.Select(n => $"{n.ToOrder} of {n.Size}"))}.");
    }

    private static Tally Tally(IEnumerable<FittedStay> stays)
    {
        var (wanted, days) = stays.Aggregate((Wanted: 0, Days: 0.0), (sum, s) => (sum.Wanted + (s.WantedAnother ? 1 : 0), sum.Days + s.Days));
        return days < 1e-3 ? default : new Tally(wanted, days / SpareQuestion.DaysPerYear);
    }
}

/// <summary>The time that a prop was fitted, and whether it ended so that another was wanted.</summary>
/// <param name="Size">Its size then; null while it is not registered.</param>
/// <param name="Days">How long [d]: until it came off, its boat left the fleet, or the record ends.</param>
/// <param name="Now">It is still fitted, on a boat of the fleet.</param>
/// <param name="WantedAnother">Another was wanted at its end.</param>
internal sealed record FittedStay(PropSize? Size, double Days, bool Now, bool WantedAnother)
{
    public static IEnumerable<FittedStay> Of(PropRecord prop, DateTimeOffset? until)
    {
        for (var i = 0; i < prop.Mountings.Count; i++)
        {
            var (boat, span) = prop.Mountings[i];
            var left = boat.Facts.OfType<BoatRetired>().FirstOrDefault()?.Entry;
            var gone = i == prop.Mountings.Count - 1 && prop.Retired is { } retired && prop.Order.Compare(retired.Entry, span.Fitted.Entry) >= 0 ? retired.Entry : null;
            var end = new[] { span.To, left, span.Holds(gone ?? span.Fitted.Entry) ? gone : null }.OfType<Entry>().OrderBy(e => e, prop.Order).FirstOrDefault();
            var days = ((end?.Happened() ?? until ?? span.Fitted.Entry.Happened()) - span.Fitted.Entry.Happened()).TotalDays;
            var why = PropRecord.CameOff((boat, span));
            yield return new FittedStay(
                PropSize.Of(prop, span.Fitted.Entry),
                Math.Max(0, days),
                end is null,
                why is RemovalReason.Worn or RemovalReason.Struck or RemovalReason.HubSlip or RemovalReason.Shop || gone is not null);
        }
    }
}
