namespace FleetWake.Demo;

/// <summary>Props that wear: pitch goes, RPM rises.</summary>
internal static class WornProps
{
    private const int LastTrial = 5;

    /// <summary>Close to the edge, so it was tried twice a month all the last year.</summary>
    public static void Skiff(Notebook log)
    {
        var life = Wears(log, "Sanderling", wear: 45, hoursLeft: 75);
        for (var daysAgo = 20; daysAgo < 365; daysAgo += 30) Usual.Trial(log, life, log.Days.DaysAgo(daysAgo), new Aboard());
    }

    public static void Plover(Notebook log) => Wears(log, "Plover", wear: 30, hoursLeft: 150);

    public static void Avocet(Notebook log) => Wears(log, "Avocet", wear: 24, hoursLeft: 220);

    /// <summary>Already out: the hours left are behind it.</summary>
    public static void Knot(Notebook log) => Wears(log, "Knot", wear: 40, hoursLeft: -140);

    public static void Heron(Notebook log)
    {
        var boat = Fleet.Named("Heron");
        var life = Life.With(log, boat, (position, going) =>
            position == "starboard" ? Leaving(log, boat, position, going, 26, 300) : going with { Wear = 2 });
        Usual.Years(log, life, LastTrial);
    }

    private static Life Wears(Notebook log, string name, double wear, double hoursLeft)
    {
        var boat = Fleet.Named(name);
        var life = Life.With(log, boat, (position, going) => Leaving(log, boat, position, going, wear, hoursLeft));
        Usual.Years(log, life, LastTrial);
        return life;
    }

    /// <summary>Reckoned back from the top of the band: so many hours left at the last trial, so many run since fitting.</summary>
    private static Going Leaving(Notebook log, BoatLine boat, string position, Going going, double wear, double hoursLeft)
    {
        var run = log.Ran(boat, position, DockCalendar.At(log.Days.DaysAgo(LastTrial), 10, 0)) - log.Ran(boat, position, DockCalendar.At(log.Days.Start, 8, 0));
        return going with { NewRpm = boat.Model.BandHigh - wear * (run + hoursLeft) / 100, Wear = wear };
    }
}
