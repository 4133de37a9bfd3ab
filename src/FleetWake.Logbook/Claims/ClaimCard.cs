using FleetWake.Logbook.Office;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Claims;

/// <summary>A claim as it stands. It does not depend on the clock: whether a deadline is near is asked of a day.</summary>
/// <param name="Claim">Id of the claim: the entry that first opened it.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="Position">The position.</param>
/// <param name="Hire">Id of the hire.</param>
/// <param name="OpenedOn">Dock's date on which it was opened.</param>
/// <param name="State">How it stands.</param>
/// <param name="Deadline">Last date on which it can be claimed; null when nobody set one.</param>
/// <param name="Deposit">Deposit held.</param>
/// <param name="Cost">What the damage costs: the last invoice, else the last estimate.</param>
/// <param name="Stage">Whether that is an estimate or an invoice.</param>
/// <param name="Recovered">What was recovered.</param>
/// <param name="Net">What stays with the operator: the cost less what was recovered. Null while no cost is told, and when the two are in different currencies.</param>
/// <param name="Statement">What the record can say for it.</param>
public sealed record ClaimCard(
    Guid Claim,
    string Boat,
    Position Position,
    string Hire,
    DateOnly OpenedOn,
    ClaimState State,
    DateOnly? Deadline,
    Money? Deposit,
    Money? Cost,
    CostStage? Stage,
    Money? Recovered,
    Money? Net,
    DamageStatement Statement)
{
    /// <summary>Days until the deadline, negative when it has passed; null when the claim is closed or has none [d].</summary>
    public int? DaysLeft(DateOnly day) => State == ClaimState.Open && Deadline is { } last ? last.DayNumber - day.DayNumber : null;
}

/// <summary>How a claim stands.</summary>
public enum ClaimState
{
    /// <summary>Not closed yet.</summary>
    Open,

    /// <summary>Paid, in full or in part.</summary>
    Recovered,

    /// <summary>The operator let it go.</summary>
    Waived,

    /// <summary>Its deadline passed.</summary>
    Lapsed,
}

/// <summary>
/// What the record can say of a claimed damage: when it was found, and what was seen the last time before. It says when
/// there was no such look: then nobody can tell from the record that the damage is of this hire.
/// </summary>
/// <param name="FoundOn">Dock's date on which it was found: that of the strike, else of the claim.</param>
/// <param name="Object">What was hit; null when no strike is on record.</param>
/// <param name="Severity">How hard; null when no strike is on record.</param>
/// <param name="Earlier">The last look at the position before; null when none is on record.</param>
/// <param name="StrikesBetween">Other strikes at the position between that look and this damage; of all that went before, when there was no look.</param>
/// <param name="Text">The same in sentences, for the printed statement.</param>
public sealed record DamageStatement(
    DateOnly FoundOn, StruckObject? Object, StrikeSeverity? Severity, EarlierLook? Earlier, int StrikesBetween, string Text);

/// <summary>A look at a position before a damage.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="On">Dock's date.</param>
/// <param name="By">Id of who looked.</param>
/// <param name="Seen">What was seen, in words.</param>
public sealed record EarlierLook(Guid Entry, DateOnly On, string By, string Seen);
