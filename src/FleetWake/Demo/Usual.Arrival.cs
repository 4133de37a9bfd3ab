using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Demo;

/// <summary>What happens to every boat.</summary>
internal static partial class Usual
{
    /// <summary>The office registers boat, engines and props; the dock hangs the engines and fits the props.</summary>
    /// <param name="log">The notebook.</param>
    /// <param name="life">The boat.</param>
    /// <param name="registeredLater">How long after the day the office came to type it.</param>
    /// <param name="firstDock">Where it lay at first, if not at its dock.</param>
    public static void Arrive(Notebook log, Life life, TimeSpan registeredLater = default, Dock? firstDock = null)
    {
        var boat = life.Boat;
        var at = DockCalendar.At(life.From, 7, 0).AddMinutes(3 * boat.Number);
        var typed = DockCalendar.Later(at, registeredLater);
        var dock = firstDock ?? boat.Dock;
        log.Write(Pen.Office, at, boat.Id + " boat", s => new RegisterBoat(
            s, boat.Id, boat.Name, dock.Id, DockCalendar.ZoneName, dock.Water, boat.Positions), typed);
        foreach (var prop in life.First)
        {
            RegisterEngine(log, boat, prop.Position, at, typed);
            RegisterProp(log, boat, prop, at, typed);
            FitAndMount(log, life, prop);
        }
    }

    private static void RegisterEngine(Notebook log, BoatLine boat, string position, DateTimeOffset at, DateTimeOffset typed)
    {
        var model = boat.Model;
        log.Write(Pen.Office, at, boat.Engine(position), s => new RegisterEngine(
            s, boat.Engine(position), model.Name, model.BandLow, model.BandHigh, model.Gear, model.Horsepower, "hp",
            model.NutTorque, model.NutTorqueUnit, boat.TachometerStep), typed);
        StateShaft(log, boat, position, at, typed);
    }

    /// <summary>What the manual says of the shaft. The small ones leave their torque to it.</summary>
    private static void StateShaft(Notebook log, BoatLine boat, string position, DateTimeOffset at, DateTimeOffset typed)
    {
        var (engine, model, shaft) = (boat.Engine(position), boat.Model, boat.Model.Shaft);
        log.Write(Pen.Office, at, engine + " fastening", s => shaft.Retorqued
            ? new StateFastening(s, engine, shaft.Fastening, model.NutTorque, null, model.NutTorqueUnit, 2, true)
            : new StateFastening(s, engine, shaft.Fastening, Retorque: false), typed);
        log.Write(Pen.Office, at, engine + " shaft", s => new StateEngineFit(
            s, engine, null, shaft.Teeth, shaft.HubKit, shaft.ThrustWasher, BoatLine.Rotation(position), shaft.LargestDiameter), typed);
    }

    /// <summary>A prop comes into the fleet, of the size that the boat's engine usually turns but for the pitch given.</summary>
    /// <param name="log">The notebook.</param>
    /// <param name="boat">The boat.</param>
    /// <param name="prop">The prop.</param>
    /// <param name="at">When it came.</param>
    /// <param name="typed">When the office came to type it.</param>
    /// <param name="lender">Whose it is, and for how many days; it is ours when not given.</param>
    public static void RegisterProp(
        Notebook log, BoatLine boat, Mounted prop, DateTimeOffset at, DateTimeOffset typed, (string Id, int Days)? lender = null)
    {
        log.Write(Pen.Office, at, prop.Prop + " tag", s => new RegisterProp(
            s, prop.Prop, boat.Model.Diameter, prop.Going.Pitch, 3, boat.Material, BoatLine.Rotation(prop.Position)), typed);
        log.Write(Pen.Office, at, prop.Prop + " came", s => lender is not { } from
            ? new AcquireProp(s, prop.Prop, "new")
            : new TakeLoaner(s, prop.Prop, from.Id, $"{DateOnly.FromDateTime(at.DateTime).AddDays(from.Days):yyyy-MM-dd}"), typed);
    }

    private static void FitAndMount(Notebook log, Life life, Mounted prop)
    {
        var boat = life.Boat;
        var pen = Pen.At(boat.Dock, life.Dice);
        var hung = DockCalendar.At(life.From, 9, 0).AddMinutes(5 * boat.Number);
        log.Write(pen, hung, boat.Engine(prop.Position) + " hung", s => new FitEngine(
            s, boat.Id, prop.Position, boat.Engine(prop.Position), log.Meter(boat, prop.Position, hung)));
        Mount(log, life, prop, pen, hung.AddMinutes(40));
    }

    /// <summary>A prop is fitted, with the whole mounting sheet, and its nut looked at again after the first outing.</summary>
    public static void Mount(Notebook log, Life life, Mounted prop, Pen pen, DateTimeOffset at, bool retorqued = true)
    {
        var (boat, model) = (life.Boat, life.Boat.Model);
        var slots = life.Dice.Whole(0, 2);
        log.Write(pen, at, $"{boat.Id} {prop.Position} mounts {prop.Prop}", s => new MountProp(
            s, boat.Id, prop.Position, prop.Prop, log.Meter(boat, prop.Position, at), true, true, true,
            model.NutTorque, model.NutTorqueUnit, slots, true, PartsShelf.Pin(log.Days, boat, at)));
        if (retorqued && model.Shaft.Retorqued) Retorque(log, boat, prop.Position, pen, DockCalendar.At(DateOnly.FromDateTime(at.DateTime).AddDays(1), 17, 40));
    }

    /// <summary>The nut is torqued again, on a pin that is new again.</summary>
    public static void Retorque(Notebook log, BoatLine boat, string position, Pen pen, DateTimeOffset at) =>
        log.Write(pen, at, $"{boat.Id} {position} re-torqued", s => new RetorqueNut(
            s, boat.Id, position, boat.Model.NutTorque, boat.Model.NutTorqueUnit, true, log.Meter(boat, position, at), PartsShelf.Pin(log.Days, boat, at)));

    /// <summary>One prop comes off and another goes on, before the boat goes out for the day.</summary>
    public static void Swap(Notebook log, Life life, Mounted next, string why)
    {
        var pen = Pen.At(life.Boat.Dock, life.Dice);
        Remove(log, life, next.Position, why, pen, DockCalendar.At(next.From, 7, 20));
        life.Fit(next);
        Mount(log, life, next, pen, DockCalendar.At(next.From, 8, 0));
    }

    /// <summary>The prop that is on comes off.</summary>
    public static void Remove(Notebook log, Life life, string position, string why, Pen pen, DateTimeOffset at)
    {
        var prop = life.On(position, DateOnly.FromDateTime(at.DateTime)).Prop;
        log.Write(pen, at, $"{life.Boat.Id} {position} off {prop}", s => new RemoveProp(
            s, life.Boat.Id, position, why, prop, log.Meter(life.Boat, position, at)));
    }
}
