using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Claims;

public class Claims_of_a_boat
{
    private static readonly OpenClaim Opened =
        new(Dock.At("2026-03-01T18:00", "claim"), "kea", "single", "hire-7", Dock.Id("strike"), 250, "NZD", "2026-03-31");

    [Fact]
    public void A_claim_is_open_until_it_is_closed()
    {
        var claim = Only(Opened);
        Assert.Equal((ClaimState.Open, "hire-7", new DateOnly(2026, 3, 1)), (claim.State, claim.Hire, claim.OpenedOn));
        Assert.Equal(new Money(250, "NZD"), claim.Deposit);
        Assert.Null(claim.Cost);
        Assert.Null(claim.Net);
        Assert.Equal(ClaimState.Waived, Only(Opened, Closed("waived")).State);
        Assert.Equal(ClaimState.Lapsed, Only(Opened, Closed("lapsed")).State);
        Assert.Equal(ClaimState.Recovered, Only(Opened, Closed("recovered", 100)).State);
    }

    [Fact]
    public void Days_are_left_while_it_is_open_and_has_a_deadline()
    {
        Assert.Equal(30, Only(Opened).DaysLeft(new DateOnly(2026, 3, 1)));
        Assert.Equal(-1, Only(Opened).DaysLeft(new DateOnly(2026, 4, 1)));
        Assert.Null(Only(Opened with { Deadline = null }).DaysLeft(new DateOnly(2026, 3, 1)));
        Assert.Null(Only(Opened, Closed("waived")).DaysLeft(new DateOnly(2026, 3, 1)));
    }

    [Fact]
    public void The_last_estimate_counts_until_an_invoice_comes()
    {
        Assert.Equal(new Money(300, "NZD"), Only(Opened, Costed("a", "estimate", 280), Costed("b", "estimate", 300)).Cost);
        var claim = Only(Opened, Costed("a", "invoice", 312.45m), Costed("b", "estimate", 300));
        Assert.Equal((new Money(312.45m, "NZD"), CostStage.Invoice), (claim.Cost, claim.Stage));
    }

    [Fact]
    public void What_was_not_recovered_stays_with_the_operator()
    {
        Assert.Equal(new Money(312.45m, "NZD"), Only(Opened, Costed("a", "invoice", 312.45m)).Net);
        Assert.Equal(new Money(62.45m, "NZD"), Only(Opened, Costed("a", "invoice", 312.45m), Closed("recovered", 250)).Net);
        Assert.Equal(new Money(312.45m, "NZD"), Only(Opened, Costed("a", "invoice", 312.45m), Closed("waived")).Net);
        Assert.Null(Only(Opened, Costed("a", "invoice", 312.45m, "AUD"), Closed("recovered", 250)).Net);
    }

    [Fact]
    public void Costs_follow_a_claim_that_was_amended()
    {
        var amended = Opened with { Entry = Dock.At("2026-03-01T18:05", "claim 2", amends: "claim"), Hire = "hire-8" };
        var claim = Only(Opened, Costed("a", "estimate", 280), amended, Costed("b", "invoice", 300) with { Claim = Dock.Id("claim 2") });
        Assert.Equal((Dock.Id("claim"), "hire-8", new Money(300, "NZD")), (claim.Claim, claim.Hire, claim.Cost));
    }

    [Fact]
    public void Costs_of_another_claim_are_not_counted() =>
        Assert.Null(Only(Opened, Costed("a", "invoice", 300) with { Claim = Dock.Id("other") }).Cost);

    [Fact]
    public void A_cost_or_an_end_of_no_claim_is_asked_about_until_the_claim_arrives()
    {
        Spec.Given(Dock.Boat()).When(Costed("a", "invoice", 300)).ThenAsks("kea", ContradictionKind.NoSuchClaim);
        Spec.Given(Dock.Boat()).When(Closed("waived")).ThenAsks("kea", ContradictionKind.NoSuchClaim);
        Spec.Given(Dock.Boat(), Opened).When(Costed("a", "invoice", 300)).ThenAsks("kea");
        var amended = Opened with { Entry = Dock.At("2026-03-01T18:05", "claim 2", amends: "claim") };
        Spec.Given(Dock.Boat(), Opened, amended).When(Costed("a", "invoice", 300) with { Claim = Dock.Id("claim 2") }).ThenAsks("kea");
        Assert.Empty(new Fleet().With(Dock.Boat(), Costed("a", "invoice", 300), Dock.Strike("2026-03-01T17:00"), Opened).History().Contradictions);
    }

    [Fact]
    public void The_statement_tells_the_last_look_before_the_strike()
    {
        var statement = Only(Dock.Mounted(), Dock.Look("2026-02-20T09:00", "watch", marks: "chips"), Dock.Strike("2026-03-01T17:00"), Dock.Look("2026-03-01T17:30", "repair"), Opened).Statement;
        Assert.Equal((StruckObject.Rock, StrikeSeverity.Bent), (statement.Object, statement.Severity));
        Assert.Equal((new DateOnly(2026, 2, 20), "mech-1", 0), (statement.Earlier!.On, statement.Earlier.By, statement.StrikesBetween));
        Assert.Equal(
            "Found at return of hire hire-7 on 2026-03-01: bent, struck rock. The last look before was an inspection that said watch and saw chips, on 2026-02-20.",
            statement.Text);
    }

    [Fact]
    public void A_short_look_before_the_hire_is_an_earlier_look_and_the_one_at_its_return_is_not()
    {
        LookOver Look(string time, string moment, string seen, string hire) => new(Dock.At(time, time), "kea", "single", moment, seen, hire);
        var looks = new[] { Look("2026-03-01T09:00", "before_hire", "nothing_new", "hire-7"), Look("2026-03-01T16:50", "after_hire", "damage", "hire-7") };
        var statement = Only([Dock.Mounted(), .. looks, Dock.Strike("2026-03-01T17:00"), Opened]).Statement;
        Assert.EndsWith("The last look before was a short look before a hire that saw nothing new, on 2026-03-01.", statement.Text, StringComparison.Ordinal);
        var last = Only([.. looks.Select(l => l with { Hire = "hire-6" }), Dock.Strike("2026-03-01T17:00"), Opened]).Statement;
        Assert.EndsWith("The last look before was a short look after a hire that saw damage, on 2026-03-01.", last.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_statement_says_when_nobody_looked_before()
    {
        var elsewhere = Dock.Look("2026-02-20T09:00", position: "port");
        var statement = Only(elsewhere, Dock.Strike("2026-03-01T17:00"), Opened).Statement;
        Assert.Null(statement.Earlier);
        Assert.EndsWith("No earlier look at it is on record.", statement.Text, StringComparison.Ordinal);
        var struck = Only(elsewhere, Dock.Strike("2026-02-21T17:00", label: "other"), Dock.Strike("2026-03-01T17:00"), Opened).Statement;
        Assert.EndsWith("No earlier look at it is on record. One other strike there is on record before.", struck.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_statement_does_not_hide_another_strike_since_the_last_look()
    {
        var statement = Only(Dock.Mounted(), Dock.Strike("2026-02-20T09:00", label: "other"), Dock.Strike("2026-03-01T17:00"), Opened).Statement;
        Assert.Equal(1, statement.StrikesBetween);
        Assert.EndsWith("the fitting of prop p1, on 2026-01-05. One other strike there is on record since.", statement.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strike_that_was_taken_back_is_missing_from_the_statement()
    {
        var back = new Retract(Dock.At("2026-03-02T08:00", "back"), Dock.Id("strike"), "did_not_happen", "kea");
        var statement = Only(Dock.Strike("2026-03-01T17:00"), Opened, back).Statement;
        Assert.Null(statement.Severity);
        Assert.Contains("the strike that it names is not on record", statement.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strike_that_was_amended_is_still_the_one()
    {
        var amended = Dock.Strike("2026-03-01T17:05", "chipped") with { Entry = Dock.At("2026-03-01T17:05", "strike 2", amends: "strike") };
        Assert.Equal(StrikeSeverity.Chipped, Only(Dock.Strike("2026-03-01T17:00"), Opened, amended).Statement.Severity);
    }

    private static ClaimCard Only(params ICommand[] records)
    {
        var history = new Fleet().With([Dock.Boat(), .. records]).History();
        return Assert.Single(FleetWake.Logbook.Claims.Claims.Of(history.Facts, history.Original));
    }

    private static CostClaim Costed(string label, string stage, decimal amount, string currency = "NZD") =>
        new(Dock.At("2026-03-05T10:0" + (label == "a" ? 0 : 1), label), "kea", Dock.Id("claim"), stage, amount, currency);

    private static CloseClaim Closed(string outcome, decimal? amount = null) =>
        new(Dock.At("2026-03-20T10:00", "closed"), "kea", Dock.Id("claim"), outcome, amount, amount is null ? null : "NZD");
}
