namespace FleetWake.Demo;

/// <summary>Strikes that somebody looked at.</summary>
internal static class ClearedStrikes
{
    /// <summary>Found fit, and inside its band ever since, but the trials after it stand 70 RPM above those before.</summary>
    public static void Shag(Notebook log)
    {
        var day = log.Days.DaysAgo(200);
        var life = Life.With(log, Fleet.Named("Shag"), (_, going) => going with { NewRpm = 5440, Wear = 2, Steps = [new Step(day, 0.013, -0.003)] });
        Usual.Years(log, life, watchedUntil: 8);
        Usual.ClearedStrike(log, life, day, "wood", "chipped", lookedAfterDays: 1);
    }

    public static void Small(Notebook log)
    {
        Cleared(log, "Tern", daysAgo: 96, "sand", "scuffed", lookedAfterDays: 1, sentTwice: true);
        Cleared(log, "Eider", daysAgo: 41, "wood", "scuffed", lookedAfterDays: 2);
        Workshop.Shearwater(log, Cleared(log, "Shearwater", daysAgo: 310, "line", "scuffed", lookedAfterDays: 0).Life);
        var (_, dunlin) = Cleared(log, "Dunlin", daysAgo: 260, "rock", "chipped", lookedAfterDays: 3);
        Damage.Settled(log, "dunlin", dunlin, log.Days.DaysAgo(260));
        Cleared(log, "Murre", daysAgo: 480, "structure", "scuffed", lookedAfterDays: 5);
        Workshop.Murre(log);
    }

    public static void NoMark(Notebook log)
    {
        var life = Life.Healthy(log, Fleet.Named("Dotterel"));
        Usual.Years(log, life);
        Usual.Strike(log, life, "single", DockCalendar.At(log.Days.DaysAgo(1), 16, 10), "sand", "no_mark");
    }

    private static (Life Life, Guid Strike) Cleared(Notebook log, string name, int daysAgo, string what, string severity, int lookedAfterDays, bool sentTwice = false)
    {
        var life = Life.Healthy(log, Fleet.Named(name));
        Usual.Years(log, life);
        var strike = Usual.ClearedStrike(log, life, log.Days.DaysAgo(daysAgo), what, severity, lookedAfterDays);
        if (sentTwice) log.SendTwice(strike);
        return (life, strike);
    }
}
