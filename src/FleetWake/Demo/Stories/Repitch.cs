using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Demo;

/// <summary>A prop with too much pitch holds the engine below its band. The shop takes an inch and a half off; a loaner runs meanwhile.</summary>
internal static class Repitch
{
    private const string Shop = "tarn-props";

    public static void Whimbrel(Notebook log)
    {
        var boat = Fleet.Named("Whimbrel");
        var days = log.Days;
        var life = Life.With(log, boat, (_, going) => going with { NewRpm = 4930, Wear = 2, Pitch = 15, NewSlip = 0.18 });
        var before = life.On("single", days.Start);

        var loaner = new Mounted("single", "P-921", days.DaysAgo(152), before.Going with { NewRpm = 5440, Pitch = 13 });
        var bought = DockCalendar.At(days.DaysAgo(158), 11, 15);
        Usual.RegisterProp(log, boat, loaner, bought, bought, (Shop, Days: 35));
        Usual.Swap(log, life, loaner, "shop");
        AtTheShop(log, before.Prop);
        var after = before with { From = days.DaysAgo(127), Going = before.Going with { NewRpm = 5315, Pitch = 13.5 } };
        Usual.Swap(log, life, after, "other_size");
        log.Write(Pen.Office, DockCalendar.At(days.DaysAgo(126), 10, 0), "P-921 given back", s => new ReturnLoaner(s, loaner.Prop));

        Usual.Years(log, life, watchedUntil: 7);
    }

    private static void AtTheShop(Notebook log, string prop)
    {
        var days = log.Days;
        void Write(int daysAgo, int hour, string about, Func<Stamp, ICommand> make) =>
            log.Write(Pen.Office, DockCalendar.At(days.DaysAgo(daysAgo), hour, 5), $"{prop} {about}", make);

        Write(152, 15, "to the shop", s => new SendPropToShop(s, prop, Shop, "repitch", 13.5, $"{days.DaysAgo(130):yyyy-MM-dd}"));
        Write(131, 14, "repitched", s => new RepitchProp(s, prop, 13.5, 15.1));
        Write(131, 15, "balanced", s => new RepairProp(s, prop, ["polished", "balanced"]));
        Write(129, 11, "back", s => new TakePropBackFromShop(s, prop, 13.5));
        Write(129, 12, "measured", s => new MeasureProp(s, prop, [13.5, 13.4, 13.5], "pitch_gauge"));
        OfficePapers.Priced(log, prop, "shop", 145, DockCalendar.At(days.DaysAgo(129), 13, 0));
        OfficePapers.Priced(log, prop, "freight", 28.40m, DockCalendar.At(days.DaysAgo(129), 13, 0));
    }

    /// <summary>One that is there now: its edge was chipped, and the shop has four days left. The boat runs on a loaner meanwhile.</summary>
    public static void Albatross(Notebook log)
    {
        var boat = Fleet.Named("Albatross");
        var life = Life.Healthy(log, boat);
        var own = life.On("starboard", log.Days.Start);
        var sent = log.Days.DaysAgo(11);
        var loaner = own with { Prop = "P-923", From = sent };
        var came = DockCalendar.At(sent, 7, 0);
        Usual.RegisterProp(log, boat, loaner, came, came, (Shop, Days: 21));
        Usual.Swap(log, life, loaner, "shop");
        log.Write(Pen.Office, DockCalendar.At(sent, 15, 0), own.Prop + " to the shop", s => new SendPropToShop(
            s, own.Prop, Shop, "repair", null, $"{log.Days.DaysAgo(-4):yyyy-MM-dd}"));
        Usual.Years(log, life);
    }
}
