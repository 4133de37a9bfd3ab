namespace FleetWake.Demo;

/// <summary>
/// The rubber hub lets go: the engine turns faster than the prop. From one trial to the next RPM jumps over the top and
/// speed falls, so that slip is far too high; the witness mark has moved.
/// </summary>
internal static class SpunHub
{
    public static void Cormorant(Notebook log)
    {
        var letGo = log.Days.DaysAgo(12);
        var life = Life.With(log, Fleet.Named("Cormorant"), (_, going) => going with { NewRpm = 5560, Wear = 3, Steps = [new Step(letGo, 0.095, -0.065)] });
        Usual.Years(log, life, watchedUntil: 11);
        Usual.Inspect(log, life, "single", DockCalendar.At(log.Days.DaysAgo(9), 10, 20), "take_off", ["hub_slip"]);
    }
}
