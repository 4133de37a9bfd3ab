using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Props;

public class Props_that_are_away
{
    private static readonly RetireProp Retired = new(Dock.At("2026-03-02T08:00", "retired"), "p1", "worn");
    private static readonly SendPropToShop Sent = new(Dock.At("2026-03-02T08:00", "sent"), "p1", "bay-props", "repair");
    private static readonly TakeLoaner Taken = new(Dock.At("2026-03-01T08:00", "taken"), "p1", "bay-props");
    private static readonly ReturnLoaner Returned = new(Dock.At("2026-03-02T08:00", "returned"), "p1");

    [Fact]
    public void A_prop_that_is_away_while_it_is_fitted_is_asked_about()
    {
        Spec.Given([.. Fitted()]).When(Sent).ThenAsks("kea", ContradictionKind.PropAway);
        Spec.Given([.. Fitted()]).When(Retired).ThenAsks("kea", ContradictionKind.PropAway);
        Spec.Given([.. Fitted(), Taken]).When(Returned).ThenAsks("kea", ContradictionKind.PropAway);
        Spec.Given([.. Fitted()]).When(new StoreProp(Dock.At("2026-03-02T08:00", "stored"), "p1", "jetty")).ThenAsks("kea", ContradictionKind.PropAway);
        var asked = Dock.OneBoat().With(Sent).History().Contradictions.Single();
        Assert.Equal([Dock.Id("mount p1 kea 2026-01-05T09:00"), Dock.Id("sent")], asked.Entries);
        Assert.Equal("Prop p1 is on record on KEA since 2026-01-05, and it went to a shop on 2026-03-02. When did it come off?", asked.Question);
    }

    [Fact]
    public void A_prop_that_came_off_first_is_not() =>
        Spec.Given([.. Fitted(), Dock.Removed("2026-03-01T09:00")]).When(Sent).ThenAsks("kea");

    [Fact]
    public void Nor_one_whose_papers_were_written_in_the_minute_in_which_it_came_off() =>
        Spec.Given([.. Fitted(), Dock.Removed("2026-03-02T08:00") with { Entry = Dock.At("2026-03-02T08:00", "off") with { Count = 9 } }]).When(Sent).ThenAsks("kea");

    [Fact]
    public void A_prop_that_was_gone_and_is_fitted_again_is_asked_about()
    {
        var again = Dock.Mounted("2026-04-01T09:00");
        Spec.Given([.. Off(), Retired]).When(again).ThenAsks("kea", ContradictionKind.PropAway);
        Spec.Given([.. Off(), Taken, Returned]).When(again).ThenAsks("kea", ContradictionKind.PropAway);
        Spec.Given([.. Off(), Taken, Returned, Taken with { Entry = Dock.At("2026-03-20T08:00", "taken again") }]).When(again).ThenAsks("kea");
    }

    /// <summary>Nobody writes "back from the shop" for a prop that runs again.</summary>
    [Fact]
    public void A_prop_that_runs_again_after_the_shop_is_not() => Spec.Given([.. Off(), Sent]).When(Dock.Mounted("2026-04-01T09:00")).ThenAsks("kea");

    private static ICommand[] Fitted() => [Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop(), Dock.Mounted()];

    private static ICommand[] Off() => [.. Fitted(), Dock.Removed("2026-02-20T09:00")];
}
