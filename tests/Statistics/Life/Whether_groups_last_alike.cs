using FleetWake.Statistics.Life;

namespace FleetWake.Statistics.Tests.Life;

/// <summary>The log-rank test against R's survival package (computed, see Reference).</summary>
public class Whether_groups_last_alike
{
    [Fact]
    public void Five_comparisons_come_out_as_in_R()
    {
        var groups = new Dictionary<string, Lifetime[][]>
        {
            ["aml"] = Lives.AmlByGroup,
            ["ovarian"] = Lives.OvarianByTreatment,
            ["lung_by_sex"] = Lives.LungBySex,
            ["veteran_by_trt"] = Lives.VeteranByTreatment,
            ["veteran_by_celltype"] = Lives.VeteranByCell,
        };
        foreach (var row in ReferenceTable.Rows("logrank.csv"))
        {
            var test = LogRank.Of(groups[row[0]])!;
            Lives.Close(ReferenceTable.Number(row[2]), test.ChiSquared, 1e-10);
            Assert.Equal(ReferenceTable.Number(row[3]), test.DegreesOfFreedom);
            Lives.Close(ReferenceTable.Number(row[4]), test.Probability, 1e-8);
            Same(row[5], test.Observed);
            Same(row[6], test.Expected);
        }

        // R sorts groups by name; which of them is which does not matter here.
        static void Same(string expected, IReadOnlyList<double> actual)
        {
            foreach (var (e, a) in expected.Split('|').Select(ReferenceTable.Number).Order().Zip(actual.Order()))
                Lives.Close(e, a, 1e-7);
        }
    }

    [Fact]
    public void One_stratum_alone_is_no_stratum()
    {
        Assert.Equal(LogRank.Of(Lives.AmlByGroup)!.ChiSquared, LogRank.OfStrata([Lives.AmlByGroup])!.ChiSquared);
    }

    /// <summary>Steel lasts as long as aluminium in each water, but aluminium is used where sand is.</summary>
    [Fact]
    public void A_material_is_not_blamed_for_the_water_it_was_used_in()
    {
        Lifetime[] Short(int count) => [.. Enumerable.Range(1, count).Select(i => new Lifetime(10 + i, true))];
        Lifetime[] Long(int count) => [.. Enumerable.Range(1, count).Select(i => new Lifetime(300 + i, true))];
        Lifetime[][] sand = [Short(20), Short(4)], rock = [Long(4), Long(20)]; // aluminium, steel

        Assert.True(LogRank.Of([[.. sand[0], .. rock[0]], [.. sand[1], .. rock[1]]])!.Probability < 1e-3);
        Assert.True(LogRank.OfStrata([sand, rock])!.Probability > 0.5);
    }

    [Fact]
    public void Groups_that_were_never_followed_together_count_for_no_degree_of_freedom()
    {
        Lifetime[] some = [new(100, true), new(200, true), new(300, false)];
        Lifetime[] other = [new(110, true), new(120, true), new(310, false)];
        var apart = LogRank.OfStrata([[some, other, [], []], [[], [], some, other]])!;
        Assert.Equal(2, apart.DegreesOfFreedom);
        Assert.Equal(2 * LogRank.Of([some, other])!.ChiSquared, apart.ChiSquared, 1e-10);
    }

    [Fact]
    public void Without_an_end_there_is_no_verdict_and_one_group_is_no_comparison()
    {
        Assert.Null(LogRank.Of([[new(10, false)], [new(20, false)]]));
        Assert.Null(LogRank.Of([[new(10, true)], []]));
        Assert.Throws<ArgumentException>("strata", () => LogRank.Of([[new(10, true)]]));
    }
}
