using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Demo;

/// <summary>What the office settles once: docks, people, devices, prices, rules.</summary>
internal static class OfficePapers
{
    /// <summary>The fleet's own rule: props of stainless steel pass a blow on to the lower unit, which shows in its oil.</summary>
    public const string GearOilRule = "gear-oil";

    private const string Currency = "NZD"; // the zone lends its currency too

    private static readonly (string What, decimal Amount, string? Item)[] Prices =
    [
        ("labour_hour", 95, null), ("hire_day", 320, null), ("shop_repitch", 145, "tarn-props"), ("shop_repair", 210, "tarn-props"),
        ("new_prop", 265, null), ("part", 0.60m, "pin-3x25"), ("part", 68, "hub-13"),
    ];

    public static void Tell(Notebook log)
    {
        var opened = DockCalendar.At(log.Days.Start, 6, 0);
        void Write(DateTimeOffset at, string about, Func<Stamp, ICommand> make) => log.Write(Pen.Office, at, "office " + about, make);

        foreach (var dock in Docks.All)
        {
            Write(opened, dock.Id, s => new OpenDock(s, dock.Id, dock.Name, DockCalendar.ZoneName, dock.Water, dock.Bottom));
            foreach (var person in dock.People) Write(opened, person, s => new InvitePerson(s, person, "mechanic"));
            foreach (var phone in dock.Phones) Write(opened, phone.Id, s => new EnrolDevice(s, phone.Id, dock.Id));
        }

        Write(opened, "office-01", s => new InvitePerson(s, "office-01", "administrator"));
        Write(opened, Devices.Spare.Id, s => new EnrolDevice(s, Devices.Spare.Id, Docks.SallowMere.Id));
        Write(opened, "digest", s => new SetSchedule(s, "weekly_wear", "monday", "06:00"));
        Write(opened, "due lists", s => new TimeDigest(s, "due_list", "daily", LocalTime: "06:30"));
        Write(opened, "quiet hours", s => new SetAlerts(s, 60, "21:00", "06:30", 25));
        Write(opened, "holidays", s => new SetHolidays(s, [.. Enumerable.Range(log.Days.Start.Year, 2).Select(y => $"{y}-12-25")]));
        foreach (var (what, amount, item) in Prices) Write(opened, $"{what} {item}", s => new SetPrice(s, what, amount, Currency, item));
        Write(DockCalendar.At(log.Days.DaysAgo(250), 9, 0), "mech-01 leads", s => new GiveRole(s, "mech-01", "manager"));
        Rules(log);
        SpareRevoked(log);
    }

    private static void Rules(Notebook log)
    {
        var at = DockCalendar.At(log.Days.DaysAgo(180), 10, 0);
        log.Write(Pen.Office, at, "gear oil rule", s => new SetInspectionRule(
            s, GearOilRule, "look for water in the gear oil", "interval", "duty_done", Months: 4, Material: "stainless"));
        // Stricter than usual for stainless: even a scuff keeps the boat in until it was inspected.
        log.Write(Pen.Office, at.AddMinutes(10), "hire table", s => new SetHireStates(
            s, [new("out", "scuffed", null, "stainless"), new("look_first", "scuffed"), new("look_first", null, "repair")]));
    }

    /// <summary>The phone whose date was wrong is taken out; one record of it, found later, is let through.</summary>
    private static void SpareRevoked(Notebook log)
    {
        log.Write(Pen.Office, DockCalendar.At(log.Days.DaysAgo(130), 11, 0), "spare revoked", s => new RevokeDevice(s, Devices.Spare.Id));
        log.Write(Pen.Office, DockCalendar.At(log.Days.DaysAgo(128), 9, 0), "spare's record released", s => new ReleaseQuarantinedEntry(s, EntryId.Of("kept back from the spare")));
    }

    public static void Priced(Notebook log, string prop, string what, decimal amount, DateTimeOffset at) =>
        log.Write(Pen.Office, at, $"{prop} {what} cost", s => new Logbook.Props.TellPropCost(s, prop, what, amount, Currency));

    public static string Money => Currency;
}
