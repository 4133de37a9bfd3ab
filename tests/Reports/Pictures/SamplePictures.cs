using System.Globalization;
using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Props;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;
using FleetWake.Reports.Pictures.Fleet;
using FleetWake.Statistics.Rates;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>One picture of each kind, and the kinds at their smallest and largest. Every number is made up; none is random.</summary>
internal static class SamplePictures
{
    private static readonly string[] s_birds =
        ["Avocet", "Brambling", "Crake", "Dotterel", "Eider", "Firecrest", "Garganey", "Hobby", "Ibis", "Jackdaw", "Kestrel", "Linnet", "Merlin", "Nightjar"];

    /// <summary>A name that somebody typed to see what happens.</summary>
    public static readonly string LongName = string.Concat(Enumerable.Repeat("Saint-Élie-de-la-Très-Longue-Jetée ", 6))[..200];

    public static IReadOnlyDictionary<string, Picture> All { get; } = new Dictionary<string, Picture>(StringComparer.Ordinal)
    {
        ["drift-worn"] = Drift(SkerryBay.WornSkiff()),
        ["drift-struck"] = Drift(SkerryBay.StruckBoat()),
        ["drift-repitched"] = Drift(SkerryBay.RepitchedBoat()),
        ["cusum"] = Sums(SkerryBay.WornSkiff()),
        ["causes"] = Causes(),
        ["correction"] = Correction(),
        ["strip"] = FleetStrip.Of(SkerryBay.Fleet(), SkerryBay.Hire)!,
        ["strip-one"] = FleetStrip.Of([SkerryBay.Quiet()], SkerryBay.Hire)!,
        ["strip-thousand"] = FleetStrip.Of(Many(1000), SkerryBay.Hire)!,
        ["slip-map"] = SlipMap.Of(Slipped(), SkerryBay.Hire)!,
        ["panels"] = DriftPanels.Of(Class(14))[0],
        ["panels-two"] = DriftPanels.Of(Class(2))[0],
        ["life"] = Lives(),
        ["strikes"] = Strikes(),
        ["calibration"] = CalibrationPicture.Of([Calibration(new DateOnly(2026, 10, 31), 24, 19, 9, 8, 14)])!,
        ["calibration-months"] = CalibrationPicture.Of([.. Enumerable.Range(5, 6).Select(m => Calibration(new DateOnly(2026, m, 28), 18 + m, 11 + m, m, m - 2, 30 - m))])!,
    };

    /// <summary>Boats alike in all but where they stand: a long tail at both ends.</summary>
    public static IReadOnlyList<BoatFinding> Many(int count, Func<int, string>? name = null) =>
    [
        .. Enumerable.Range(0, count).Select(i =>
        {
            var rpm = 5520 + (260 * Math.Sin(i * 1.7)) + (190 * Math.Sin(i * 0.37)) + (i % 97 == 0 ? 420 : 0);
            var boat = SkerryBay.Quiet(name?.Invoke(i) ?? $"Boat {i.ToString("000", CultureInfo.InvariantCulture)}");
            var fitted = new Fitted(5000, 6000, [rpm - 12, rpm, rpm + 8], 20 + i, 10) { FittedAt = 15 + i, Drifts = false };
            return boat with { Positions = [fitted.Position()] };
        }),
    ];

    /// <summary>Engines of one model, most of which go alike.</summary>
    public static IReadOnlyList<BoatFinding> Class(int count, Func<int, string>? name = null) =>
    [
        .. Enumerable.Range(0, count).Select(i =>
        {
            var trials = 4 + (i % 4);
            var slope = i == 3 ? 7.5 : i == 8 ? -6 : 1.1 + (0.4 * Math.Sin(i));
            var rpm = Enumerable.Range(0, trials).Select(t => Math.Round(5560 + (i == 8 ? -420 : 0) + (22 * Math.Sin(i * 2.3)) + (slope * t * 9) + (14 * Math.Sin((i * 5) + (t * 2.1))), 0)).ToArray();
            return SkerryBay.Boat(name?.Invoke(i) ?? s_birds[i % s_birds.Length], new Fitted(5000, 6000, rpm, 100 + (40 * i), 14 + (i % 3)) { FittedAt = 94 + (40 * i), Drifts = i == 3 }.Position());
        }),
    ];

    public static DriftPicture Drift(BoatFinding boat) => DriftPictures.Of(boat, boat.Positions[0])!;

    public static CusumPicture Sums(BoatFinding boat) => CusumPictures.Of(boat, boat.Positions[0])!;

    /// <summary>Boats whose RPM and slip moved, into each part of the map and into none.</summary>
    public static IReadOnlyList<BoatFinding> Slipped() =>
    [
        Moved("Gannet", 4.2, 3.4), Moved("Fulmar", -3.1, 8.5), Moved("Tystie", -3.4, 1.0), Moved("Smew", 2.4, -6.8), Moved("Dunlin", 0.2, 0.3), Moved("Knot", -0.3, 0.6),
        Moved("Shag", 0.4, -0.5), Moved("Whimbrel", 2.9, 2.4), Moved("Great Skua", 3.4, 2.7), Moved("Dipper", 0.1, -0.2), Moved("Razorbill", -0.6, -1.1),
    ];

    public static BoatFinding Moved(string name, double rpmPercent, double slipPoints)
    {
        var boat = SkerryBay.Boat(name, new Fitted(5000, 6000, [5500, 5500 * (1 + (rpmPercent / 200)), 5500 * (1 + (rpmPercent / 100))], 100, 20) { FittedAt = 95, Drifts = false }.Position());
        var mounting = boat.Positions[0].Mounting!;
        var trials = mounting.Trials.Select((t, i) => t with { SlipPercent = 11 + (slipPoints * i / 2), RpmSd = 22, SlipSdPercent = 0.9 }).ToList();
        return boat with { Positions = [boat.Positions[0] with { Mounting = mounting with { Trials = trials } }] };
    }

    public static IReadOnlyList<PropLifetime> SomeLives(int count = 46) =>
    [
        .. Enumerable.Range(0, count).Select(i =>
        {
            var material = (i % 5) switch { 0 or 1 or 2 => PropMaterial.Aluminium, 3 => PropMaterial.Stainless, _ => i > 30 ? PropMaterial.Aluminium : PropMaterial.Composite };
            var scale = material switch { PropMaterial.Aluminium => 620, PropMaterial.Stainless => 1150, _ => 330 };
            var hours = scale * Math.Pow(-Math.Log(((i * 7 % 23) + 0.5) / 23), 0.6);
            return new PropLifetime($"P-{i}", material, i % 2 == 0 ? WaterType.Salt : WaterType.Fresh, Math.Max(1, Math.Round(hours)), i % 3 == 0 ? LifeEnd.InUse : LifeEnd.Worn, true);
        }),
    ];

    public static LifeCurves Lives() => LifeCurves.Of(SomeLives(), l => Words.Of(l.Material!.Value), "by material", LifeQuestion.UsedUp)!;

    public static StrikeRatePicture Strikes() => StrikeRatePicture.Of(Rates([("North slip", 31, 4200), ("Long quay", 12, 6100), ("Old mole", 9, 3300), ("Ferry stage", 3, 4900), ("Far point", 1, 90)]))!;

    public static StrikeRates Rates(IReadOnlyList<(string Dock, int Strikes, double Hours)> docks)
    {
        StrikeRate Rate(string name, int strikes, double hours)
        {
            var exact = PoissonLimits.Rate(new Tally(strikes, hours / 1000), Limits.Level)!;
            return new StrikeRate(name, name, hours, strikes, strikes / 2, 0, new StrikeLimits(new Limits(exact.Value, exact.Low, exact.High)), null, "");
        }

        return new StrikeRates(Rate("fleet", docks.Sum(d => d.Strikes), docks.Sum(d => d.Hours)), [.. docks.Select(d => Rate(d.Dock, d.Strikes, d.Hours))], [], [], Limits.Level, "");
    }

    public static ForecastCalibration Calibration(DateOnly made, int judged, int held, int exits, int exitsHeld, int open)
    {
        IntervalCheck Checked(bool held) => new(held ? IntervalOutcome.Held : IntervalOutcome.Above, 5500, 5600, 0.8, held ? 5540 : 5620);
        IntervalCheck Left(bool held) => new(held ? IntervalOutcome.Held : IntervalOutcome.Below, 40, 160, 0.8, held ? 90 : 30);
        var still = new IntervalCheck(IntervalOutcome.Open, 60, 300, 0.8, null);
        return ForecastCalibration.Of(made,
        [
            .. Enumerable.Range(0, judged).Select(i => new ForecastCheck("b", "B", Position.Single, "m", Checked(i < held), i < exits ? Left(i < exitsHeld) : i < exits + open ? still : null, new ChanceCheck(i / (2.0 * judged), i > judged - 4))),
        ]);
    }

    public static CauseMap Causes() => CauseMap.Of(AgainstBaseline.Of(
        [.. new[] { (5650.0, 26.05), (5770, 25.9), (5890, 25.7) }.Select(t => (TrialCorrection.Of(Trial(t.Item1, t.Item2)), true))], new GearRatio(2.08), Prop, BoatResponse.Prior)!)!;

    public static CorrectionPicture Correction() => CorrectionPicture.Of(Trial(5650, 26.05), TrialCorrection.Of(Trial(5650, 26.05)));

    private static PropData Prop => new(Length.FromInches(13)) { Diameter = Length.FromInches(11.5), Blades = 3 };

    private static TrialReading Trial(double rpm, double knots) => new(
        [
            new RunReading(EngineRate.FromRevolutionsPerMinute(rpm), Speed.FromKnots(knots - 1), 90),
            new RunReading(EngineRate.FromRevolutionsPerMinute(rpm), Speed.FromKnots(knots + 1), 270),
        ],
        new TrialConditions { Air = new AirState(Temperature.FromCelsius(22), Pressure.FromHectopascals(1009), 0.6) },
        new EngineData
        {
            Gear = new GearRatio(2.08),
            BandLow = EngineRate.FromRevolutionsPerMinute(5000),
            BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
            TachometerStep = EngineRate.FromRevolutionsPerMinute(10),
        },
        Prop);
}
