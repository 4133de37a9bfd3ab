using CsCheck;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests;

/// <summary>Random records of a small world, so that they meet: two boats, two engines, two props, forty entries, a few hours.</summary>
internal static class Anything
{
    public static readonly string[] Boats = ["kea", "tui"];

    private static readonly string[] s_positions = ["single", "port", "starboard"];
    private static readonly double[] s_hours = [0, 1e-300, 0.1, 100, 100.4, 101, 521, 5210, 99_999];
    private static readonly double[] s_rpm = [300, 4999, 5000, 5500, 5500, 5500, 6000, 6001, 12_000];
    private static readonly double[] s_knots = [0, 0, 1e-300, 22.5, 22.5, 120];
    private static readonly int[] s_rises = [0, 1, 10, 25, 500, 1001];
    private static readonly string[] s_verdicts = ["fit", "watch", "repair", "take_off"];

    /// <summary>Up to forty records, and a seed to shuffle them by.</summary>
    public static Gen<(ICommand[] Records, int Seed)> Records { get; } = Gen.Select(Gen.Int[0, int.MaxValue].Array[8].Array[1, 40].Select(rolls => rolls.Select(Record).ToArray()), Gen.Int);

    /// <summary>Up to a dozen trials of the usual boat with hours that may all be true, and now and then a strike or a repitch between; and a seed.</summary>
    public static Gen<(ICommand[] Records, int Seed)> Trials { get; } = Gen.Select(
        Gen.Select(Gen.Int[1, 300], Gen.Int[0, 3], Gen.Int[0, 5].Select(i => s_rises[i]), Gen.Int[0, 9]).Array[3, 12].Select(rolls => rolls.Select(Trial).ToArray()), Gen.Int);

    public static IReadOnlyList<Placed> Kept(ICommand record) =>
        Fleet.Decide(record, new Arrival($"phone-{record.Entry!.Count % 3}", Dock.Arrived.ReceivedAt, null)) is Decision.Keep keep ? keep.Facts : [];

    private static ICommand Trial((int Day, int Rate, int Rise, int Kind) roll, int i)
    {
        var time = new DateTime(2026, 1, 6, 10, 0, 0).AddDays(roll.Day).ToString("yyyy-MM-ddTHH:mmZ", System.Globalization.CultureInfo.InvariantCulture);
        return roll.Kind switch
        {
            0 => Dock.Strike(time, label: $"strike {i}"),
            1 => new RepitchProp(Dock.At(time, $"repitch {i}"), "p1", 12 + roll.Rate),
            _ => Dock.Trial(time, 5000 + (roll.Day * roll.Rise / 300.0) + roll.Rate, roll.Kind == 2 ? null : 100 + (roll.Day * (roll.Kind == 3 ? 0 : 1 + roll.Rate)), limiter: roll.Kind == 4 && roll.Rate == 0)
                with
            { Entry = Dock.At(time, $"trial {i}") },
        };
    }

    private static ICommand Record(int[] rolls, int i)
    {
        string Of(string[] words, int roll) => words[rolls[roll] % words.Length];
        double? Maybe(double[] numbers, int roll) => rolls[roll] % 4 == 0 ? null : numbers[rolls[roll] / 4 % numbers.Length];

        var time = new DateTime(2026, 3, 1 + (rolls[1] % 28), rolls[1] % 3 == 0 ? 10 : 11, 0, 0).ToString("s", System.Globalization.CultureInfo.InvariantCulture);
        var at = Dock.At(time, $"any {i}", rolls[2] % 5 == 0 ? $"any {rolls[2] / 5 % 45}" : null) with { Count = rolls[2] % 7 };
        var (boat, engine, prop) = (Of(Boats, 3), Of(["e1", "e2"], 4), Of(["p1", "p2"], 4));
        var position = rolls[5] % 3 == 0 ? Of(s_positions, 6) : "single";
        return (rolls[0] % 31) switch
        {
            0 => Dock.Boat(boat: boat, positions: rolls[5] % 2 == 0 ? ["single"] : ["port", "starboard"]) with { Entry = at },
            1 => Dock.Engine(engine: engine) with { Entry = at, TachometerStepRpm = Maybe([1, 50, 500], 7), BandHighRpm = 5000 + (rolls[6] % 1500) + 1 },
            2 => new FitEngine(at, boat, position, engine, Maybe(s_hours, 7)),
            3 => new ReadHours(at, engine, s_hours[rolls[7] % s_hours.Length]),
            4 => Dock.Prop(prop: prop) with { Entry = at },
            5 => new RepitchProp(at, prop, 3 + (rolls[7] % 37)),
            6 or 7 => Dock.Mounted(prop: prop, position: position, boat: boat, hours: Maybe(s_hours, 7)) with { Entry = at },
            8 => Dock.Removed(time, rolls[7] % 3 == 0 ? null : prop, position, boat) with { Entry = at },
            9 => Dock.Strike(time, Of(["no_mark", "scuffed", "broken"], 7), position, boat) with { Entry = at },
            10 => Dock.Look(time, Of(s_verdicts, 7), position, rolls[6] % 4 == 0 ? ["hub_slip"] : []) with { Entry = at, Boat = boat },
            11 => new Retract(at with { Amends = null }, Dock.Id($"any {rolls[6] % 45}"), "typed_wrong", rolls[7] % 3 == 0 ? boat : null, rolls[7] % 3 == 1 ? engine : null, rolls[7] % 3 == 2 ? prop : null),
            12 => new ReadNormalisedRpm(at, boat, position, s_rpm[rolls[7] % s_rpm.Length], Maybe(s_hours, 6)),
            13 => new RemoveEngine(at, boat, position, rolls[7] % 2 == 0 ? null : engine, Maybe(s_hours, 6)),
            14 => new FindFitted(at, boat, position, rolls[7] % 3 == 0 ? null : prop, Maybe(s_hours, 6)),
            15 => new ReplaceMeter(at, engine, s_hours[rolls[7] % s_hours.Length], Maybe(s_hours, 6)),
            16 => new CheckTachometer(at, engine, s_rpm[rolls[7] % s_rpm.Length], s_rpm[rolls[6] % s_rpm.Length]),
            17 => rolls[7] % 2 == 0 ? new CleanHull(at, boat) : new CleanProp(at, boat, position),
            18 => new ChangeRig(at, boat, "trim_tabs", rolls[7] % 2 == 0 ? null : position),
            19 => new ReplaceHub(at, prop),
            20 => new RehomeBoat(at, boat, "quay", Dock.Zone, rolls[7] % 2 == 0 ? null : "silty"),
            21 => new PlanProp(at, boat, position, "usual", 13, 3 + (rolls[7] % 37)),
            22 => new SettleContradiction(
                at, boat, Of([.. Words.All(typeof(ContradictionKind))], 7), [.. Enumerable.Range(0, 1 + (rolls[6] % 2)).Select(i => Dock.Id($"any {(rolls[6] / 2 + i) % 45}"))], rolls[6] % 3 == 0 ? "corrected" : "both_stand"),
            23 => Paper(at, prop, rolls[6] % 8, rolls[7]),
            24 => (rolls[6] % 3) switch
            {
                0 => new StockPart(at, "pin", "cotter_pin", "jetty", 1 + (rolls[7] % 50)),
                1 => new CountPart(at, "pin", "jetty", rolls[7] % 50),
                _ => new UsePart(at, "pin", 1 + (rolls[7] % 3), rolls[7] % 2 == 0 ? "jetty" : null, rolls[6] % 2 == 0 ? boat : null),
            },
            25 => Dock.Mounted(prop: prop, position: position, boat: boat) with { Entry = at, Parts = [new("pin", 1 + (rolls[7] % 2), "jetty")] },
            _ => new RunTrial(
                at,
                boat,
                rolls[7] % 9 == 0 ? "part" : "wide_open",
                [.. Enumerable.Range(0, 1 + (rolls[6] % 4)).Select(run => Dock.Run(
                    s_knots[(rolls[5] + run) % s_knots.Length], run % 2 * 180, (position, s_rpm[(rolls[7] + (run % 2)) % s_rpm.Length], rolls[7] % 11 == 0)))],
                Maybe(s_hours, 4) is { } hours ? [new MeterSent(position, hours)] : null),
        };
    }

    private static ICommand Paper(Stamp at, string prop, int kind, int roll) => kind switch
    {
        0 => new SendPropToShop(at, prop, "shop", "repair"),
        1 => new TakePropBackFromShop(at, prop, roll % 2 == 0 ? 3 + (roll % 37) : null),
        2 => new RepairProp(at, prop, ["welded"], roll % 2 == 0 ? 3 + (roll % 37) : null),
        3 => new StoreProp(at, prop, roll % 2 == 0 ? "jetty" : "quay"),
        4 => new RetireProp(at, prop, "lost"),
        5 => roll % 2 == 0 ? new TakeLoaner(at, prop, "shop") : new ReturnLoaner(at, prop),
        6 => new MeasureProp(at, prop, [12.5, 3 + (roll % 37)], "pitch_gauge"),
        _ => new TellPropCost(at, prop, "shop", roll % 1000, roll % 2 == 0 ? "NZD" : "AUD"),
    };
}
