using FleetWake.Statistics.Spares;

namespace FleetWake.Statistics.Tests.Spares;

/// <summary>Base stock, newsvendor and loss figures against scipy (computed, see Reference).</summary>
public class How_many_to_hold
{
    [Fact]
    public void The_figures_of_a_stock_are_those_of_the_table()
    {
        foreach (var row in Numbers("poisson_basestock.csv"))
        {
            var figures = BaseStock.Of(Need.Poisson(row[0]), (int)row[1]);
            Assert.Equal(row[2], figures.ReadyRate, 1e-9);
            Assert.Equal(row[3], figures.FillRate, 1e-9);
            Assert.Equal(row[4], figures.ExpectedWaiting, 1e-9);
            Assert.Equal(row[5], figures.ExpectedOnHand, 1e-9);
        }
    }

    [Fact]
    public void The_stock_for_a_service_is_the_smallest_in_the_table_that_gives_it()
    {
        foreach (var mean in Numbers("poisson_basestock.csv").GroupBy(row => row[0]))
        {
            var need = Need.Poisson(mean.Key);
            foreach (var service in new[] { 0.5, 0.8, 0.9, 0.95, 0.99 })
            {
                Assert.Equal(mean.First(row => row[2] >= service)[1], BaseStock.ForReadyRate(need, service).Stock);
                Assert.Equal(mean.First(row => row[3] >= service)[1], BaseStock.ForFillRate(need, service).Stock);
            }
        }
    }

    [Fact]
    public void One_order_before_the_season_is_the_newsvendors()
    {
        foreach (var row in Numbers("newsvendor_poisson.csv"))
        {
            var need = Need.Poisson(row[0]);
            Assert.Equal(row[2], Newsvendor.Quantity(need, row[1], 1 - row[1]));
            Assert.Equal(row[3], need.AtMost((int)row[2]), 1e-9);
        }
    }

    [Fact]
    public void Where_nobody_waits_the_share_turned_away_is_Erlangs()
    {
        foreach (var row in Numbers("erlang_loss.csv"))
            Assert.Equal(row[2], ErlangLoss.ShareTurnedAway(row[0], (int)row[1]), 1e-9);
    }

    [Fact]
    public void Where_nothing_is_asked_for_nothing_need_lie_there()
    {
        Assert.Equal(0, BaseStock.ForReadyRate(Need.None, 0.99).Stock);
        Assert.Equal(0, BaseStock.ForFillRate(Need.None, 0.99).Stock);
        Assert.Equal(0, Newsvendor.Quantity(Need.None, 1000, 1));
        Assert.Equal(0, ErlangLoss.ShareTurnedAway(0, 1));
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Throws<ArgumentOutOfRangeException>("stock", () => BaseStock.Of(Need.None, -1));
        Assert.Throws<ArgumentOutOfRangeException>("probability", () => BaseStock.ForReadyRate(Need.None, 1));
        Assert.Throws<ArgumentOutOfRangeException>("costOfOneShort", () => Newsvendor.Quantity(Need.None, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>("costOfOneLeft", () => Newsvendor.Quantity(Need.None, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("expectedAway", () => ErlangLoss.ShareTurnedAway(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>("stock", () => ErlangLoss.ShareTurnedAway(1, -1));
    }

    private static double[][] Numbers(string file) =>
        [.. ReferenceTable.Rows(file).Select(row => row.Select(ReferenceTable.Number).ToArray())];
}
