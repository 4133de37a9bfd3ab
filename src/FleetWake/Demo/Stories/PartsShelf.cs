using FleetWake.Logbook.Parts;

namespace FleetWake.Demo;

/// <summary>Small parts: what lies on each dock's shelf, what was counted, and what was used without a fitting.</summary>
internal static class PartsShelf
{
    // The shelves are kept since then; before, nobody wrote down which pin came from where.
    private const int KeptForDays = 200;

    private static readonly (string Id, string Kind, string Name, int Pieces)[] Kinds =
    [
        ("pin-3x25", "cotter_pin", "Cotter pin 3 x 25 mm", 60),
        ("pin-4x32", "cotter_pin", "Cotter pin 4 x 32 mm", 40),
        ("shear-pin-6", "shear_pin", "Shear pin 6 mm", 30),
        ("washer-13", "thrust_washer", "Thrust washer, 13 teeth", 6),
        ("hub-13", "hub_kit", "Hub kit, 13 teeth", 3),
        ("hub-15", "hub_kit", "Hub kit, 15 teeth", 2),
        ("grease-400", "grease", "Shaft grease, 400 g", 8),
    ];

    public static void Tell(Notebook log)
    {
        foreach (var (dock, i) in Docks.All.Select((d, i) => (d, i)))
        {
            var at = DockCalendar.At(log.Days.DaysAgo(KeptForDays), 8, 10 * i);
            foreach (var part in Kinds)
                log.Write(Pen.Office, at, $"{dock.Id} {part.Id}", s => new StockPart(s, part.Id, part.Kind, dock.Id, part.Pieces, part.Name));
        }

        Count(log, Docks.OldMole, "pin-3x25", daysAgo: 30, 47);
        Count(log, Docks.SallowMere, "grease-400", daysAgo: 30, 5);
        log.Write(new Pen(Devices.Mole1, "mech-01"), DockCalendar.At(log.Days.DaysAgo(61), 16, 20), "grease used", s => new UsePart(
            s, "grease-400", 1, Docks.OldMole.Id, "razorbill", "single"));
    }

    /// <summary>The pin that a fitting takes from the dock's shelf; nothing before the shelves were kept.</summary>
    public static IReadOnlyList<PartSent>? Pin(DockCalendar days, BoatLine boat, DateTimeOffset at) =>
        at > DockCalendar.At(days.DaysAgo(KeptForDays), 12, 0) ? [new PartSent(boat.Model.Shaft.Pin, 1, boat.Dock.Id)] : null;

    private static void Count(Notebook log, Dock dock, string part, int daysAgo, int pieces) =>
        log.Write(Pen.Office, DockCalendar.At(log.Days.DaysAgo(daysAgo), 15, 30), $"{dock.Id} {part} counted", s => new CountPart(s, part, dock.Id, pieces));
}
