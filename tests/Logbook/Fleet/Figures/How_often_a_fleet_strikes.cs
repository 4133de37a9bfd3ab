using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Figures;

public class How_often_a_fleet_strikes
{
    private static readonly StrikeRates s_worked = StrikeRates.Of(Worked.Fleet().Record());

    public static TheoryData<string[]> Rows() => [.. RTables.Rows("worked_fleet_strikes.csv")];

    /// <summary>Computed here with R 4.2.2 (Reference).</summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void Exact_limits_are_as_R_has_them(string[] row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var (name, marked) = (row[0].Split(' ')[0], row[0].EndsWith("marked", StringComparison.Ordinal));
        var rate = name == "fleet" ? s_worked.Fleet
            : name == "none" ? StrikeRates.Of(Worked.Boats("kea").With(Dock.Hours(Worked.Month(1), 250, "e-kea")).Record()).Fleet
            : s_worked.ByBoat.Concat(s_worked.ByDock).Single(g => g.Group == name);
        Assert.Equal((RTables.Number(row[1])!.Value, int.Parse(row[2])), (rate.EngineHours, marked ? rate.LeftMark : rate.Strikes));
        var exact = (marked ? rate.Marked : rate.All)!.Exact;
        Assert.Equal(RTables.Number(row[3])!.Value, exact.Value, 1e-9);
        Assert.Equal(RTables.Number(row[4])!.Value, exact.Low, 1e-8);
        Assert.Equal(RTables.Number(row[5])!.Value, exact.High!.Value, 1e-8);
    }

    [Fact]
    public void A_short_record_is_drawn_towards_the_others()
    {
        var (kea, moa) = (s_worked.ByBoat.Single(b => b.Group == "kea").All!, s_worked.ByBoat.Single(b => b.Group == "moa").All!);
        Assert.True(kea.Shrunk!.Value < kea.Exact.Value && moa.Shrunk!.Value > moa.Exact.Value);
        Assert.InRange(kea.OwnShare!.Value, 0.05, 0.95);
        Assert.True(moa.OwnShare > kea.OwnShare, "moa ran twice the hours");
        Assert.Equal(["mud", "rock"], s_worked.ByBottom.Select(b => b.Group));
        Assert.Equal("9 strikes in 4480 engine hours, 7 with a mark: 2.0 per 1,000 h (1.2 to 3.2), with a mark 1.6.", s_worked.Fleet.Sentence);
    }

    [Fact]
    public void Hours_and_strikes_belong_to_the_dock_of_that_day()
    {
        var rates = StrikeRates.Of(Worked.Boats("kea").With(
            Dock.Hours(Worked.Month(1), 100, "e-kea"), Strike(0, "first"),
            new RehomeBoat(Dock.At(Worked.Month(1), "moved"), "kea", "bay", Dock.Zone), Dock.Hours(Worked.Month(2), 130, "e-kea"), Strike(1, "second"), Strike(1, "third")).Record());
        Assert.Equal([("bay", 30, 2), ("jetty", 100, 1)], rates.ByDock.Select(d => (d.Group, Math.Round(d.EngineHours, 9), d.Strikes)));
        Assert.Equal(("unknown", "bottom not told", 2), (rates.ByBottom[^1].Group, rates.ByBottom[^1].Name, rates.ByBottom[^1].Strikes));
    }

    [Fact]
    public void Without_hours_no_rate_is_told()
    {
        var rates = StrikeRates.Of(new Fleet().With(Dock.Boat(), Strike(0, "first")).Record());
        Assert.Equal((0, 0, 1, null), (rates.Fleet.EngineHours, rates.Fleet.Strikes, rates.Fleet.OutsideHours, rates.Fleet.All));
        Assert.Null(rates.ByDock.Single().All);
        Assert.Equal("The fleet: no engine hours are known, so no rate is told. 1 more was told from a time without known hours.", rates.Sentence);
    }

    [Fact]
    public void A_strike_after_the_last_reading_waits_for_the_next()
    {
        var fleet = Worked.Boats("kea").With(Dock.Hours(Worked.Month(1), 100, "e-kea"), Strike(1, "late"));
        Assert.Equal((0, 1), (StrikeRates.Of(fleet.Record()).Fleet.Strikes, StrikeRates.Of(fleet.Record()).Fleet.OutsideHours));
        Assert.Equal(1, StrikeRates.Of(fleet.With(Dock.Hours(Worked.Month(2), 140, "e-kea")).Record()).Fleet.Strikes);
    }

    [Fact]
    public void One_boat_without_any_strike_gives_words_that_make_sense() => Assert.Equal(
        "The fleet: no strike in 250 engine hours; up to 9.2 per 1,000 h would still be no surprise.",
        StrikeRates.Of(Worked.Boats("kea").With(Dock.Hours(Worked.Month(1), 250, "e-kea")).Record()).Sentence);

    [Fact]
    public void A_boat_without_strikes_never_raises_anothers_exact_limits_or_the_fleets_rate()
    {
        var fewer = StrikeRates.Of(new Fleet().With(Worked.Fleet().Placed.Where(p => p.Stream is not ("boat/moa" or "engine/e-moa"))).Record());
        var sound = Worked.Fleet().With(Worked.Strikes("moa", "bent").Select(s => (ICommand)new Retract(Dock.At("2026-12-01T09:00", "back"), s.Entry!.Id, "typed_wrong", "moa")));
        var more = StrikeRates.Of(sound.Record());
        Assert.Equal(0, more.ByBoat.Single(b => b.Group == "moa").Strikes);
        foreach (var boat in fewer.ByBoat) Assert.Equal(boat.All!.Exact, more.ByBoat.Single(b => b.Group == boat.Group).All!.Exact);
        Assert.True(more.Fleet.All!.Exact.High < fewer.Fleet.All!.Exact.High);
    }

    private static ReportStrike Strike(int month, string label) => Dock.Strike(Worked.Month(month, "10T09:00"), label: label);
}
