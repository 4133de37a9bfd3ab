using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Statistics;

namespace FleetWake.Reports.Tests;

/// <summary>Skerry Bay Hire: an invented fleet in an invented place. Every number in it is made up for a case.</summary>
internal static class SkerryBay
{
    public const string Hire = "Skerry Bay Hire";
    public static readonly DateOnly Monday = new(2026, 11, 16);

    /// <summary>Drifts upwards and nears its top.</summary>
    public static BoatFinding WornSkiff() => Boat("Gannet", new Fitted(5000, 6000, Rpm: [5650, 5670, 5730, 5740, 5800, 5840, 5890], FirstHours: 212, Every: 21)
    {
        FittedAt = 205,
        Causes = ["a worn prop", "lost cup"],
        Evidence = (11.3, 5),
        NextTrial = new NextTrialCard(0.31, 0.22, 24),
    }.Position());

    /// <summary>Below its bottom: lugging.</summary>
    public static BoatFinding LuggingBoat() => Boat("Fulmar", new Fitted(5000, 6000, Rpm: [5010, 4980, 4960, 4930], FirstHours: 40, Every: 18)
    {
        FittedAt = 31,
        Causes = ["load", "fouling", "a weak engine"],
    }.Position());

    /// <summary>An open strike with a step, seven weeks ago: two stretches.</summary>
    public static BoatFinding StruckBoat() => Boat("Razorbill", new Fitted(5200, 6200, Rpm: [5700, 5710, 5735, 5860, 5880, 5905], FirstHours: 100, Every: 15)
    {
        FittedAt = 92,
        EveryDays = 14,
        StretchFrom = 3,
        Marks = [new HistoryMark(HistoryMarkKind.Strike, new DateOnly(2026, 10, 2), 138, "strike, chipped")],
        Steps = [new StepShown(["strike, chipped"], new DateOnly(2026, 10, 2), new Estimate(112, 32, 71, 153, 0.8)) { ShownByTrials = true }],
        NextTrial = new NextTrialCard(0.44, 0.31, 30),
        Strikes = [new OpenStrike(Id(71), new DateOnly(2026, 10, 2), StruckObject.Rock, StrikeSeverity.Chipped)],
    }.Position());

    /// <summary>Repitched between two stretches, with a strike at the same hour.</summary>
    public static BoatFinding RepitchedBoat() => Boat("Shag", new Fitted(5000, 6000, Rpm: [5990, 6030, 6050, 5600, 5620, 5450, 5640], FirstHours: 300, Every: 12)
    {
        FittedAt = 296,
        StretchFrom = 3,
        Drifts = false,
        Wrong = { [1] = 0.27, [5] = 0.92 },
        Marks =
        [
            new HistoryMark(HistoryMarkKind.Strike, new DateOnly(2026, 10, 13), 328, "strike, bent"),
            new HistoryMark(HistoryMarkKind.Repitch, new DateOnly(2026, 10, 16), 328.2, "repitched to 14 in"),
            new HistoryMark(HistoryMarkKind.Strike, new DateOnly(2026, 10, 20), 340, "strike, no mark"),
            new HistoryMark(HistoryMarkKind.Strike, new DateOnly(2026, 10, 22), 343, "strike, no mark"),
        ],
        Steps = [new StepShown(["strike, bent", "repitched to 14 in"], new DateOnly(2026, 10, 13), new Estimate(-428, 36, -474, -382, 0.8)) { ShownByTrials = true }],
        NextTrial = new NextTrialCard(0.02, 0.05, 40),
    }.Position());

    /// <summary>Two trials: no line, and the drift is the fleet's.</summary>
    public static BoatFinding NewBoat() => Boat("Tystie", new Fitted(5000, 6000, Rpm: [5500, 5520], FirstHours: 8, Every: 9)
    {
        FittedAt = 2,
        NextTrial = new NextTrialCard(0.07, 0.4, null),
    }.Position());

    /// <summary>Part-throttle and limiter trials among few counted ones.</summary>
    public static BoatFinding SetAsideBoat() => Boat("Whimbrel", new Fitted(5000, 6000, Rpm: [5700, 3400, 5750, 6150, 5780, 5760], FirstHours: 60, Every: 14)
    {
        FittedAt = 55,
        SetAside = { [1] = SetAsideReason.PartThrottle, [3] = SetAsideReason.LimiterReached, [5] = SetAsideReason.HoursUnknown },
    }.Position());

    /// <summary>Twins, unequally worn.</summary>
    public static BoatFinding Twin() => Boat(
        "Great Skua",
        new Fitted(5200, 6200, Rpm: [5800, 5855, 5930, 5990], FirstHours: 500, Every: 25) { Where = Position.Port, FittedAt = 492, Prop = "P-31" }.Position(),
        new Fitted(5200, 6200, Rpm: [5790, 5795, 5790, 5800], FirstHours: 500, Every: 25) { Where = Position.Starboard, FittedAt = 492, Drifts = false, Prop = "P-32" }.Position());

    /// <summary>The line smooths it to just inside; the last reading is over the top.</summary>
    public static BoatFinding ReadOver() => Boat("Dunlin", new Fitted(5000, 6000, Rpm: [5900, 5950, 5940, 6030], FirstHours: 80, Every: 20) { FittedAt = 75, PresentRpm = 5990, Drifts = false }.Position());

    /// <summary>Fitted, never trialled.</summary>
    public static BoatFinding Untried() => Boat("Knot", new Fitted(5000, 6000, Rpm: [], FirstHours: 0, Every: 1).Position());

    /// <summary>No prop on.</summary>
    public static BoatFinding Bare() => Boat("Smew", new PositionFinding(Position.Single, null, null, null, [], null, null));

    /// <summary>Only records of it have arrived.</summary>
    public static BoatFinding Unregistered() => new("boat-17", null, [], [], 3, "wear 1");

    /// <summary>Verdict: take off.</summary>
    public static BoatFinding TakenOff() => Boat("Dipper", new Fitted(5000, 6000, Rpm: [5600, 5610, 5600], FirstHours: 400, Every: 30)
    {
        FittedAt = 380,
        Drifts = false,
        LookedAt = new DateOnly(2026, 11, 12),
        Verdict = Verdict.TakeOff,
    }.Position());

    /// <summary>Quiet, in its band, and due soon.</summary>
    public static BoatFinding Quiet(string name = "Sanderling", int lookedDaysAgo = 30) => Boat(name, new Fitted(5000, 6000, Rpm: [5500, 5510, 5505], FirstHours: 20, Every: 10)
    {
        FittedAt = 15,
        Drifts = false,
        LookedAt = Monday.AddDays(-lookedDaysAgo),
    }.Position());

    public static IReadOnlyList<BoatFinding> Fleet() =>
    [
        Quiet(), WornSkiff(), LuggingBoat(), StruckBoat(), RepitchedBoat(), NewBoat(), SetAsideBoat(), Twin(), ReadOver(), Untried(), Bare(),
        Unregistered(), TakenOff(), Quiet("Turnstone", 190), Quiet("Little Tern", 176),
    ];

    public static BoatFinding Boat(string name, params PositionFinding[] positions) => new(
        $"boat-{name.ToLowerInvariant()}",
        new BoatCard(name, "North slip", "Atlantic/Faroe", WaterType.Salt, new DateOnly(2025, 4, 1)),
        positions,
        [],
        0,
        "wear 1");

    public static Guid Id(int n) => new(n, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
