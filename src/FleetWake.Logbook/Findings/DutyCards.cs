using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>The last time that something was done at a position.</summary>
/// <param name="By">Which record did it.</param>
/// <param name="Rule">Id of the rule, for what only a "duty done" tells of; null otherwise.</param>
/// <param name="On">Dock's date.</param>
/// <param name="Hours">Engine hours then [h]; the last reading before where nobody read them, so that what is due by hours is not told too late. Null when not known.</param>
/// <param name="Bridged">The hours were not read then.</param>
public sealed record Doing(DutyDoneBy By, string? Rule, DateOnly On, double? Hours, bool Bridged);

/// <summary>A kind of thing that was done at a position.</summary>
/// <param name="By">Which record did it.</param>
/// <param name="Rule">Id of the rule, for what only a "duty done" tells of; null otherwise.</param>
public sealed record DoneThing(DutyDoneBy By, string? Rule);

/// <summary>A strike at a position, open or not: what an operator's own rule asks for after it is not done by an inspection.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="On">Dock's date of the strike.</param>
/// <param name="Severity">How hard.</param>
/// <param name="Material">Material of the prop that was struck, where known.</param>
/// <param name="DoneSince">What was done at the position since.</param>
public sealed record StruckCard(Guid Entry, DateOnly On, StrikeSeverity Severity, PropMaterial? Material, IReadOnlyList<DoneThing> DoneSince);

/// <summary>Somebody will see to a duty.</summary>
/// <param name="Rule">Id of the rule by which it is due.</param>
/// <param name="By">Id of the person.</param>
/// <param name="On">Dock's date on which it was taken.</param>
/// <param name="DoneSince">What was done at the position since then: a rule that one of these does is no longer taken.</param>
public sealed record TakenDuty(string Rule, string By, DateOnly On, IReadOnlyList<DutyDoneBy> DoneSince);

/// <summary>How much an engine runs.</summary>
/// <param name="HoursPerDay">The highest rate that its last readings make plausible [h/d], so that what is due by hours is not told too late; 0 when it lay still.</param>
/// <param name="ReadOn">Dock's date of the last credible reading.</param>
/// <param name="Hours">What it showed [h].</param>
public sealed record UseRate(double HoursPerDay, DateOnly ReadOn, double Hours)
{
    /// <summary>Dock's date of the first of the readings that showed no less: hours that are used up were so by then.</summary>
    public DateOnly ShownOn { get; init; } = ReadOn;
}

/// <summary>The last time a boat was laid up.</summary>
/// <param name="On">Dock's date on which it was laid up.</param>
/// <param name="RelaunchOn">Date on which it is meant to go out again, where somebody said.</param>
/// <param name="RelaunchedOn">Dock's date on which it went out again; null while it is laid up.</param>
/// <param name="NotLookedAt">Positions whose prop and shaft nobody inspected since it was laid up.</param>
public sealed record LayUpCard(DateOnly On, DateOnly? RelaunchOn, DateOnly? RelaunchedOn, IReadOnlyList<Position> NotLookedAt);

/// <summary>Somebody took the boat out of hire, and nobody returned it since.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Why">Why.</param>
public sealed record HoldCard(DateOnly On, OutOfHireReason Why);

/// <summary>The boat left the fleet.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Why">Why.</param>
public sealed record RetiredCard(DateOnly On, BoatRetirement Why);

/// <summary>An open claim with a deadline.</summary>
/// <param name="Claim">Id of the claim.</param>
/// <param name="Position">The position.</param>
/// <param name="Hire">Id of the hire.</param>
/// <param name="Deadline">Last date on which it can be claimed.</param>
public sealed record ClaimDue(Guid Claim, Position Position, string Hire, DateOnly Deadline)
{
    /// <summary>The open claims that have a deadline.</summary>
    internal static IReadOnlyList<ClaimDue> Of(IEnumerable<ClaimCard> claims) =>
        [.. claims.Where(c => c is { State: ClaimState.Open, Deadline: not null }).Select(c => new ClaimDue(c.Claim, c.Position, c.Hire, c.Deadline!.Value))];
}
