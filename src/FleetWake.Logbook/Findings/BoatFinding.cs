using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>The assessed state of one boat. It does not depend on the clock: what depends on today is an outlook.</summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Registered">What its registration says; null while only records of it have arrived.</param>
/// <param name="Positions">Each engine position, in the boat's order.</param>
/// <param name="Contradictions">What a person has to settle.</param>
/// <param name="Held">How many records wait for the boat's registration.</param>
/// <param name="Method">Name and version of the method that assessed it.</param>
public sealed record BoatFinding(
    string Boat,
    BoatCard? Registered,
    IReadOnlyList<PositionFinding> Positions,
    IReadOnlyList<Contradiction> Contradictions,
    int Held,
    string Method)
{
    /// <summary>Number of the fleet prior that it was made under; 0 for what the trade expects.</summary>
    public int PriorNumber { get; init; }

    /// <summary>Its prop plan, by position and use.</summary>
    public IReadOnlyList<PlannedProp> PropPlan { get; init; } = [];

    /// <summary>How far apart port and starboard turned at their last trial; null when they did not by more than their gauges can tell.</summary>
    public TwinSplit? Split { get; init; }

    /// <summary>The last time it was laid up; null when it never was.</summary>
    public LayUpCard? LayUp { get; init; }

    /// <summary>Somebody took it out of hire.</summary>
    public HoldCard? Hold { get; init; }

    /// <summary>It left the fleet.</summary>
    public RetiredCard? Retired { get; init; }

    /// <summary>Open claims with a deadline, in the order in which they were opened.</summary>
    public IReadOnlyList<ClaimDue> ClaimsDue { get; init; } = [];

    /// <summary>Its newest trials, whichever prop they were run with, in order; empty in findings that were made before they were kept.</summary>
    public IReadOnlyList<TrialDay> LastTrials { get; init; } = [];

    /// <summary>It is laid up now.</summary>
    public bool IsLaidUp() => LayUp is { RelaunchedOn: null };

    /// <summary>The boat's name, or its id while it is not registered.</summary>
    public string DisplayName() => Registered?.Name ?? Boat;
}

/// <summary>That a trial was run.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="On">Dock's date.</param>
public sealed record TrialDay(Guid Entry, DateOnly On);

/// <summary>What a boat's registration says.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Dock">Home dock, the latest told.</param>
/// <param name="DockZone">IANA zone of the dock.</param>
/// <param name="Water">Water it works in.</param>
/// <param name="RegisteredOn">Dock's date of registration.</param>
public sealed record BoatCard(string Name, string Dock, string DockZone, WaterType Water, DateOnly RegisteredOn)
{
    /// <summary>Bottom under that water, when told.</summary>
    public BottomKind? Bottom { get; init; }
}

/// <summary>The assessed state of one engine position.</summary>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that hangs there, if any.</param>
/// <param name="EngineHours">Last credible hour-meter reading [h].</param>
/// <param name="Mounting">The prop fitted there with its wear, if any.</param>
/// <param name="OpenStrikes">Strikes that no later "fit" has cleared.</param>
/// <param name="LastInspection">The last inspection at the position.</param>
/// <param name="LookedAtOn">When prop and shaft were last in hand: the last inspection or mounting, else the day the engine was fitted, the prop was found, or the boat was registered.</param>
public sealed record PositionFinding(
    Position Position,
    EngineCard? Engine,
    double? EngineHours,
    MountingFinding? Mounting,
    IReadOnlyList<OpenStrike> OpenStrikes,
    InspectionCard? LastInspection,
    DateOnly? LookedAtOn)
{
    /// <summary>Inspections that said "take off" or "repair", or saw a slipping hub, a crack or water in the oil, and that no later "fit" has cleared, in order. A later "watch" clears nothing.</summary>
    public IReadOnlyList<InspectionCard> Uncleared { get; init; } = [];

    /// <summary>Damage that a short look saw, with no "fit" since.</summary>
    public DamageSeen? Damage { get; init; }

    /// <summary>What the prop or the engine brought with it from another boat or position.</summary>
    public IReadOnlyList<CarriedSuspicion> Carried { get; init; } = [];

    /// <summary>The last time of each thing that was done here. Looks and fittings of a prop count as inspections, for prop and shaft are in hand.</summary>
    public IReadOnlyList<Doing> Doings { get; init; } = [];

    /// <summary>When the engine was hung, from which the clock of what was never done runs.</summary>
    public Doing? Began { get; init; }

    /// <summary>Duties that somebody took.</summary>
    public IReadOnlyList<TakenDuty> Taken { get; init; } = [];

    /// <summary>First sign that the present mounting was out: a trial, a return from hire, a strike, hours run.</summary>
    public DateOnly? FirstOutingOn { get; init; }

    /// <summary>The nut was tightened again since the first outing, or a "fit" was given since with the nut in view.</summary>
    public bool RetorqueSeenTo { get; init; }

    /// <summary>How much the engine runs; null while its readings do not tell.</summary>
    public UseRate? Use { get; init; }

    /// <summary>When the present prop was fitted; null when it was found there.</summary>
    public Doing? Fitted { get; init; }

    /// <summary>Strikes that left a mark, open or not, while the present engine hung there, and whichever others are open.</summary>
    public IReadOnlyList<StruckCard> Struck { get; init; } = [];

    /// <summary>What was done here since the first outing of the present mounting.</summary>
    public IReadOnlyList<DoneThing> DoneSinceOuting { get; init; } = [];

    /// <summary>What was done here since the boat was last laid up.</summary>
    public IReadOnlyList<DoneThing> DoneSinceLayUp { get; init; } = [];

    /// <summary>The registration does not name it and no engine stays there: a record was typed wrong.</summary>
    public bool NotOnBoat { get; init; }

    /// <summary>Since when no engine hangs there; null while one does, or when nobody ever told of one.</summary>
    public DateOnly? EngineOffOn { get; init; }

    /// <summary>Since when no prop is on; null while one is, or when nobody ever told of one.</summary>
    public DateOnly? PropOffOn { get; init; }
}

/// <summary>What is known of an engine.</summary>
/// <param name="Engine">The engine's id.</param>
/// <param name="Model">Model name; null while it is not registered.</param>
/// <param name="BandLowRpm">Bottom of the rated band [RPM].</param>
/// <param name="BandHighRpm">Top of the rated band [RPM].</param>
/// <param name="GearRatio">Engine turns per prop turn.</param>
/// <param name="NutTorque">Nut torque of its manual, in its unit.</param>
/// <param name="NutTorqueUnit">Unit of the nut torque.</param>
/// <param name="TachometerStepRpm">Smallest step of its tachometer [RPM].</param>
public sealed record EngineCard(
    string Engine,
    string? Model,
    double? BandLowRpm,
    double? BandHighRpm,
    double? GearRatio,
    double? NutTorque,
    TorqueUnit? NutTorqueUnit,
    double? TachometerStepRpm)
{
    /// <summary>What the last check of its tachometer showed; null when nobody checked it.</summary>
    public TachometerCard? Tachometer { get; init; }

    /// <summary>How it takes its air; null when nobody said, which counts as naturally aspirated.</summary>
    public AirIntake? AirIntake { get; init; }

    /// <summary>What holds its prop, by its manual; null while nobody stated it.</summary>
    public Fastening? Fastening { get; init; }

    /// <summary>Whether a re-torque after the first outing applies; null when nobody stated it.</summary>
    public bool? Retorque { get; init; }
}

/// <summary>A strike that no later "fit" has cleared.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="On">Dock's date of the strike.</param>
/// <param name="Object">What was hit.</param>
/// <param name="Severity">How hard.</param>
public sealed record OpenStrike(Guid Entry, DateOnly On, StruckObject Object, StrikeSeverity Severity)
{
    /// <summary>Material of the prop that was struck, where known.</summary>
    public PropMaterial? Material { get; init; }

    /// <summary>Day of a short look since that saw no damage; of a scuff only, for whatever is heavier needs an inspection.</summary>
    public DateOnly? LookedOverOn { get; init; }

    /// <summary>Day on which somebody put the boat back in hire in spite of it.</summary>
    public DateOnly? LiftedOn { get; init; }

    /// <summary>Day of the last "fit" since that did not see what this strike asks for, and so cleared nothing.</summary>
    public DateOnly? ShortFitOn { get; init; }

    /// <summary>The entry that it was first told by; null where that is <see cref="Entry"/>, for nobody amended it.</summary>
    public Guid? Original { get; init; }
}

/// <summary>An inspection in short.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Verdict">Its verdict.</param>
/// <param name="Marks">What was seen.</param>
public sealed record InspectionCard(DateOnly On, Verdict Verdict, IReadOnlyList<InspectionMark> Marks)
{
    /// <summary>Day on which somebody put the boat back in hire in spite of it. It does not lift "take off".</summary>
    public DateOnly? LiftedOn { get; init; }

    /// <summary>Material of the prop that was looked at, where known.</summary>
    public PropMaterial? Material { get; init; }

    /// <summary>Its entry id; null in findings that were made before it was kept.</summary>
    public Guid? Entry { get; init; }

    /// <summary>The entry that it was first told by; null where that is <see cref="Entry"/>, for nobody amended it.</summary>
    public Guid? Original { get; init; }
}

/// <summary>Damage that a short look saw.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Moment">When in a hire.</param>
/// <param name="LiftedOn">Day on which somebody put the boat back in hire in spite of it; null when nobody did.</param>
public sealed record DamageSeen(DateOnly On, LookMoment Moment, DateOnly? LiftedOn);

/// <summary>What is known of a fitted prop.</summary>
/// <param name="Prop">The tag.</param>
/// <param name="DiameterInches">Diameter now [in]; null while it is not registered.</param>
/// <param name="PitchInches">Pitch now [in].</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Material">Material.</param>
public sealed record PropCard(string Prop, double? DiameterInches, double? PitchInches, int? Blades, PropMaterial? Material);
