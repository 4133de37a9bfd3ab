using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <content>What comes round: readings, looks and trials.</content>
internal static partial class Usual
{
    /// <summary>The boat's whole two years.</summary>
    /// <param name="log">The notebook.</param>
    /// <param name="life">The boat.</param>
    /// <param name="watchedUntil">Trialled every month, winter too, until this many days ago; an unwatched boat has trials in season.</param>
    /// <param name="neglected">Its last look at prop and shaft is more than six months ago.</param>
    /// <param name="firstDock">Where it lay at first, if not at its dock.</param>
    public static void Years(Notebook log, Life life, int? watchedUntil = null, bool neglected = false, Dock? firstDock = null)
    {
        Arrive(log, life, firstDock: firstDock);
        Rounds(log, life, watchedUntil, neglected);
    }

    /// <summary>The same without the arrival.</summary>
    public static void Rounds(Notebook log, Life life, int? watchedUntil = null, bool neglected = false)
    {
        Readings(log, life);
        Looks(log, life, neglected ? life.Dice.Whole(196, 240) : life.Dice.Whole(10, 165));
        var last = watchedUntil ?? life.Dice.Whole(3, 28);
        foreach (var day in Monthly(log, life, last).Where(d => watchedUntil is not null || Season.InSeason(d)))
            Trial(log, life, day, watchedUntil is null ? null : new Aboard());
    }

    /// <summary>One trial on a day, two aboard and little else; a watched boat has always the same crew.</summary>
    public static Guid Trial(Notebook log, Life life, DateOnly day, Aboard? aboard = null) =>
        Trial(log, life, Morning(life, day), aboard ?? new Aboard(2, life.Dice.Whole(0, 2) * 5, life.Dice.Chance(0.85), Habit: 0.003), t => t);

    /// <summary>A trial that came out otherwise than it should.</summary>
    public static Guid Trial(Notebook log, Life life, DateTimeOffset at, Aboard aboard, Func<RunTrial, RunTrial> but) =>
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, life.Boat.Id + " trial", s => but(TrialMaker.Make(s, log, life, at, aboard)));

    /// <summary>A time between nine and noon.</summary>
    public static DateTimeOffset Morning(Life life, DateOnly day) => DockCalendar.At(day, life.Dice.Whole(9, 11), life.Dice.Whole(0, 59));

    private static void Readings(Notebook log, Life life)
    {
        foreach (var position in life.Boat.Positions)
        {
            foreach (var day in Monthly(log, life, life.Dice.Whole(2, 26)))
            {
                var at = DockCalendar.At(day, life.Dice.Whole(15, 17), life.Dice.Whole(0, 59));
                Read(log, life, position, at, life.Dice.Chance(0.08) ? DaysLater(log, at, life.Dice.Whole(1, 3)) : at);
            }
        }
    }

    /// <summary>Somebody reads the meter, and may type it some days later.</summary>
    public static Guid Read(Notebook log, Life life, string position, DateTimeOffset at, DateTimeOffset typed, Pen? pen = null) =>
        log.Write(
            pen ?? Pen.At(life.Boat.Dock, life.Dice),
            at,
            life.Boat.Engine(position) + " meter",
            s => new ReadHours(s, life.Boat.Engine(position), log.Meter(life.Boat, position, at)),
            typed);

    private static DateTimeOffset DaysLater(Notebook log, DateTimeOffset at, int days)
    {
        var later = DockCalendar.Later(at, TimeSpan.FromDays(days));
        return later <= log.Days.LastEvening ? later : at;
    }

    private static void Looks(Notebook log, Life life, int lastDaysAgo)
    {
        var day = log.Days.DaysAgo(lastDaysAgo);
        while (day > life.From.AddDays(30))
        {
            foreach (var position in life.Boat.Positions.Where(_ => !log.IsAshore(life.Boat, day))) Look(log, life, position, day);
            day = day.AddDays(-life.Dice.Whole(170, 180));
        }
    }

    /// <summary>Days about a month apart, the last of them some days before the showing, back to the boat's first weeks.</summary>
    private static IEnumerable<DateOnly> Monthly(Notebook log, Life life, int lastDaysAgo)
    {
        var day = log.Days.DaysAgo(lastDaysAgo);
        while (day > life.From.AddDays(6))
        {
            if (!log.IsAshore(life.Boat, day)) yield return day;
            day = day.AddDays(-life.Dice.Whole(27, 33));
        }
    }
}
