namespace FleetWake.Demo;

/// <summary>Growth on hull and blades, and a full load at each of the last trials: below the bottom of the band.</summary>
internal static class Lugging
{
    private static readonly Aboard FullLoad = new(People: 6, Load: 120);

    public static void Pelican(Notebook log)
    {
        var days = log.Days;
        var life = Life.With(log, Fleet.Named("Pelican"), (_, going) => going with
        {
            NewRpm = 5330,
            Wear = 1,
            Steps = [new Step(days.DaysAgo(110), -0.03, -0.055), new Step(days.DaysAgo(60), -0.02, -0.04)],
        });
        Usual.Years(log, life, watchedUntil: 130);
        foreach (var daysAgo in (int[])[98, 66, 36, 10]) Usual.Trial(log, life, days.DaysAgo(daysAgo), FullLoad);
        Usual.Inspect(log, life, "single", DockCalendar.At(days.DaysAgo(8), 16, 40), "watch", ["growth"]);
    }
}
