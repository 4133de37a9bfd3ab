using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Claims;

/// <summary>Somebody claims a damage from a hire. The hirer is not named: the hire's own papers say who it was.</summary>
/// <param name="Entry">The stamp; its id is the claim's.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Strike">Entry id of the strike it is about, when one is on record.</param>
/// <param name="Hire">Id of the hire at whose return it was found.</param>
/// <param name="Deposit">Deposit held, in <paramref name="DepositCurrency"/>.</param>
/// <param name="DepositCurrency">Currency by ISO 4217.</param>
/// <param name="Deadline">Last date on which it can be claimed.</param>
[StoredAs("claim_opened", 1)]
public sealed record ClaimOpened(
    Entry Entry,
    string Boat,
    Position Position,
    Guid? Strike,
    string Hire,
    decimal? Deposit,
    string? DepositCurrency,
    DateOnly? Deadline) : IAtPosition;

/// <summary>Opens a claim.</summary>
/// <param name="Entry">The stamp; its id becomes the claim's.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Hire">Id of the hire at whose return it was found.</param>
/// <param name="Strike">Entry id of the strike it is about.</param>
/// <param name="Deposit">Deposit held, in the currency given.</param>
/// <param name="DepositCurrency">Currency by ISO 4217, three capital letters.</param>
/// <param name="Deadline">Last date on which it can be claimed, e.g. <c>2026-06-20</c>.</param>
public sealed record OpenClaim(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    string? Hire,
    Guid? Strike = null,
    decimal? Deposit = null,
    string? DepositCurrency = null,
    string? Deadline = null) : ICommand<OpenClaim>
{
    /// <inheritdoc/>
    public static string Kind => "claim_opened";

    /// <inheritdoc/>
    public static OpenClaim Example =>
        new(Examples.At(230, "2026-05-20T18:00:00"), Examples.Boat, "single", "hire-2031", Examples.Id(10), 2000, "NOK", "2026-06-20");

    /// <inheritdoc/>
    public static string Summary => "Opens a claim for a damage found at the return of a hire.";

    /// <inheritdoc/>
    public static Decision Decide(OpenClaim command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var hire = check.Id(command.Hire, "/hire");
        if (command.Strike == Guid.Empty) check.Refuse("/strike", "empty_id", "an all-zero UUID is no entry id");
        var (deposit, currency) = check.MaybeAmount(command.Deposit, command.DepositCurrency, "/deposit", "/depositCurrency");
        var deadline = check.DueDate(command.Deadline, entry, "/deadline");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new ClaimOpened(entry!, boat, position, command.Strike, hire, deposit, currency, deadline))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
