using System.Globalization;
using System.Text.Json;
using FleetWake.Statistics.Use;
using static FleetWake.Statistics.Tests.ReferenceTable;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>Shares of the months, the rate of boats, and lumps.</summary>
public class What_a_fleet_tells_of_its_season
{
    private static readonly DateOnly s_newYear = new(2025, 1, 1);

    /// <summary>Outside values: use_shares.csv, computed by R 4.2.2 without a belief. Two lumps of it in some thousand hours are not felt.</summary>
    [Fact]
    public void Shares_and_lumps_are_those_that_another_program_finds_likeliest()
    {
        var boats = Rows("use_stretches.csv").GroupBy(r => r[0], r => new UseStretch(Day(r[1]), Day(r[2]), Number(r[3])));
        var season = SeasonOfUse.Fit([.. boats.Select(b => b.ToList())]);
        foreach (var row in Rows("use_shares.csv"))
        {
            Assert.Equal(Number(row[1]), season.MonthShares[int.Parse(row[0], CultureInfo.InvariantCulture) - 1], 0.02);
            Assert.InRange(season.OutingHours / Number(row[2]), 0.8, 1.2);
        }

        Assert.Equal(12, season.Boats);
        Assert.Equal(1, season.MonthShares.Average(), 1e-12);
        Assert.InRange(season.SeasonDoubt, 0.001, 0.1);
    }

    [Fact]
    public void Nobody_tells_anything_but_the_trade()
    {
        Assert.Equal(SeasonOfUse.Trade, SeasonOfUse.Fit([]));
        Assert.Equal(SeasonOfUse.Trade, SeasonOfUse.Fit([[], [new(s_newYear, s_newYear, 5)]]));
        Assert.Equal(1, SeasonOfUse.Trade.MonthShares.Average());
    }

    [Fact]
    public void One_boat_with_one_stretch_has_a_flat_year_and_the_doubt_of_the_trade()
    {
        var season = SeasonOfUse.Fit([[new(s_newYear, s_newYear.AddDays(30), 60)]]);
        Assert.All(season.MonthShares, share => Assert.Equal(1, share, 1e-9));
        Assert.InRange(season.MeanHoursPerDay, 1, 2);
        Assert.InRange(season.Shape, 1, 3);
        Assert.InRange(season.SeasonDoubt, 0.35, 0.41);
    }

    [Fact]
    public void Boats_that_are_alike_make_a_sharp_belief_and_unlike_ones_a_wide_one()
    {
        static SeasonOfUse Fleet(params double[] rates) => SeasonOfUse.Fit(
            [.. rates.Select(r => Enumerable.Range(0, 24).Select(i => new UseStretch(s_newYear.AddDays(30 * i), s_newYear.AddDays(30 * (i + 1)), 30 * r)).ToList())]);

        var (alike, unlike) = (Fleet(2, 2.1, 1.9, 2, 2.2, 1.8, 2, 2), Fleet(0.2, 4, 1, 7, 0.5, 2, 0.1, 3));
        Assert.True(alike.Shape > 3 * unlike.Shape);
        Assert.InRange(alike.MeanHoursPerDay, 1.8, 2.2);
    }

    [Fact]
    public void A_fleet_that_lies_ashore_in_winter_has_next_to_nothing_there()
    {
        var boat = Enumerable.Range(0, 24).Select(i => new UseStretch(s_newYear.AddMonths(i).AddDays(-1), s_newYear.AddMonths(i + 1).AddDays(-1), i % 12 is >= 4 and <= 8 ? 90 : 0)).ToList();
        var season = SeasonOfUse.Fit([.. Enumerable.Repeat(boat, 8)]);
        Assert.All(new[] { 0, 1, 2, 10, 11 }, m => Assert.InRange(season.MonthShares[m], 0, 0.03));
        Assert.All(new[] { 5, 6, 7 }, m => Assert.InRange(season.MonthShares[m], 2.2, 2.5));
    }

    [Fact]
    public void What_cannot_be_is_left_aside()
    {
        List<UseStretch> sound = [new(s_newYear, s_newYear.AddDays(90), 100), new(s_newYear.AddDays(90), s_newYear.AddDays(150), 200)];
        List<UseStretch> odd =
        [
            new(s_newYear, s_newYear, 3), new(s_newYear, s_newYear.AddDays(-3), 3), new(s_newYear, s_newYear.AddDays(9), -1),
            new(s_newYear, s_newYear.AddDays(9), double.NaN), new(s_newYear, s_newYear.AddDays(9), 1e300), new(s_newYear, s_newYear.AddDays(9), double.PositiveInfinity),
            new(DateOnly.MinValue, DateOnly.MaxValue, 100), new(s_newYear, s_newYear.AddDays(1), 49), default,
        ];
        Assert.Equal(SeasonOfUse.Fit([sound]), SeasonOfUse.Fit([[.. odd, .. sound], odd]));
        Assert.Equal(
            UsePosterior.Of(SeasonOfUse.Trade, sound).HoursPerDay, UsePosterior.Of(SeasonOfUse.Trade, [.. odd, .. sound]).HoursPerDay);
    }

    [Fact]
    public void It_can_be_written_down_and_read_back()
    {
        var season = SeasonOfUse.Fit([[new(s_newYear, s_newYear.AddDays(200), 300), new(s_newYear.AddDays(200), s_newYear.AddDays(300), 20)]]);
        Assert.Equal(season, JsonSerializer.Deserialize<SeasonOfUse>(JsonSerializer.Serialize(season)));
        Assert.NotEqual(season, SeasonOfUse.Trade);
    }

    private static DateOnly Day(string cell) => DateOnly.Parse(cell, CultureInfo.InvariantCulture);
}
