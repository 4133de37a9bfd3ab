using FleetWake.Logbook.Alarms;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Golden;

/// <summary>One fact of every type, every field filled with a number that shows any rounding.</summary>
internal static partial class SampleFacts
{
    private static readonly Entry Entry = new(
        new Guid("0198a6f2-5f00-7abc-8def-0123456789ab"), "mech-1", "phone-1", 42,
        new DateTimeOffset(2026, 5, 3, 10, 15, 30, TimeSpan.FromHours(12)), "Pacific/Auckland",
        new DateTimeOffset(2026, 5, 3, 10, 16, 0, TimeSpan.FromHours(12)), new DateTimeOffset(2026, 5, 2, 22, 17, 0, TimeSpan.Zero),
        -150, new Guid("0198a6f2-5f00-7abc-8def-0123456789aa"));

    public static IReadOnlyList<IFact> All { get; } = [.. First(), .. OfBoats(), .. OfProps(), .. OfUse()];

    private static IReadOnlyList<IFact> First() =>
    [
        new BoatRegistered(Entry, "kea", "Kea \"two\" – é", "jetty", "Pacific/Auckland", WaterType.Brackish, [Position.Port, Position.Starboard, Position.Centre]),
        new EngineRegistered(Entry, "e1", "Four-stroke 50", 36.8, PowerUnit.Kw, 5000, 6000, 2.08, 25.1, TorqueUnit.PoundForceFoot, 50),
        new EngineFitted(Entry, "kea", Position.Single, "e1", 412.7),
        new EngineInstalled(Entry, "e1", "kea", Position.Single),
        new HoursRead(Entry, "e1", 412.7),
        new PropRegistered(Entry, "p1", 13.25, 17.1, 3, PropMaterial.Stainless, Rotation.Left),
        new PropAcquired(Entry, "p1", PropCondition.Rebuilt),
        new PropIssued(Entry, "p1", "kea", Position.Port),
        new PropReturned(Entry, "p1", "kea", Position.Port),
        new Repitched(Entry, "p1", 17.1, 15.3, 13.1),
        new PropMounted(Entry, "kea", Position.Port, "p1", 412.7, true, false, true, 33.9, TorqueUnit.NewtonMetre, 2, true),
        new PropRemoved(Entry, "kea", Position.Port, "p1", 412.7, RemovalReason.OtherSize),
        new StrikeReported(Entry, "kea", Position.Port, StruckObject.Structure, StrikeSeverity.NoMark, 412.7),
        new Inspected(Entry, "kea", Position.Port, [InspectionMark.EdgeWear, InspectionMark.WaterInOil], [17.1, 16.9], Verdict.TakeOff, 412.7),
        new TrialRun(
            Entry, "kea", Throttle.WideOpen,
            [new Run(22.7, SpeedUnit.KmPerH, 350.5, 30, [new TachometerReading(Position.Port, 5510, true)]), new Run(22.3, SpeedUnit.MPerS, 170, null, [])],
            [new MeterReading(Position.Port, 412.7)], 2, 150.5, 50, 18.3, 1013.2, 70, 8.1, 0.3),
        new Retracted(Entry, new Guid("0198a6f2-5f00-7abc-8def-0123456789a9"), RetractionReason.RecordedTwice),
        new AlarmRaised(Entry, "kea", Position.Port, "0198a6f2-5f00-7abc-8def-0123456789a8", AlarmKind.AboveBand, 2, 6100.1),
        new AlarmLifted(Entry, "0198a6f2-5f00-7abc-8def-0123456789a8", AlarmKind.BelowBand, 2),
        new OperatorOpened(Entry, "Bay Hire", "Pacific/Auckland"),
        new RecipientSubscribed(Entry, "person-7", "monday"),
        new RecipientUnsubscribed(Entry, "person-7", "monday"),
        new DigestIssued(Entry, "monday", "2026-W47", ["m-1", "m-2"]),
        new DigestPassedOver(Entry, "monday", "2026-W46", "2026-W47"),
        new TemplateChosen(Entry, "weekly-wear.html.liquid", 3, "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"),
        new MailQueued(Entry, "person-7", "<m-1@example.org>"),
        new MailAttempted(Entry, 1),
        new MailSent(Entry, 1),
        new MailDeferred(Entry, 1, "451 later"),
        new MailUnclear(Entry, 1, "connection lost after DATA"),
        new MailRefused(Entry, 1, "550 no such box"),
        new MailPlanned(Entry, "weekly-wear", "2026-W47", "r-7", "m-1@example.org", "north-pier", "weekly-wear-2026-W47-r-7"),
        new MailComposed(Entry, "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08", 48211),
        new MailGivenUp(Entry, 24, "421 too busy"),
        new MailBounced(Entry, "5.1.1", "no such user"),
        new MailDelayed(Entry, "4.4.1", "no answer from host"),
        new MailUnsubscribed(Entry),
        new MailResendAsked(Entry, "weekly-wear-2026-W47-r-7-again-1"),
        new RecipientAsked(Entry, "r-7", "due-list", "north-pier"),
        new RecipientTakesNoMail(Entry, "r-7", "weekly-wear-2026-W47-r-7", "550 5.1.1 no such user"),
        new RecipientTriedAgain(Entry, "r-7"),
        new AlertHookSet(Entry, "hook.example"),
        new AlertHookEnded(Entry),
        new RecipientLeftOut(Entry, "r-7", "weekly-wear", "2026-W48"),
        new RecipientNotWrittenTo(Entry, "r-7", "weekly-wear", "2026-W48", "a name or an address cannot stand in a header"),
    ];
}
