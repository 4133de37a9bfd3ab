using System.Globalization;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Figures;

/// <summary>
/// An invented fleet of three boats and a dozen props whose figures were worked out elsewhere (Reference/worked_fleet.R). A
/// prop runs its hours on its boat and comes off; two months lie between one fitting and the next.
/// </summary>
internal static class Worked
{
    /// <summary>Tag, boat, material, hours, and how it ended: a removal's word, or a retirement's with a star.</summary>
    private static readonly (string Prop, string Boat, string Material, double Hours, string End)[] s_lives =
    [
        ("a1", "kea", "aluminium", 120, "worn"), ("a2", "kea", "aluminium", 210, "*struck"), ("a3", "kea", "aluminium", 260, "worn"),
        ("a4", "tui", "aluminium", 330, "service"), ("a5", "tui", "aluminium", 340, "*worn"), ("a6", "tui", "aluminium", 410, "*corroded"),
        ("a7", "moa", "aluminium", 150, "*lost"), ("s1", "kea", "stainless", 380, "other_size"), ("s2", "tui", "stainless", 520, "worn"),
        ("s3", "moa", "stainless", 610, "*worn"), ("s4", "moa", "stainless", 450, "*struck"), ("s5", "moa", "stainless", 700, ""),
    ];

    /// <summary>Water of each boat.</summary>
    private static readonly (string Boat, string Dock, string Water, string Bottom)[] s_boats =
        [("kea", "jetty", "salt", "rock"), ("tui", "bay", "silty", "mud"), ("moa", "bay", "salt", "mud")];

    /// <summary>The boats with their engines, and nothing fitted.</summary>
    public static Fleet Boats(params string[] boats) => new Fleet().With(s_boats.Where(b => boats.Length == 0 || boats.Contains(b.Boat)).SelectMany(b => (ICommand[])
    [
        Dock.Boat(boat: b.Boat) with { Dock = b.Dock, Water = b.Water },
        new RehomeBoat(Dock.At("2026-01-05T08:00", "home " + b.Boat), b.Boat, b.Dock, Dock.Zone, b.Water, b.Bottom),
        Dock.Engine(engine: "e-" + b.Boat), Dock.Fitted(engine: "e-" + b.Boat, boat: b.Boat, hours: 0),
    ]));

    /// <summary>The whole fleet, with five strikes of kea, three of tui and one of moa; two of them left no mark.</summary>
    public static Fleet Fleet() => Boats().With(s_boats.SelectMany(b => Lives(b.Boat)))
        .With(Strikes("kea", "bent", "scuffed", "no_mark", "broken", "chipped")).With(Strikes("tui", "scuffed", "no_mark", "chipped")).With(Strikes("moa", "bent"));

    public static FleetRecord Record(this Fleet fleet)
    {
        var logs = new FleetLogs();
        logs.Add(fleet.Placed);
        return FleetRecord.Of(logs);
    }

    /// <summary>Strikes of a boat on days in February 2026, while its first prop is on.</summary>
    public static IEnumerable<ICommand> Strikes(string boat, params string[] severities) =>
        severities.Select((s, i) => (ICommand)Dock.Strike($"2026-02-{10 + i}T10:00", s, boat: boat, label: $"strike {boat} {i}"));

    public static RegisterProp Prop(string prop, string material = "aluminium") => Dock.Prop(prop: prop) with { Material = material };

    /// <summary>A month of the record, the first being February 2026.</summary>
    public static string Month(int month, string time = "05T09:00") =>
        new DateTime(2026, 2, 1).AddMonths(month).ToString("yyyy-MM-", CultureInfo.InvariantCulture) + time;

    private static IEnumerable<ICommand> Lives(string boat)
    {
        var (month, hours) = (0, 0.0);
        foreach (var life in s_lives.Where(l => l.Boat == boat))
        {
            yield return Prop(life.Prop, life.Material);
            yield return Dock.Mounted(Month(month), life.Prop, boat: boat, hours: hours);
            hours += life.Hours;
            month += 2; // no engine runs more hours than the clock
            var end = Month(month, "03T09:00");
            var retired = life.End.StartsWith('*');
            if (life.End.Length == 0) yield return Dock.Hours(end, hours, "e-" + boat);
            else yield return Dock.Removed(end, life.Prop, boat: boat) with { Why = retired ? "service" : life.End, Hours = hours };
            if (retired) yield return new RetireProp(Dock.At(Month(month, "04T09:00"), "retire " + life.Prop), life.Prop, life.End[1..]);
        }
    }
}
