using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <summary>Trials that a person would not put on the line without a word.</summary>
internal static class OddTrials
{
    /// <summary>One aboard and hardly any fuel: the limiter held the engine, so the reading is a lower bound.</summary>
    public static void Limiter(Notebook log) => Odd(log, "Skua", daysAgo: 19, new Aboard(People: 1), t => t with
    {
        FuelPercent = 10,
        Runs = [.. t.Runs!.Select(r => r with { Tachometers = [.. r.Tachometers!.Select(x => x with { Rpm = 6050, LimiterReached = true })] })],
    });

    /// <summary>No wake allowed beyond this: it shows slip, not the band.</summary>
    public static void PartThrottle(Notebook log) => Odd(log, "Egret", daysAgo: 27, new Aboard(), t => t with
    {
        Throttle = "part",
        Runs = [.. t.Runs!.Select(r => Slower(r, 0.73))],
    });

    /// <summary>Rain came on: there was no run back, so the current is still in the speed.</summary>
    public static void SingleRun(Notebook log)
    {
        var life = Odd(log, "Noddy", daysAgo: 15, new Aboard(), t => t with { Runs = [t.Runs![0]] });
        NightOfTwoHours(log, life);
    }

    /// <summary>The log showed km/h, the phone was told knots: the boat seems to outrun its prop.</summary>
    public static void NegativeSlip(Notebook log) => Workshop.FoundAgain(
        log,
        Odd(log, "Stilt", daysAgo: 36, new Aboard(), t => t with { Runs = [.. t.Runs!.Select(r => r with { SpeedUnit = "kn" })] }),
        daysAgo: 55);

    private static Life Odd(Notebook log, string name, int daysAgo, Aboard aboard, Func<RunTrial, RunTrial> but)
    {
        var life = Life.Healthy(log, Fleet.Named(name));
        Usual.Years(log, life);
        Usual.Trial(log, life, Usual.Morning(life, log.Days.DaysAgo(daysAgo)), aboard, but);
        return life;
    }

    private static TrialRunSent Slower(TrialRunSent run, double share) => run with
    {
        Speed = Math.Round(run.Speed!.Value * share * 0.97, 1),
        Tachometers = [.. run.Tachometers!.Select(x => x with { Rpm = TrialMaker.Stepped(x.Rpm!.Value * share, 50) })],
    };

    /// <summary>
    /// The night the clocks went back: a drifting pontoon struck the boat at half past two, and it was looked at
    /// three quarters of an hour later, at a quarter past two. Only the offset tells the order.
    /// In spring a reading is taken ten minutes after two, when the clock shows ten past three.
    /// </summary>
    private static void NightOfTwoHours(Notebook log, Life life)
    {
        var back = log.Days.ClocksChanged(forward: false);
        var struck = new DateTimeOffset(back, new TimeOnly(2, 30), DockCalendar.At(back.AddDays(-1), 12, 0).Offset);
        Usual.Strike(log, life, "single", struck, "structure", "scuffed");
        Usual.Inspect(log, life, "single", DockCalendar.Later(struck, TimeSpan.FromMinutes(45)), "fit", []);
        var forward = DockCalendar.At(log.Days.ClocksChanged(forward: true), 1, 50);
        Usual.Read(log, life, "single", forward, forward);
        var after = DockCalendar.Later(forward, TimeSpan.FromMinutes(20));
        Usual.Read(log, life, "single", after, after);
    }
}
