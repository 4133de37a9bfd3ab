using CsCheck;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Boats;

public class The_history_in_any_order
{
    /// <summary>A season of two boats that swap props and engines, with corrections; ten thousand facts on their streams.</summary>
    private static readonly Fleet s_season = Season();

    [Fact]
    public void Ten_thousand_facts_shuffled_and_tripled_tell_the_same_history_and_finding()
    {
        Assert.InRange(s_season.Placed.Count, 10_000, 12_000);
        var kea = s_season.Told();
        var tui = s_season.Told("tui");
        Placed[] told = [.. s_season.Placed, .. s_season.Placed, .. s_season.Placed];
        new Random(1).Shuffle(told);
        var fleet = new Fleet().With(told);
        Assert.Equal(kea, fleet.Told());
        Assert.Equal(tui, fleet.Told("tui"));
    }

    /// <summary>No accepted records make an assessment throw, whatever nonsense they are, and their order of arrival never matters.</summary>
    [Fact]
    public void Any_accepted_records_can_be_assessed() => Anything.Records.Sample(t => Assessed(t.Seed % 2 == 0 ? Dock.OneBoat() : new Fleet(), t.Records, t.Seed), iter: 3000);

    [Fact]
    public void Any_accepted_trials_can_be_assessed() => Anything.Trials.Sample(t => Assessed(Dock.OneBoat(), t.Records, t.Seed), iter: 3000);

    private static void Assessed(Fleet start, ICommand[] records, int seed)
    {
        var fleet = start.With(records.SelectMany(Anything.Kept));
        Placed[] shuffled = [.. fleet.Placed];
        new Random(seed).Shuffle(shuffled);
        foreach (var boat in Anything.Boats) Assert.Equal(fleet.Told(boat), new Fleet().With(shuffled).Told(boat));
    }

    private static Fleet Season()
    {
        var start = new DateTime(2026, 1, 5, 10, 0, 0);
        string Day(int i) => start.AddMinutes(25 * i).ToString("yyyy-MM-ddTHH:mmZ", System.Globalization.CultureInfo.InvariantCulture);
        IEnumerable<ICommand> records =
        [
            Dock.Boat(), Dock.Boat(boat: "tui"), Dock.Engine(), Dock.Engine(engine: "e2"), Dock.Fitted(), Dock.Fitted(engine: "e2", boat: "tui"),
            Dock.Prop(), Dock.Prop(prop: "p2"),
            .. Enumerable.Range(0, 9000).Select(i => (ICommand)((i % 20) switch
            {
                0 => Dock.Mounted(Day(i), i % 80 == 0 ? "p1" : "p2", boat: i % 40 == 0 ? "kea" : "tui"),
                1 or 2 => Dock.Hours(Day(i), 100 + (i / 9), i % 20 == 1 ? "e1" : "e2"),
                3 => Dock.Look(Day(i), i % 60 == 3 ? "take_off" : "fit"),
                4 => Dock.Strike(Day(i), label: $"strike {i}"),
                5 => new Logbook.Entries.Retract(Dock.At(Day(i), $"back {i}"), Dock.Id($"strike {i - (i % 40 == 5 ? 1 : 2)}"), "did_not_happen", Dock.Kea),
                6 => Dock.Removed(Day(i), i % 40 == 6 ? "p1" : "p2"),
                7 => Dock.Mounted(Day(i), "p1") with { Entry = Dock.At(Day(i - 1), $"amended mount {i}", $"mount p1 kea {Day(i - 7)}") },
                8 => Dock.Fitted(Day(i), i % 600 == 8 ? "e2" : "e1", hours: null),
                9 => Dock.Trial(Day(i), 5400 + (i % 700), i % 40 == 9 ? 100 + (i / 9) : null),
                10 => new RepitchProp(Dock.At(Day(i), $"repitch {i}"), i % 40 == 10 ? "p1" : "p2", 12 + (i % 3)),
                _ => new AcquireProp(Dock.At(Day(i), $"bought {i}"), i % 2 == 0 ? "p1" : "p2", "used"),
            })),
        ];
        return new Fleet().With(records);
    }
}
