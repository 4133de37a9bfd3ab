using FleetWake.Logbook.Props;

namespace FleetWake.Demo;

/// <summary>Props that lie ready, and at which dock: what a struck boat could have tomorrow.</summary>
internal static class Spares
{
    public static void Tell(Notebook log)
    {
        Spare(log, "S-50-1", "Petrel", Docks.OldMole, daysAgo: 240, 265);
        Spare(log, "S-50-2", "Godwit", Docks.KittiwakeQuay, daysAgo: 240, 265);
        Spare(log, "S-50-3", "Murre", Docks.SallowMere, daysAgo: 150, 265);
        Spare(log, "S-115-1", "Guillemot", Docks.OldMole, daysAgo: 150, 340);
    }

    private static void Spare(Notebook log, string prop, string fits, Dock dock, int daysAgo, decimal price)
    {
        var boat = Fleet.Named(fits);
        var came = DockCalendar.At(log.Days.DaysAgo(daysAgo), 11, 0);
        var usual = new Going(boat.Model.UsualRpm, 0, boat.Model.Slip, boat.Model.Pitch, boat.Model.Gear);
        Usual.RegisterProp(log, boat, new Mounted("single", prop, log.Days.DaysAgo(daysAgo), usual), came, came);
        OfficePapers.Priced(log, prop, "purchase", price, came);
        log.Write(Pen.Office, came.AddMinutes(5), prop + " fit", s => new StatePropFit(
            s, prop, null, boat.Model.Shaft.Teeth, boat.Model.Shaft.HubKit, boat.Model.Shaft.ThrustWasher));
        log.Write(Pen.Office, came.AddMinutes(10), prop + " stored", s => new StoreProp(s, prop, dock.Id));
    }
}
