using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Figures;

public class How_long_props_last
{
    private static readonly PropLives s_usedUp = PropLives.Of(Worked.Fleet().Record());
    private static readonly PropLives s_worn = PropLives.Of(Worked.Fleet().Record(), LifeQuestion.Worn);

    public static TheoryData<string[]> Rows() => [.. RTables.Rows("worked_fleet_life.csv")];

    /// <summary>Computed here with R 4.2.2, survival 3.5-3 (Reference).</summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void The_worked_fleet_is_as_R_has_it(string[] row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var lives = row[0] == "worn" ? s_worn : s_usedUp;
        var (first, second, third) = (RTables.Number(row[4]), RTables.Number(row[5]), RTables.Number(row[6]));
        if (row[2] == "log-rank")
        {
            var test = row[1] switch { "materials" => lives.Materials!, "waters" => lives.Waters!, _ => lives.MaterialsWithinWaters! };
            Assert.Equal(1, test.DegreesOfFreedom);
            Assert.Equal(first!.Value, test.ChiSquared, 1e-9);
            Assert.Equal(second!.Value, test.Probability, 1e-9);
            return;
        }

        var group = lives.ByMaterial.Concat(lives.ByWater).Single(g => g.Group == row[1]);
        switch (row[2])
        {
            case "weibull":
                var weibull = group.Weibull!;
                Assert.Equal(int.Parse(row[3]), group.Ended);
                Assert.Equal(first!.Value, weibull.Shape.Value, 1e-5);
                Assert.Equal(second!.Value, weibull.ScaleHours.Value, 1e-3);
                Assert.Equal(third!.Value, weibull.MeanHours, 1e-3);
                Assert.True(weibull.Shape.Low < weibull.Shape.Value && weibull.ScaleHours.High > weibull.ScaleHours.Value);
                break;
            case "median":
                Assert.Equal(int.Parse(row[3]), group.Props);
                Assert.Equal((first == 565 ? 520 : first, second), (group.MedianHours!.Hours, group.MedianHours.LowHours));
                if (row[..2] is not ["used_up", "aluminium"]) Assert.Equal(third, group.MedianHours.HighHours); // R has no limits where none is left
                break;
            default:
                var alive = group.Alive.Single(a => a.EngineHours == RTables.Number(row[2]));
                Assert.Equal((int.Parse(row[3]), first!.Value), (alive.Followed, Math.Round(alive.Share.Value, 10)));
                if (first == 1) break; // R has no limits before the first end
                Assert.Equal(second!.Value, alive.Share.Low, 1e-9);
                Assert.Equal(third!.Value, alive.Share.High!.Value, 1e-9);
                break;
        }
    }

    [Fact]
    public void Too_small_a_group_says_so_instead_of_numbers()
    {
        var silty = s_usedUp.ByWater.Single(g => g.Group == "silty");
        Assert.Equal((4, 3), (silty.Props, silty.Ended));
        Assert.Empty(silty.Alive);
        Assert.Null(silty.MedianHours);
        Assert.Null(silty.Weibull);
        Assert.Equal("4 silty-water props: too few to say how long they last, 5 are wanted.", silty.Sentence);
        Assert.Null(s_worn.ByMaterial.Single(g => g.Group == "stainless").Weibull); // two ends
    }

    [Fact]
    public void Few_ends_are_told_to_be_rough_and_the_sentences_read_so()
    {
        Assert.True(s_usedUp.Materials!.Rough);
        Assert.Equal(
            "Of 7 aluminium props 5 were used up in 1820 engine hours; half last 340 h (210 to 410 h); the older they are, the sooner they end.",
            s_usedUp.ByMaterial[0].Sentence);
        Assert.Equal("12 props are followed from new; 8 of them were used up.", s_usedUp.Sentence);
        Assert.Equal(
            "If aluminium and stainless lasted alike, a difference like this would come in less than 1 of 100 fleets; with so few ends that is rough.", s_usedUp.Materials.Sentence);
    }

    [Fact]
    public void What_has_no_age_is_left_out_and_told()
    {
        var lives = Lives(
            new RegisterProp(Dock.At(Worked.Month(0), "found"), "f1", 13, 13, 3, "aluminium", "right"),
            new FindFitted(Dock.At(Worked.Month(0), "find"), "kea", "single", "f1", 10), Dock.Hours(Worked.Month(1), 50, "e-kea"),
            Dock.Removed(Worked.Month(1), "f1") with { Why = "worn" },
            Worked.Prop("u1"), new AcquireProp(Dock.At(Worked.Month(0), "used"), "u1", "used"), Dock.Mounted(Worked.Month(2), "u1", hours: 60), Dock.Hours(Worked.Month(3), 90, "e-kea"),
            Worked.Prop("n1"),
            Worked.Prop("l1"), new TakeLoaner(Dock.At(Worked.Month(0), "loan"), "l1", "bay-props"));
        Assert.Equal(0, lives.Props);
        Assert.Equal(
            [new LeftOut(LifeLeftOut.FoundFitted, 1), new(LifeLeftOut.CameUsed, 1), new(LifeLeftOut.OnLoan, 1), new(LifeLeftOut.NeverFitted, 1)], lives.LeftOut);
        Assert.Equal(
            "No prop's life can be followed from new yet. Left out: 1 found fitted, of unknown age, 1 that came used, 1 on loan, 1 never fitted.", lives.Sentence);
    }

    [Fact]
    public void A_life_is_the_hours_while_it_was_fitted_over_all_its_mountings()
    {
        var life = Life(
            Dock.Mounted(Worked.Month(0), hours: 0), Dock.Removed(Worked.Month(1, "03T09:00")) with { Hours = 100 },
            Worked.Prop("other"), Dock.Mounted(Worked.Month(1), "other", hours: 100), Dock.Removed(Worked.Month(2, "03T09:00"), "other") with { Hours = 180 },
            Dock.Mounted(Worked.Month(2), hours: 180), Dock.Hours(Worked.Month(3), 230, "e-kea"));
        Assert.Equal((150, LifeEnd.InUse, false), (life.EngineHours, life.End, life.ToldNew));
    }

    [Fact]
    public void The_water_is_that_of_most_hours_also_where_the_boat_moved_meanwhile()
    {
        WaterType? Water(double hoursAtMove) => Life(
            Dock.Mounted(Worked.Month(0), hours: 0), Dock.Hours(Worked.Month(1), hoursAtMove, "e-kea"),
            new RehomeBoat(Dock.At(Worked.Month(1), "moved"), "kea", "bay", Dock.Zone, "fresh"), Dock.Hours(Worked.Month(2), 100, "e-kea")).Water;
        Assert.Equal(WaterType.Salt, Water(60));
        Assert.Equal(WaterType.Fresh, Water(40));
    }

    [Theory]
    [InlineData("worn", LifeEnd.Worn)]
    [InlineData("struck", LifeEnd.InUse)]
    [InlineData("shop", LifeEnd.InUse)]
    public void Coming_off_ends_a_life_only_as_worn(string why, LifeEnd end) => Assert.Equal(
        end, Life(Dock.Mounted(Worked.Month(0), hours: 0), Dock.Removed(Worked.Month(1)) with { Why = why, Hours = 100 }).End);

    [Fact]
    public void Worn_and_put_on_again_as_it_was_it_goes_on_and_mended_it_has_ended()
    {
        ICommand[] records =
        [
            Dock.Mounted(Worked.Month(0), hours: 0), Dock.Removed(Worked.Month(1)) with { Why = "worn", Hours = 100 },
            Dock.Mounted(Worked.Month(2), hours: 130), Dock.Hours(Worked.Month(3), 170, "e-kea"),
        ];
        Assert.Equal((140, LifeEnd.InUse), (Life(records).EngineHours, Life(records).End));
        var mended = Life([.. records, new RepitchProp(Dock.At(Worked.Month(1, "20T09:00"), "repitch"), "p1", 13)]);
        Assert.Equal((100, LifeEnd.Worn), (mended.EngineHours, mended.End));
    }

    [Fact]
    public void Without_a_reading_in_time_no_age_is_told()
    {
        Assert.Equal([new LeftOut(LifeLeftOut.HoursNotKnown, 1)], Lives(Worked.Prop("p1"), Dock.Mounted(Worked.Month(0))).LeftOut);
        var fleet = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(hours: null), Dock.Prop(), Dock.Mounted(Worked.Month(0)), Dock.Hours(Worked.Month(3), 80), Dock.Hours(Worked.Month(5), 120));
        Assert.Equal([new LeftOut(LifeLeftOut.HoursNotKnown, 1)], PropLives.Of(fleet.Record()).LeftOut); // three months were not seen
    }

    private static PropLives Lives(params ICommand[] records) => PropLives.Of(Worked.Boats("kea").With(records).Record());

    private static PropLifetime Life(params ICommand[] records) =>
        PropLives.Lifetimes(Worked.Boats("kea").With(Worked.Prop("p1")).With(records).Record()).Lives.Single(l => l.Prop == "p1");
}
