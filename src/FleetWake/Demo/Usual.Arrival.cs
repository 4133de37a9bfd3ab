using FleetWake.Logbook.Boats;
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
    public static void Arrive(Notebook log, Life life, TimeSpan registeredLater = default)
    {
        var boat = life.Boat;
        var at = DockCalendar.At(life.From, 7, 0).AddMinutes(3 * boat.Number);
        var typed = DockCalendar.Later(at, registeredLater);
        log.Write(Pen.Office, at, boat.Id + " boat", s => new RegisterBoat(
            s, boat.Id, boat.Name, boat.Dock.Id, DockCalendar.ZoneName, boat.Dock.Water, boat.Positions), typed);
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
    }

    /// <summary>A prop comes into the fleet, of the size that the boat's engine usually turns but for the pitch given.</summary>
    public static void RegisterProp(Notebook log, BoatLine boat, Mounted prop, DateTimeOffset at, DateTimeOffset typed)
    {
        log.Write(Pen.Office, at, prop.Prop + " tag", s => new RegisterProp(
            s, prop.Prop, boat.Model.Diameter, prop.Going.Pitch, 3, boat.Material, BoatLine.Rotation(prop.Position)), typed);
        log.Write(Pen.Office, at, prop.Prop + " came", s => new AcquireProp(s, prop.Prop, "new"), typed);
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

    /// <summary>A prop is fitted, with the whole mounting sheet.</summary>
    public static void Mount(Notebook log, Life life, Mounted prop, Pen pen, DateTimeOffset at)
    {
        var slots = life.Dice.Whole(0, 2);
        log.Write(pen, at, $"{life.Boat.Id} {prop.Position} mounts {prop.Prop}", s => new MountProp(
            s, life.Boat.Id, prop.Position, prop.Prop, log.Meter(life.Boat, prop.Position, at), true, true, true,
            life.Boat.Model.NutTorque, life.Boat.Model.NutTorqueUnit, slots, true));
    }

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
