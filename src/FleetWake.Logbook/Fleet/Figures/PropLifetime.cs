using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>How long one prop lasted, or has lasted so far, in engine hours while it was fitted.</summary>
/// <param name="Prop">The tag.</param>
/// <param name="Material">What it is made of; null while it is not registered.</param>
/// <param name="Water">The water in which most of its hours were run; null while its boats are not registered.</param>
/// <param name="EngineHours">Engine hours from its first mounting on [h], above zero.</param>
/// <param name="End">How that ended.</param>
/// <param name="ToldNew">Somebody told that it came new; else it is taken as new because its first mounting is on record.</param>
public sealed record PropLifetime(string Prop, PropMaterial? Material, WaterType? Water, double EngineHours, LifeEnd End, bool ToldNew)
{
    /// <summary>A prop that was found fitted later than this after it came off may have run unseen [d]; judgement, no source.</summary>
    private const double UnseenDays = 7;

    /// <summary>A prop's lifetime, or why it has none that can be used.</summary>
    /// <remarks>
    /// Worn is worn when the prop was taken off for it and did not go on again as it was: a shop that mends it makes
    /// another prop of it for this question, and its hours afterwards are not counted. Nothing else that takes a prop off ends a life.
    /// </remarks>
    internal static (PropLifetime? Lifetime, LifeLeftOut? LeftOut) Of(PropRecord prop, IReadOnlyDictionary<string, IReadOnlyList<HomeSpan>> homes)
    {
        if (prop.Facts.Any(f => f is LoanerTaken)) return (null, LifeLeftOut.OnLoan);
        if (prop.Life.Condition is PropCondition.Used or PropCondition.Rebuilt) return (null, LifeLeftOut.CameUsed);
        if (prop.Mountings.Count == 0) return (null, LifeLeftOut.NeverFitted);
        if (prop.Mountings[0].Span.Found) return (null, LifeLeftOut.FoundFitted);

        var waters = new SortedDictionary<WaterType, double>();
        var (hours, followed, end) = (0.0, true, LifeEnd.InUse);
        for (var i = 0; i < prop.Mountings.Count && followed; i++)
        {
            var (boat, span) = prop.Mountings[i];
            var run = span.Found && Unseen(prop.Mountings[i - 1].Span.To, span.Fitted.Entry) ? null : Run(prop, boat, span);
            if (run is null || Unseen(span.Fitted.Entry, run.From))
            {
                followed = false; // it is known to have gone on until here
                break;
            }

            hours += run.Hours;
            foreach (var home in homes[boat.Boat])
                if (home.Water is { } water) waters[water] = waters.GetValueOrDefault(water) + run.In(home);
            if (WornForGood(prop, i)) (followed, end) = (false, LifeEnd.Worn);
        }

        if (!(hours > 0)) return (null, LifeLeftOut.HoursNotKnown);
        if (followed && prop.Retired is { } retired) end = EndOf(retired.Why);
        return (new PropLifetime(
            prop.Life.Prop,
            prop.Life.Registered?.Material,
            waters.Count == 0 ? null : waters.MaxBy(w => w.Value).Key,
            hours,
            end,
            prop.Life.Condition == PropCondition.New), null);
    }

    /// <summary>Whether it has ended for a question.</summary>
    /// <param name="question">What ends a life.</param>
    public bool HasEnded(LifeQuestion question) =>
        End is LifeEnd.Worn or LifeEnd.Corroded || (End == LifeEnd.Struck && question == LifeQuestion.UsedUp);

    /// <summary>The known hours of one mounting of a prop, up to its retirement if that was told while it was fitted.</summary>
    internal static EngineRun? Run(PropRecord prop, BoatHistory boat, MountingSpan span)
    {
        var to = prop.Retired is { } retired && span.Holds(retired.Entry) ? retired.Entry : span.To;
        return EngineRun.Of(boat.EngineOf(span) is { } engine ? boat.Meters.GetValueOrDefault(engine.Engine) : null, prop.Order, span.Fitted.Entry, to);
    }

    /// <summary>Whether a mounting ended because the prop was worn, and that was not taken back by fitting it again as it was.</summary>
    internal static bool WornForGood(PropRecord prop, int mounting) =>
        PropRecord.CameOff(prop.Mountings[mounting]) == RemovalReason.Worn
        && (mounting == prop.Mountings.Count - 1 || prop.Facts.Any(f => f is Repitched or PropRepaired or PropBackFromShop
            && prop.Order.Compare(f.Entry, prop.Mountings[mounting].Span.To) >= 0
            && prop.Order.Compare(f.Entry, prop.Mountings[mounting + 1].Span.Fitted.Entry) <= 0));

    internal static IReadOnlyDictionary<string, IReadOnlyList<HomeSpan>> Homes(IEnumerable<BoatHistory> boats, OfficeRecord office) =>
        boats.ToDictionary(b => b.Boat, b => HomeSpan.Of(b, office), StringComparer.Ordinal);

    private static bool Unseen(Entry? from, Entry to) => from is null || (to.Happened() - from.Happened()).TotalDays > UnseenDays;

    private static LifeEnd EndOf(PropRetirement why) => why switch
    {
        PropRetirement.Worn => LifeEnd.Worn,
        PropRetirement.Corroded => LifeEnd.Corroded,
        PropRetirement.Struck => LifeEnd.Struck,
        _ => LifeEnd.Lost,
    };
}

/// <summary>How a prop's life ended, or why it is not followed any further.</summary>
public enum LifeEnd
{
    /// <summary>Still in use, a spare, or off for another reason: it goes on.</summary>
    InUse,

    /// <summary>Retired as worn, or came off as worn and did not go on again as it was.</summary>
    Worn,

    /// <summary>Retired as eaten by corrosion.</summary>
    Corroded,

    /// <summary>Retired as struck past repair.</summary>
    Struck,

    /// <summary>Lost or gone; nobody knows how long it would have lasted.</summary>
    Lost,
}

/// <summary>What is asked of prop lives.</summary>
public enum LifeQuestion
{
    /// <summary>When another prop is needed: worn, corroded and struck past repair all end a life.</summary>
    UsedUp,

    /// <summary>How they wear: a prop that was struck past repair was still going.</summary>
    Worn,
}

/// <summary>Why a prop has no lifetime that can be used.</summary>
public enum LifeLeftOut
{
    /// <summary>It was found fitted: nobody knows how many hours it had.</summary>
    FoundFitted,

    /// <summary>It came used or rebuilt.</summary>
    CameUsed,

    /// <summary>It is, or was, somebody else's.</summary>
    OnLoan,

    /// <summary>It was never fitted.</summary>
    NeverFitted,

    /// <summary>No hour of it is known: it was just fitted, or the meter was not read in time.</summary>
    HoursNotKnown,
}

/// <summary>How many were left out for one reason.</summary>
/// <param name="Why">The reason.</param>
/// <param name="Props">How many props.</param>
public sealed record LeftOut(LifeLeftOut Why, int Props);
