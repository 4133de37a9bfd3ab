namespace FleetWake.Demo;

/// <summary>A stainless prop bent on a rock. Stainless passes a blow on, so shaft and lower unit want a look; nobody has looked yet.</summary>
internal static class StruckStainless
{
    public static void Gannet(Notebook log)
    {
        var life = Life.Healthy(log, Fleet.Named("Gannet"));
        Usual.Years(log, life, watchedUntil: 9);
        Usual.Strike(log, life, "single", DockCalendar.At(log.Days.DaysAgo(2), 14, 25), "rock", "bent");
    }
}
