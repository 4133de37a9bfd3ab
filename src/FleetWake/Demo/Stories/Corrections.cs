using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <summary>Wrong records put right by other records. Both stay in the history.</summary>
internal static class Corrections
{
    /// <summary>Typed 4,5xx for 5,5xx on the first run; amended the next day.</summary>
    public static void Fulmar(Notebook log)
    {
        var life = Told(log, "Fulmar");
        var at = DockCalendar.At(log.Days.DaysAgo(44), 10, 25);
        var aboard = new Aboard();
        var wrong = Usual.Trial(log, life, at, aboard, t => t with { Runs = [ThousandTooLow(t.Runs![0]), t.Runs[1]] });
        log.Write(Pen.Office, at, "fulmar trial", s => TrialMaker.Make(s, log, life, at, aboard), DockCalendar.At(log.Days.DaysAgo(43), 9, 5), wrong);
    }

    public static void Scoter(Notebook log)
    {
        var life = Told(log, "Scoter");
        var engine = life.Boat.Engine("single");
        var at = DockCalendar.At(log.Days.DaysAgo(75), 16, 20);
        var hours = log.Meter(life.Boat, "single", at);
        var pen = Pen.At(life.Boat.Dock, life.Dice);
        var wrong = log.Write(pen, at, engine + " typed wrong", s => new ReadHours(s, engine, Math.Round(hours / 10, 1)));
        log.Write(pen, at, engine + " put right", s => new ReadHours(s, engine, hours), at.AddHours(2), wrong);
    }

    public static void Guillemot(Notebook log)
    {
        var life = Told(log, "Guillemot");
        var day = log.Days.DaysAgo(120);
        var at = DockCalendar.At(day, 13, 50);
        var first = Usual.Strike(log, life, "single", at, "rock", "chipped");
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, "guillemot strike amended", s => new ReportStrike(
            s, "guillemot", "single", "sand", "scuffed", log.Meter(life.Boat, "single", at)), at.AddHours(4), first);
        Usual.Inspect(log, life, "single", DockCalendar.At(day.AddDays(1), 8, 40), "fit", []);
        Workshop.Guillemot(log, life);
        Workshop.Misread(log, life, daysAgo: 160);
    }

    public static void Booby(Notebook log)
    {
        var booby = Told(log, "Booby");
        var petrel = Told(log, "Petrel");
        var at = DockCalendar.At(log.Days.DaysAgo(33), 15, 15);
        var wrong = Usual.Strike(log, booby, "single", at, "wood", "scuffed");
        log.Write(Pen.Office, at.AddHours(2), "booby strike retracted", s => new Retract(s, wrong, "wrong_subject", Boat: "booby"));
        Usual.Strike(log, petrel, "single", at.AddMinutes(1), "wood", "scuffed");
        Usual.Inspect(log, petrel, "single", DockCalendar.At(log.Days.DaysAgo(32), 8, 10), "fit", []);
        log.SendTwice(Usual.Trial(log, petrel, log.Days.DaysAgo(31)));
    }

    public static void Razorbill(Notebook log)
    {
        var life = Told(log, "Razorbill");
        var at = DockCalendar.At(log.Days.DaysAgo(58), 17, 5);
        Usual.Inspect(log, life, "single", at, "fit", ["edge_wear"]);
        var second = Usual.Inspect(log, life, "single", at.AddMinutes(8), "fit", ["edge_wear"]);
        log.Write(Pen.Office, at.AddHours(1), "razorbill look retracted", s => new Retract(s, second, "recorded_twice", Boat: "razorbill"));
    }

    public static void Grebe(Notebook log)
    {
        var life = Told(log, "Grebe");
        var at = DockCalendar.At(log.Days.DaysAgo(85), 15, 40);
        var reading = Usual.Read(log, life, "single", at, at);
        var engine = life.Boat.Engine("single");
        var takenBack = log.Write(Pen.Office, at.AddHours(1), "grebe reading retracted", s => new Retract(s, reading, "typed_wrong", Engine: engine));
        log.Write(Pen.Office, at.AddHours(2), "grebe retraction retracted", s => new Retract(s, takenBack, "did_not_happen", Engine: engine));
    }

    private static Life Told(Notebook log, string name)
    {
        var life = Life.Healthy(log, Fleet.Named(name));
        Usual.Years(log, life);
        return life;
    }

    private static TrialRunSent ThousandTooLow(TrialRunSent run) =>
        run with { Tachometers = [.. run.Tachometers!.Select(t => t with { Rpm = t.Rpm - 1000 })] };
}
