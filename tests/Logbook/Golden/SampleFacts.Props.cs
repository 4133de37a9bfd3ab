using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    // Not a field: fields of another file would be set after the list is made.
    private static Guid Other => new("0198a6f2-5f00-7abc-8def-0123456789a7");

    private static IReadOnlyList<IFact> OfProps() =>
    [
        new EngineFitStated(Entry, "e1", "spline-a", 13, "hub-21", "washer-4", Rotation.Left, 14.1),
        new FasteningStated(Entry, "e1", Fastening.CastleNutCotterPin, 33.9, 40.7, TorqueUnit.PoundForceFoot, 2, false),
        new EngineServiced(Entry, "e1", [ServiceWork.GearOil, ServiceWork.ShaftGreased], 412.7),
        new PropFitStated(Entry, "p1", "spline-a", 13, "hub-21", "washer-4"),
        new PropSentToShop(Entry, "p1", "bay-props", ShopWish.Repitch, 15.3, new DateOnly(2026, 6, 26)),
        new PropBackFromShop(Entry, "p1", 15.4, 13.1),
        new PropRepaired(Entry, "p1", [RepairWork.Straightened, RepairWork.EdgeDressed], 15.4),
        new PropMeasured(Entry, "p1", 13.1, [15.4, 15.2, 15.3], PitchTool.ShopMachine),
        new PropRetired(Entry, "p1", PropRetirement.Corroded),
        new LoanerTaken(Entry, "p1", "bay-props", new DateOnly(2026, 6, 26)),
        new LoanerReturned(Entry, "p1"),
        new PropCostTold(Entry, "p1", PropCost.Freight, 1450.50m, "NZD"),
        new PropStored(Entry, "p1", "jetty"),
        new PartStocked(Entry, "pin-3x25", "Cotter pin 3 x 25", PartKind.CotterPin, "jetty", 50),
        new PartCounted(Entry, "pin-3x25", "jetty", 41),
        new PartUsed(Entry, "pin-3x25", "jetty", 2, "kea", Position.Port),
        new ClaimOpened(Entry, "kea", Position.Port, Other, "hire-2031", 250.00m, "NZD", new DateOnly(2026, 6, 20)),
        new ClaimCosted(Entry, "kea", Other, CostStage.Invoice, 312.45m, "NZD"),
        new ClaimClosed(Entry, "kea", Other, ClaimOutcome.Recovered, 250.00m, "NZD"),
        new DockOpened(Entry, "jetty", "The Jetty", "Pacific/Auckland", WaterType.Brackish, BottomKind.Gravel),
        new PersonInvited(Entry, "person-7", Role.Manager),
        new RoleGiven(Entry, "person-7", Role.Administrator),
        new DeviceEnrolled(Entry, "phone-1", "jetty"),
        new DeviceRevoked(Entry, "phone-1"),
        new ScheduleSet(Entry, ScheduledDigest.WeeklyWear, DayOfWeek.Monday, new TimeOnly(6, 30)),
        new DigestTimed(Entry, ScheduledDigest.DueList, "jetty", DigestRhythm.Weekly, [DayOfWeek.Monday, DayOfWeek.Thursday], 28, new TimeOnly(6, 30), "0 30 6 ? * MON", "Pacific/Auckland", HolidayRule.NextDay, "10-15", "04-15", MissedRule.All, true),
        new HolidaysSet(Entry, [new DateOnly(2026, 12, 25), new DateOnly(2026, 12, 26)]),
        new AlertsSet(Entry, new TimeOnly(21, 0), new TimeOnly(6, 30), 60, 25, true),
        new PriceSet(Entry, PricedThing.ShopRepitch, "bay-props", 95.00m, "NZD"),
        new QuarantinedEntryReleased(Entry, Other),
    ];
}
