using FleetWake.Logbook.Duties;

namespace FleetWake.Demo;

/// <summary>The fleet's own duty, done on all boats with stainless props; on one it is overdue.</summary>
internal static class GearOil
{
    public static void Tell(Notebook log)
    {
        Done(log, "Gannet", daysAgo: 61);
        Done(log, "Shearwater", daysAgo: 47);
        Done(log, "Albatross", daysAgo: 112);
        Done(log, "Skua", daysAgo: 139);
    }

    private static void Done(Notebook log, string name, int daysAgo)
    {
        var boat = Fleet.Named(name);
        var at = DockCalendar.At(log.Days.DaysAgo(daysAgo), 16, 15);
        foreach (var position in boat.Positions)
            log.Write(new Pen(Devices.Mole2, "mech-02"), at, $"{boat.Id} {position} gear oil", s => new DoDuty(
                s, boat.Id, OfficePapers.GearOilRule, position, log.Meter(boat, position, at)));
    }
}
