using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <summary>Work that gives a boat's trials a new baseline, or that a reader should know of when the line has a kink.</summary>
internal static class Workshop
{
    /// <summary>The hour meter failed and a new one began at zero; engine hours go on.</summary>
    public static void NewMeter(Notebook log, Life life, int daysAgo)
    {
        var (boat, engine) = (life.Boat, life.Boat.Engine("single"));
        var at = DockCalendar.At(log.Days.DaysAgo(daysAgo), 12, 30);
        var old = log.Meter(boat, "single", at);
        log.ReplaceMeter(boat, "single", at);
        log.Write(Pen.At(boat.Dock, life.Dice), at, engine + " new meter", s => new ReplaceMeter(s, engine, 0, old));
    }

    /// <summary>Held against an optical counter before the season.</summary>
    public static void Tachometers(Notebook log)
    {
        foreach (var (name, shown, real) in ((string, double, double)[])[("Sanderling", 5000, 4990), ("Avocet", 5400, 5390), ("Shag", 5400, 5410)])
        {
            var engine = Fleet.Named(name).Engine("single");
            log.Write(new Pen(Devices.Office, "office-01"), DockCalendar.At(log.Days.Start.AddDays(4), 14, 0), engine + " tachometer", s => new CheckTachometer(
                s, engine, shown, real));
        }
    }

    /// <summary>Hull and prop cleaned of growth, and new bottom paint.</summary>
    public static void Murre(Notebook log)
    {
        var at = DockCalendar.At(log.Days.DaysAgo(63), 13, 0);
        var pen = new Pen(Devices.Mere1, "mech-07");
        log.Write(pen, at, "murre hull", s => new CleanHull(s, "murre"));
        log.Write(pen, at.AddHours(1), "murre prop", s => new CleanProp(s, "murre", "single"));
        log.Write(pen, at.AddHours(2), "murre paint", s => new ChangeRig(s, "murre", "bottom_paint"));
    }

    /// <summary>Lay at the mere in its first season.</summary>
    public static void Phalarope(Notebook log)
    {
        var boat = Fleet.Named("Phalarope");
        Usual.Years(log, Life.Healthy(log, boat), firstDock: Docks.SallowMere);
        log.Write(Pen.Office, DockCalendar.At(log.Days.Start.AddDays(120), 9, 0), "phalarope's new dock", s => new RehomeBoat(
            s, boat.Id, boat.Dock.Id, DockCalendar.ZoneName, boat.Dock.Water, boat.Dock.Bottom));
    }

    /// <summary>The yard tried the boat after a service and gave the number at its own reference conditions.</summary>
    public static void Shearwater(Notebook log, Life life)
    {
        var day = log.Days.DaysAgo(66);
        log.Write(Pen.Office, DockCalendar.At(day, 8, 0), "shearwater to service", s => new TakeOutOfHire(s, "shearwater", "service"));
        foreach (var position in life.Boat.Positions)
        {
            var (engine, at) = (life.Boat.Engine(position), DockCalendar.At(day.AddDays(1), 15, 0));
            log.Write(Pen.Office, at, engine + " service", s => new ServiceEngine(
                s, engine, ["gear_oil", "water_pump", "anodes", "shaft_greased"], log.Meter(life.Boat, position, at)));
            log.Write(Pen.Office, at.AddMinutes(40), $"shearwater {position} at reference", s => new ReadNormalisedRpm(
                s, "shearwater", position, Math.Round(life.On(position, day).Going.NewRpm / 10) * 10, log.Meter(life.Boat, position, at), 16.5, 20));
        }

        log.Write(Pen.Office, DockCalendar.At(day.AddDays(2), 9, 0), "shearwater back", s => new ReturnToHire(s, "shearwater", "office"));
    }

    /// <summary>The hub had begun to slip: a new one the next day, and seen to be fit.</summary>
    public static void Guillemot(Notebook log, Life life)
    {
        var at = DockCalendar.At(log.Days.DaysAgo(210), 10, 30);
        Usual.Inspect(log, life, "single", DockCalendar.At(log.Days.DaysAgo(211), 16, 10), "repair", ["hub_slip"]);
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, "P-107 hub", s => new ReplaceHub(s, "P-107", "hub-15"));
        Usual.Inspect(log, life, "single", at.AddHours(5), "fit", []);
    }

    /// <summary>Came off for a look in the evening; in the morning it was on again, and nobody had written when.</summary>
    public static void FoundAgain(Notebook log, Life life, int daysAgo)
    {
        var (boat, day) = (life.Boat, log.Days.DaysAgo(daysAgo));
        Usual.Remove(log, life, "single", "service", Pen.At(boat.Dock, life.Dice), DockCalendar.At(day, 17, 50));
        var found = DockCalendar.At(day.AddDays(1), 7, 30);
        var pen = Pen.At(boat.Dock, life.Dice);
        log.Write(pen, found, boat.Id + " found fitted", s => new FindFitted(s, boat.Id, "single", boat.Tag("single"), log.Meter(boat, "single", found)));
        Usual.Retorque(log, boat, "single", pen, DockCalendar.At(day.AddDays(1), 17, 20));
    }

    /// <summary>2,4xx was read for 5,4xx and the sheet was lost: what it was cannot be put right, but the question is answered.</summary>
    public static void Misread(Notebook log, Life life, int daysAgo)
    {
        var day = log.Days.DaysAgo(daysAgo);
        var trial = Usual.Trial(log, life, DockCalendar.At(day, 10, 15), new Aboard(), t => t with { Runs = [.. t.Runs!.Select(ThreeThousandTooLow)] });
        log.Write(Pen.Office, DockCalendar.At(day.AddDays(3), 9, 30), life.Boat.Id + " settled", s => new SettleContradiction(
            s, life.Boat.Id, "rpm_out_of_line", [trial], "corrected"));
    }

    private static TrialRunSent ThreeThousandTooLow(TrialRunSent run) =>
        run with { Tachometers = [.. run.Tachometers!.Select(t => t with { Rpm = t.Rpm - 3000 })] };
}
