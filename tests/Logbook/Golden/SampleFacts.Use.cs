using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Golden;

internal static partial class SampleFacts
{
    /// <summary>Facts that gained a member since they were first stored, with that member: their first files stay as they are.</summary>
    public static IReadOnlyDictionary<string, IFact> Grown { get; } = new Dictionary<string, IFact>
    {
        ["inspected-seen"] = new Inspected(Entry, "kea", Position.Port, [InspectionMark.Chips], [17.1, 16.9], Verdict.Fit, 412.7) { Seen = [InspectedPart.Shaft, InspectedPart.GearOil] },
        ["engine_registered-air"] = new EngineRegistered(Entry, "e1", "Four-stroke 50", 36.8, PowerUnit.Kw, 5000, 6000, 2.08, 25.1, TorqueUnit.PoundForceFoot, 50) { AirIntake = AirIntake.Supercharged },
        ["trial_run-trim"] = new TrialRun(
            Entry, "kea", Throttle.WideOpen,
            [new Run(22.7, SpeedUnit.KmPerH, 350.5, 30, [new TachometerReading(Position.Port, 5510, true) { Ventilated = true }])],
            [new MeterReading(Position.Port, 412.7)], 2, 150.5, 50, 18.3, 1013.2, 70, 8.1, 0.3)
        { TrimDegrees = 3.1, WaterDepthMetres = 4.7 },
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
    ];
}
