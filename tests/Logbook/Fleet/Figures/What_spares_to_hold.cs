using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;

namespace FleetWake.Logbook.Tests.Figures;

public class What_spares_to_hold
{
    private static readonly Fleet s_fitted = Worked.Fleet().With(
        Dock.Mounted(Worked.Month(8), "a4", boat: "kea", hours: 970), Worked.Prop("a8"), Dock.Mounted(Worked.Month(8), "a8", boat: "tui", hours: 1600));

    public static TheoryData<string[]> Rows() => [.. RTables.Rows("worked_fleet_spares.csv")];

    /// <summary>Computed here with R 4.2.2 (Reference); the code's coarser grid of the spread is within two in a hundred of it.</summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void The_worked_fleet_is_as_R_has_it(string[] row)
    {
        ArgumentNullException.ThrowIfNull(row);
        double R(int column) => RTables.Number(row[column])!.Value;
        var need = SpareNeeds.Of(s_fitted.Record()).Sizes.Single(s => Words.Of(s.Size.Material!.Value) == row[0]);
        Assert.Equal(((int)R(1), (int)R(2), (int)R(7)), (need.Count.Fitted, need.Wanted, need.BaseStock!.Value));
        Assert.Equal(R(3), need.FittedYears, 1e-4);
        Assert.Equal(R(4), need.Shrunk!.Value, 0.02 * R(4));
        Assert.Equal(R(6), need.ExpectedNeed!.Value, 0.02 * R(6));
        Assert.Equal(need.Count.AtHand == 0 ? R(8) : R(9), need.EnoughNow!.Value, 0.01);
    }

    [Fact]
    public void Only_what_is_fit_counts_as_at_hand_and_what_is_at_the_shop_comes_back()
    {
        // s1 came off for another size: at hand. s2 came off worn: to mend.
        var stainless = Stainless(s_fitted);
        Assert.Equal(new SizeCount(1, 0, 1, 1, 0), stainless.Count);
        Assert.Equal((2, 1), (stainless.BaseStock, stainless.ToOrder));
        Assert.Equal("1 fitted; 3 were wanted in 0.8 fitted years; 0.49 expected in 42 days. Hold 2: 1 at hand, 1 to mend, order 1.", stainless.Sentence);

        var sent = Stainless(s_fitted.With(new SendPropToShop(Dock.At(Worked.Month(8, "05T08:00"), "sent"), "s2", "bay-props", "repair")));
        Assert.Equal((new SizeCount(1, 0, 1, 0, 1), 0), (sent.Count, sent.ToOrder));
    }

    [Fact]
    public void The_fleets_sentence_says_what_to_order() => Assert.Equal(
        "To have spares enough for 42 days at 95 %: 3 of 13.25 x 13 aluminium, 3 blades, right; 1 of 13.25 x 13 stainless, 3 blades, right.",
        SpareNeeds.Of(s_fitted.Record()).Sentence);

    [Fact]
    public void A_longer_wait_a_busier_season_or_a_higher_level_never_wants_less()
    {
        int Stock(SpareQuestion question) => SpareNeeds.Of(s_fitted.Record(), question).Sizes.Sum(s => s.BaseStock ?? 0);
        var usual = Stock(new());
        Assert.True(Stock(new(LeadTimeDays: 120)) > usual);
        Assert.True(Stock(new(SeasonFactor: 3)) > usual);
        Assert.True(Stock(new(ServiceLevel: 0.999)) > usual);
        Assert.Equal(0, Stock(new(SeasonFactor: 0)));
    }

    [Theory]
    [InlineData(0, 0.95, 1)]
    [InlineData(double.NaN, 0.95, 1)]
    [InlineData(42, 1, 1)]
    [InlineData(42, 0.95, -1)]
    public void A_question_that_makes_no_sense_is_refused(double days, double level, double season) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpareNeeds.Of(s_fitted.Record(), new(days, level, season)));

    [Fact]
    public void A_planned_size_that_nobody_runs_is_listed_without_a_need()
    {
        var plan = new PlanProp(Dock.At(Worked.Month(0), "plan"), "kea", "single", "winter", 13.25, 11, 3);
        var sizes = SpareNeeds.Of(Dock.OneBoat().With(plan, new PlanProp(Dock.At(Worked.Month(0), "plan 2"), "kea", "single", "usual", 13.25, 13)).Record()).Sizes;
        Assert.Equal(["13.25 x 11, 3 blades", "13.25 x 13 aluminium, 3 blades, right"], sizes.Select(s => s.Size.ToString()));
        Assert.Equal((null, "0 at hand; none is fitted now, so no need is reckoned (1 planned)."), (sizes[0].ExpectedNeed, sizes[0].Sentence));
        Assert.Equal(new SizeCount(1, 1, 0, 0, 0), sizes[1].Count);
    }

    [Fact]
    public void A_prop_counts_by_what_a_shop_made_of_it()
    {
        var size = Assert.Single(SpareNeeds.Of(new Fleet().With(Dock.Prop(), new RepitchProp(Dock.At(Worked.Month(0), "repitch"), "p1", 13.9)).Record()).Sizes).Size;
        Assert.Equal(14, size.PitchInches);
    }

    [Fact]
    public void One_boat_that_never_struck_gives_words_that_make_sense()
    {
        var told = SpareNeeds.Of(Dock.OneBoat().With(Dock.Hours("2026-12-31T09:00", 300)).Record());
        var need = Assert.Single(told.Sizes);
        Assert.Equal(0, need.Wanted);
        Assert.InRange(need.ExpectedNeed!.Value, 0.01, 0.5);
        Assert.StartsWith("1 fitted; none was wanted in 1.0 fitted years;", need.Sentence, StringComparison.Ordinal);
        Assert.Equal("No prop of a known size is on record, so no spares are reckoned.", SpareNeeds.Of(new Fleet().Record()).Sentence);
    }

    [Fact]
    public void A_boat_that_left_the_fleet_wants_no_spares()
    {
        var left = SpareNeeds.Of(Dock.OneBoat().With(new RetireBoat(Dock.At("2026-06-01T09:00", "sold"), "kea", "sold"), Dock.Hours("2026-12-31T09:00", 300)).Record());
        Assert.Empty(left.Sizes);
    }

    [Fact]
    public void Small_parts_are_held_by_what_was_used_once_there_are_uses_enough()
    {
        Fleet Used(int times) => new Fleet().With(
            [new StockPart(Dock.At("2026-01-01T09:00", "stock"), "pin", "cotter_pin", "jetty", 20, "Pin"), .. Enumerable.Range(0, times).Select(i => (ICommand)new UsePart(Dock.At($"2026-{i + 1:00}-20T09:00", $"use {i}"), "pin", 2, "jetty"))]);
        var few = Assert.Single(SpareNeeds.Of(Used(2).Record()).Parts);
        Assert.Equal((null, "Pin: 2 uses are on record, too few to tell a need of (3 are wanted); 16 at hand."), (few.BaseStock, few.Sentence));

        // 12 uses in 353 days: 1.43 expected in 42 days; at least as much as qpois(0.95, 1.43) = 4 uses (R 4.2.2), each of 2 pins.
        var pin = Assert.Single(SpareNeeds.Of(Used(12).Record()).Parts);
        Assert.Equal((24, 353), (pin.Pieces, Math.Round(pin.Days)));
        Assert.Equal(2 * 12 * 42 / 353.0, pin.ExpectedPieces!.Value, 0.01);
        Assert.Equal((8, -4, 12), (pin.BaseStock, pin.AtHand, pin.ToOrder));
    }

    private static SpareNeed Stainless(Fleet fleet) => SpareNeeds.Of(fleet.Record()).Sizes.Single(s => s.Size.Material == PropMaterial.Stainless);
}
