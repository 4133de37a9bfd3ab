using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>
/// Which trials would decide something, the likeliest first. A trial takes two people most of an hour; one that changes nothing
/// is not on the list.
/// </summary>
public static class TrialsWorth
{
    /// <summary>A smaller chance of changing what one does is not worth an hour [1]; judgement.</summary>
    private const double LeastChance = 0.05;

    /// <summary>More than these no dock runs in a week; judgement.</summary>
    private const int Most = 5;

    /// <summary>A boat that nobody ran for so long, and of which nothing but the fleet's figure is known, waits for its season [days]; judgement.</summary>
    private const int LongSinceDays = 182;

    /// <summary>The list, and a sentence about those that it leaves out; null when there is none.</summary>
    internal static (IReadOnlyList<TrialRow> Rows, string? LeftOut) Of(IReadOnlyList<BoatFinding> findings, DateOnly day, FleetPolicy? policy, WearNews news)
    {
        // A boat that is kept for a strike or a look is not run at full throttle: what releases it comes first.
        var worth = findings.Where(f => HireStates.Of(f, policy).Word == HireWord.InHire)
            .SelectMany(f => f.Positions.Select(p => (Finding: f, Position: p, Mounting: p.Mounting!, Card: p.Mounting?.NextTrial!)))
            .Where(t => t.Card is not null && t.Card.ChangesDecisionChance >= LeastChance)
            .OrderByDescending(t => t.Card.ChangesDecisionChance).ThenByDescending(t => t.Card.DoubtRemovedShare).ToList();
        var listed = worth.Where(t => !Idle(t.Mounting, day)).ToList();
        var idle = worth.Count - listed.Count;
        string?[] left =
        [
            listed.Count > Most ? $"Worth a trial too, but less: {string.Join("; ", listed.Skip(Most).Select(t => Phrases.Name(t.Finding, t.Position)))}." : null,
            idle > 0 ? $"Of {Phrases.Count(idle, "prop")} with no trial for half a year only the fleet's figure is known: any trial begins a record of their own." : null,
        ];
        return (
            [.. listed.Take(Most).Select(t => new TrialRow(Phrases.Name(t.Finding, t.Position), Decisions.Dock(t.Finding, news), $"{Share(t.Card.ChangesDecisionChance)} chance that it changes what to do", Shows(t.Card)))],
            left.OfType<string>().ToList() is { Count: > 0 } sentences ? string.Join(" ", sentences) : null);
    }

    private static bool Idle(MountingFinding mounting, DateOnly day) =>
        mounting.FleetOnly && mounting.Trials.Where(t => t.SetAside is null).Select(t => t.On).DefaultIfEmpty().Max().AddDays(LongSinceDays) < day;

    /// <summary>What it would decide.</summary>
    public static string Decides(NextTrialCard card) =>
        $"{Share(card.ChangesDecisionChance)} chance that it changes the decision (act before the next {NextTrialCard.ActWithinHours:0} engine hours, or wait)";

    /// <summary>What it would show.</summary>
    public static string Shows(NextTrialCard card)
    {
        var doubt = card.DoubtRemovedShare < 0.01 ? "takes away hardly any of the drift's doubt" : $"takes away about {Share(card.DoubtRemovedShare)} of the drift's doubt";
        return card.LeastDriftShown is { } least
            ? $"{doubt}; the smallest drift that its gauge could show this season is {least:0} RPM per 100 h"
            : $"{doubt}; its gauge could show no usual drift this season";
    }

    private static string Share(double share) => $"{100 * Math.Clamp(share, 0, 1):0}\u00A0%";
}
