using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Figures;

public class What_is_left_of_a_prop
{
    private static readonly IReadOnlyList<PropLifetime> s_lives = PropLives.Lifetimes(Worked.Fleet().Record()).Lives;

    /// <summary>By hand from the worked lives: aluminium ended at 120, 210, 260, 340 and 410 h, and was last seen at 150 and 330 h.</summary>
    [Theory]
    [InlineData(0, 7, 5, 340)]
    [InlineData(100, 7, 5, 240)]
    [InlineData(130, 6, 4, 210)]
    public void Those_that_lived_to_its_hours_tell_how_long_half_of_them_went_on(double hours, int followed, int ended, double left)
    {
        var told = RemainingLife.Beyond(s_lives, PropMaterial.Aluminium, hours);
        Assert.Equal((followed, ended), (told.Followed, told.Ended));
        Assert.Equal(left, told.HoursLeft!.Hours!.Value, 1e-9);
        Assert.True(told.HoursLeft.LowHours <= left);
    }

    [Fact]
    public void From_new_it_is_the_median_of_its_material()
    {
        var group = PropLives.Of(Worked.Fleet().Record()).ByMaterial.Single(g => g.Group == "aluminium");
        Assert.Equal(group.MedianHours!.Hours, RemainingLife.Beyond(s_lives, PropMaterial.Aluminium, 0).HoursLeft!.Hours);
    }

    [Fact]
    public void Where_too_few_lived_to_its_hours_nothing_is_reckoned_and_that_is_said()
    {
        var left = RemainingLife.Of(Worked.Fleet().Record())["a4"];
        Assert.Equal(330, left.Hours!.Value, 1e-9);
        Assert.Null(left.HoursLeft);
        Assert.Equal("Not enough has worn out yet to say: of 2 aluminium props followed beyond its 330 h, 2 were used up (5 followed and 4 used up are wanted).", left.Sentence);
    }

    [Fact]
    public void A_new_prop_that_was_never_fitted_has_all_of_it()
    {
        var left = RemainingLife.Of(Worked.Fleet().With(Worked.Prop("fresh")).Record())["fresh"];
        Assert.Equal((0, 340), (left.Hours!.Value, left.HoursLeft!.Hours!.Value));
        Assert.StartsWith("Of 7 aluminium props followed from new, 5 were used up; half lasted 340 h more", left.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_came_used_and_one_that_is_used_up_have_none()
    {
        var all = RemainingLife.Of(Worked.Fleet().With(Worked.Prop("old"), new AcquireProp(Dock.At("2026-02-01T09:00", "old came"), "old", "used")).Record());
        Assert.Equal("No remaining life is reckoned: it came used.", all["old"].Sentence);
        Assert.DoesNotContain("a1", all.Keys);
        Assert.DoesNotContain("a5", all.Keys);
    }

    [Fact]
    public void A_hirer_owes_what_was_left_of_the_prop()
    {
        var charge = Charge(
            new OpenClaim(Dock.At("2026-02-10T11:00", "claim"), Dock.Kea, "single", "hire-7", Dock.Id("strike kea 0")),
            new CostClaim(Dock.At("2026-02-12T11:00", "cost"), Dock.Kea, Dock.Id("claim"), "invoice", 1000, "NZD"))!;
        Assert.Equal("a1", charge.Prop);
        Assert.InRange(charge.Hours!.Value, 5, 20);

        // Half of the others that were followed beyond these hours lasted to 340 h.
        Assert.Equal((340 - charge.Hours.Value) / 340, charge.ShareLeft!.Value, 1e-9);
        Assert.Equal(Math.Round(1000 * (decimal)charge.ShareLeft.Value, 2), charge.Charged!.Amount);
        Assert.True(charge.ShareLeft.Low <= charge.ShareLeft.Value && charge.ShareLeft.Value <= charge.ShareLeft.High);
    }

    [Fact]
    public void Without_enough_lives_no_share_is_charged_and_it_says_why()
    {
        var charge = ClaimCharge.Of(
            Worked.Boats("kea").With(Worked.Prop("p1"), Dock.Mounted("2026-02-05T09:00", "p1", boat: "kea", hours: 0)).With(Worked.Strikes("kea", "bent"))
                .With(Dock.Hours("2026-03-05T09:00", 60, "e-kea"), new OpenClaim(Dock.At("2026-02-10T11:00", "claim"), "kea", "single", "hire-7", Dock.Id("strike kea 0"))).Record(),
            Dock.Id("claim"))!;
        Assert.Null(charge.ShareLeft);
        Assert.StartsWith("How much of its life was left is not reckoned: not enough has worn out yet", charge.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_claim_that_no_boat_has_is_charged_nothing() => Assert.Null(ClaimCharge.Of(Worked.Fleet().Record(), Dock.Id("nothing")));

    private static ClaimCharge? Charge(params ICommand[] records) => ClaimCharge.Of(Worked.Fleet().With(records).Record(), Dock.Id("claim"));
}
