using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <summary>Records that cannot be true of anything. The phone keeps them until somebody mends them.</summary>
internal static class Refusals
{
    public static IReadOnlyList<Refusable> Of(DockCalendar days)
    {
        var yesterday = DockCalendar.At(days.DaysAgo(1), 10, 30);
        var nextMonth = DockCalendar.At(days.DaysAgo(-40), 10, 30);
        return
        [
            Refused(days, 1, s => Trial(s, "kn"), nextMonth, "/entry/happenedAt", "in_the_future", "a trial dated next month"),
            Refused(days, 2, s => Trial(s, "knots/h"), yesterday, "/runs/0/speedUnit", "unknown_word", "a unit that does not exist"),
            Refused(days, 3, s => Mount(s, torque: -3, slots: 1), yesterday, "/torque", "out_of_range", "a nut torque below zero"),
            Refused(days, 4, s => Mount(s, torque: 35, slots: -1), yesterday, "/slotsAdvanced", "backed_off", "a nut backed off to line up"),
            Refused(days, 5, s => Trial(s with { Zone = "Skerry/Bay" }, "kn"), yesterday, "/entry/zone", "unknown_zone", "a zone that does not exist"),
        ];
    }

    private static Refusable Refused(
        DockCalendar days, int number, Func<Stamp, ICommand> make, DateTimeOffset at, string field, string reason, string story)
    {
        var sent = DockCalendar.At(days.DaysAgo(1), 19, 50);
        var id = EntryId.Of($"refused {number} {days.Today:yyyy-MM-dd}");
        var stamp = new Stamp(id, "mech-03", DockCalendar.Text(at), DockCalendar.ZoneName, 90_000 + number, DockCalendar.Text(sent.AddHours(-1)));
        return new Refusable(new DeviceBatch(Devices.Mole1.Id, sent, sent, [make(stamp)]), field, reason, story);
    }

    private static RunTrial Trial(Stamp stamp, string unit) => new(
        stamp, "petrel", "wide_open", [new TrialRunSent(23.1, unit, 90, [new TachometerSent("single", 5500)], 40)]);

    private static MountProp Mount(Stamp stamp, double torque, int slots) => new(
        stamp, "petrel", "single", "P-101", null, true, true, true, torque, "newton_metre", slots, true);
}
