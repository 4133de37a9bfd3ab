using FleetWake.Logbook.Props;

namespace FleetWake.Demo;

/// <summary>A prop with too much pitch holds the engine below its band. The shop takes an inch and a half off; a loaner runs meanwhile.</summary>
internal static class Repitch
{
    public static void Whimbrel(Notebook log)
    {
        var boat = Fleet.Named("Whimbrel");
        var days = log.Days;
        var life = Life.With(log, boat, (_, going) => going with { NewRpm = 4930, Wear = 2, Pitch = 15, NewSlip = 0.18 });
        var before = life.On("single", days.Start);

        var loaner = new Mounted("single", "P-921", days.DaysAgo(152), before.Going with { NewRpm = 5440, Pitch = 13 });
        var bought = DockCalendar.At(days.DaysAgo(158), 11, 15);
        Usual.RegisterProp(log, boat, loaner, bought, bought);
        Usual.Swap(log, life, loaner, "shop");

        log.Write(Pen.Office, DockCalendar.At(days.DaysAgo(131), 14, 5), before.Prop + " repitched", s => new RepitchProp(s, before.Prop, 13.5, 15.1));
        var after = before with { From = days.DaysAgo(127), Going = before.Going with { NewRpm = 5315, Pitch = 13.5 } };
        Usual.Swap(log, life, after, "other_size");

        Usual.Years(log, life, watchedUntil: 7);
    }
}
