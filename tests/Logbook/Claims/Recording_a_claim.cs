using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Inspections;

namespace FleetWake.Logbook.Tests.Claims;

public class Recording_a_claim
{
    private static readonly OpenClaim Opened =
        new(Dock.At("2026-03-01T18:00", "claim"), "kea", "single", "hire-7", Dock.Id("strike"), 250, "NZD", "2026-03-01");

    private static readonly CostClaim Costed = new(Dock.At("2026-03-05T10:00", "cost"), "kea", Dock.Id("claim"), "invoice", 312.45m, "NZD");
    private static readonly CloseClaim Closed = new(Dock.At("2026-03-20T10:00", "closed"), "kea", Dock.Id("claim"), "recovered", 250, "NZD");

    [Fact]
    public void Each_is_kept_on_the_boats_stream()
    {
        Kept(Opened, new ClaimOpened(Dock.Kept(Opened.Entry!), "kea", Position.Single, Dock.Id("strike"), "hire-7", 250, "NZD", new DateOnly(2026, 3, 1)));
        Kept(
            Opened with { Strike = null, Deposit = null, DepositCurrency = null, Deadline = null },
            new ClaimOpened(Dock.Kept(Opened.Entry!), "kea", Position.Single, null, "hire-7", null, null, null));
        Kept(Costed, new ClaimCosted(Dock.Kept(Costed.Entry!), "kea", Dock.Id("claim"), CostStage.Invoice, 312.45m, "NZD"));
        Kept(Closed, new ClaimClosed(Dock.Kept(Closed.Entry!), "kea", Dock.Id("claim"), ClaimOutcome.Recovered, 250, "NZD"));
        Kept(
            Closed with { Outcome = "waived", Amount = null, Currency = null },
            new ClaimClosed(Dock.Kept(Closed.Entry!), "kea", Dock.Id("claim"), ClaimOutcome.Waived, null, null));
    }

    [Fact]
    public void A_claim_is_of_a_hire() => Spec.EachIsRefused(
        (Opened with { Boat = null }, "/boat", "missing"),
        (Opened with { Position = "left" }, "/position", "unknown_word"),
        (Opened with { Hire = null }, "/hire", "missing"),
        (Opened with { Hire = "Mr. Smith" }, "/hire", "not_an_id"),
        (Opened with { Strike = Guid.Empty }, "/strike", "empty_id"),
        (Opened with { Deadline = "soon" }, "/deadline", "not_a_date"),
        (Opened with { Deadline = "2026-02-28" }, "/deadline", "before_the_record"));

    /// <summary>Facts are for ever, and a name or an address of a person is not.</summary>
    [Theory]
    [InlineData("Smith 7")]
    [InlineData("smith@hires.example")]
    [InlineData("a2345678901234567890123456789012345678901")]
    public void A_hire_goes_by_an_id_wherever_it_is_named(string hire)
    {
        Spec.EachIsRefused((Opened with { Hire = hire }, "/hire", "not_an_id"));
        Spec.EachIsRefused((new LookOver(Opened.Entry, "kea", "single", "before_hire", "nothing_new", hire), "/hire", "not_an_id"));
    }

    [Fact]
    public void A_deposit_has_its_currency() => Spec.EachIsRefused(
        (Opened with { Deposit = null }, "/deposit", "missing"),
        (Opened with { DepositCurrency = null }, "/depositCurrency", "missing"),
        (Opened with { Deposit = -1 }, "/deposit", "out_of_range"));

    [Fact]
    public void A_cost_is_of_a_claim() => Spec.EachIsRefused(
        (Costed with { Claim = null }, "/claim", "missing"),
        (Costed with { Claim = Guid.Empty }, "/claim", "empty_id"),
        (Costed with { Stage = "guess" }, "/stage", "unknown_word"),
        (Costed with { Amount = null }, "/amount", "missing"),
        (Costed with { Currency = "EURO" }, "/currency", "not_a_currency"));

    [Fact]
    public void Only_what_was_recovered_has_an_amount() => Spec.EachIsRefused(
        (Closed with { Outcome = "waived" }, "/amount", "nothing_recovered"),
        (Closed with { Amount = null }, "/amount", "missing"),
        (Closed with { Outcome = "won", Amount = null, Currency = null }, "/outcome", "unknown_word"));

    private static void Kept<T>(T command, IFact fact)
        where T : ICommand<T> =>
        Spec.Given().When(command).Then(("boat/kea", fact)).Naming(("/boat", "boat/kea"));
}
