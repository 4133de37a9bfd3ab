using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Inspections;

namespace FleetWake.Demo;

/// <summary>The two-tap look before and after a hire, and what it clears.</summary>
internal static class Handovers
{
    private static readonly string[] Hired = ["Tern", "Eider", "Curlew", "Fulmar", "Booby"];

    /// <summary>Four weeks of Saturdays; one boat came back with a mark, and with a photo of it.</summary>
    public static void Saturdays(Notebook log)
    {
        foreach (var (name, i) in Hired.Select((n, i) => (n, i)))
        {
            for (var week = 0; week < 4; week++)
            {
                var day = log.Days.DaysAgo(2 + 7 * week);
                var hire = $"h-{4400 + 20 * week + i}";
                var marked = name == "Fulmar" && week == 1;
                Look(log, name, DockCalendar.At(day, 8, 30 + 4 * i), "before_hire", "nothing_new", hire);
                Look(log, name, DockCalendar.At(day, 17, 30 + 4 * i), "after_hire", marked ? "mark" : "nothing_new", hire, marked);
            }
        }
    }

    /// <summary>A scuff from a line, looked at by the dock the same evening: nothing new, so it goes out again.</summary>
    public static void Cleared(Notebook log, Life life, int daysAgo)
    {
        var day = log.Days.DaysAgo(daysAgo);
        Usual.Strike(log, life, "single", DockCalendar.At(day, 15, 20), "line", "scuffed");
        Look(log, life.Boat.Name, DockCalendar.At(day, 17, 5), "at_dock", "nothing_new");
    }

    public static void Look(Notebook log, string name, DateTimeOffset at, string moment, string seen, string? hire = null, bool photo = false)
    {
        var boat = Fleet.Named(name);
        var dice = new Dice($"{boat.Id} handed over {DockCalendar.Text(at)}");
        log.Write(Pen.At(boat.Dock, dice), at, $"{boat.Id} looked over", s => new LookOver(
            s, boat.Id, "single", moment, seen, hire, photo ? Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(hire!))) : null));
    }
}
