using FleetWake.Logbook.Alarms;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    /// <summary>Facts that gained a member since they were first stored, with that member: their first files stay as they are.</summary>
    public static IReadOnlyDictionary<string, IFact> Grown { get; } = new Dictionary<string, IFact>
    {
        ["mail_sent-said"] = new Logbook.Mail.MailSent(Entry, 1, "2.0.0 Ok: queued as 4F1"),
        ["recipient_subscribed-dock"] = new Logbook.People.RecipientSubscribed(Entry, "r-7", "due-list", "north-pier"),
        ["inspected-seen"] = new Inspected(Entry, "kea", Position.Port, [InspectionMark.Chips], [17.1, 16.9], Verdict.Fit, 412.7) { Seen = [InspectedPart.Shaft, InspectedPart.GearOil] },
        ["engine_registered-air"] = new EngineRegistered(Entry, "e1", "Four-stroke 50", 36.8, PowerUnit.Kw, 5000, 6000, 2.08, 25.1, TorqueUnit.PoundForceFoot, 50) { AirIntake = AirIntake.Supercharged },
        ["trial_run-trim"] = new TrialRun(
            Entry, "kea", Throttle.WideOpen,
            [new Run(22.7, SpeedUnit.KmPerH, 350.5, 30, [new TachometerReading(Position.Port, 5510, true) { Ventilated = true }])],
            [new MeterReading(Position.Port, 412.7)], 2, 150.5, 50, 18.3, 1013.2, 70, 8.1, 0.3)
        { TrimDegrees = 3.1, WaterDepthMetres = 4.7 },
        ["alarm_raised-drift"] = new AlarmRaised(Entry, "kea", Position.Port, "0198a6f2-5f00-7abc-8def-0123456789a8", AlarmKind.Drift, 2, 5810.1)
        { EvidenceToOne = 5.3, AlarmAtToOne = 4.1, FalseAlarmsPerBoatYear = 0.031, Trial = new Guid("0198a6f2-5f00-7abc-8def-0123456789a7"), Answered = 1, PriorNumber = 3 },
        ["digest_issued-dock"] = new DigestIssued(Entry, "monday", "2026-W47", ["m-1", "m-2"]) { Dock = "jetty" },
        ["digest_passed_over-dock"] = new DigestPassedOver(Entry, "monday", "2026-W46", "2026-W47") { Dock = "jetty" },
    };

    private static IReadOnlyList<IFact> OfUse() =>
    [
        new InspectionRuleSet(Entry, "grease-shaft", "grease the prop shaft", DutyTrigger.Interval, 2, 60.5, DutyDoneBy.DutyDone, WaterType.Brackish, PropMaterial.Stainless, "jetty", true),
        new HireStatesSet(Entry, [new HireRow(null, StrikeSeverity.NoMark, PropMaterial.Composite, HireWord.LookFirst), new HireRow(Verdict.TakeOff, null, null, HireWord.Out)]),
        new LookedOver(Entry, "kea", Position.Port, LookMoment.AfterHire, "hire-2031", LookSeen.NothingNew, "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"),
        new NutRetorqued(Entry, "kea", Position.Port, 33.9, TorqueUnit.NewtonMetre, true, 412.7),
        new DutyTaken(Entry, "kea", Position.Port, "grease-shaft"),
        new DutyDone(Entry, "kea", Position.Port, "grease-shaft", 412.7),
        new TakenOutOfHire(Entry, "kea", OutOfHireReason.Service),
        new ReturnedToHire(Entry, "kea", BackInHireReason.LookedAtDock),
        new LaidUp(Entry, "kea", new DateOnly(2026, 9, 30)),
        new BoatRelaunched(Entry, "kea"),
        new BoatRetired(Entry, "kea", BoatRetirement.Scrapped),
        new FleetPriorFitted(
            Entry, 3, "fleet-1",
            new FleetPriorFigures(0.031, new NoiseFigures(0.0071, 0.21), [new GroupFigures("aluminium", "silty", 5, [1, 2, 3])], [4, 5, 6], [new MemberFigures("0198a6f2-5f00-7abc-8def-0123456789a8", [7, 8, 9], 0.0069, 0.19)]),
            new SeasonOfUse([0.1, 0.2, 0.3, 0.4, 1.1, 1.2, 2.1, 2.2, 1.3, 1.4, 1, 0.7], 1.7, 2.3, 5.9, 4) { SeasonDoubt = 0.41 },
            new AlarmCalibration(1.45, 0.031, 0.021, 0.043, 801.5, 41, true),
            [new LearnedGain("Four-stroke 50", 0.41, 0.06, 7)], 40, 61, 388),
    ];
}
