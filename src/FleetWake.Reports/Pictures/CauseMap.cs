using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Reports.Pictures;

/// <summary>Changes of RPM and speed against a baseline, and the way in which each cause would move them.</summary>
/// <param name="Statement">What the map shows, in a sentence; its alternative text.</param>
/// <param name="Rays">One a cause.</param>
/// <param name="Changes">One a trial, in order.</param>
/// <param name="ReachPercent">Half the width and height of the map [%]: RPM and speed have the same scale.</param>
public sealed record CauseMap(string Statement, IReadOnlyList<CauseRay> Rays, IReadOnlyList<MappedChange> Changes, double ReachPercent)
    : Picture("RPM and speed against the baseline", Statement)
{
    private const double Least = 4;
    private const double Most = 40;

    /// <summary>The map of trials held against their baseline; null when no speed was read with any.</summary>
    /// <param name="held">The trials.</param>
    public static CauseMap? Of(AgainstBaseline held)
    {
        ArgumentNullException.ThrowIfNull(held);
        var changes = held.Changes.Where(c => c.LnSpeed is not null)
            .Select(c => new MappedChange(100 * c.LnRpm, 100 * c.LnSpeed!.Value, 100 * c.Doubt.Rpm, 100 * c.Doubt.Speed, c.Doubt.Correlation)).ToList();
        if (changes.Count == 0) return null;
        var reach = Math.Clamp(1.25 * changes.Max(c => Math.Max(Math.Abs(c.RpmPercent), Math.Abs(c.SpeedPercent)) + (1.3 * Math.Max(c.RpmSd, c.SpeedSd))), Least, Most);
        return new CauseMap(Sentence(held), [.. CauseFacts.Single.Select(cause => Ray(cause, held, reach))], changes, reach);
    }

    /// <summary>The mean direction over the models, as long as leaves room for its label.</summary>
    private static CauseRay Ray(Cause cause, AgainstBaseline held, double reach)
    {
        var responses = held.Models.Select(m => (Response: CauseResponse.Of(cause, m), m.Weight)).ToList();
        var rpm = responses.Sum(r => r.Weight * r.Response.LnRpm);
        var speed = responses.Sum(r => r.Weight * r.Response.LnSpeed);
        var scale = 0.72 * reach / Math.Max(Math.Abs(rpm), Math.Abs(speed));
        var found = held.Finding.Named?.Cause == cause || held.Finding.Tied.Any(s => s.Cause == cause);
        return new CauseRay(CauseWords.Word(cause), CauseFacts.GroupOf(cause) == CauseGroup.RpmUp, scale * rpm, scale * speed, found);
    }

    private static string Sentence(AgainstBaseline held)
    {
        var last = held.Changes[^1];
        var now = $"Against its baseline the last trial turned {100 * last.RpmFraction:+0.0;-0.0;0.0} % RPM and made {100 * (last.SpeedFraction ?? 0):+0.0;-0.0;0.0} % speed.";
        return now + CauseWords.Of(held.Finding, withSpeed: true);
    }
}

/// <summary>The way in which a cause moves RPM and speed.</summary>
/// <param name="Label">The cause in the words of the dock.</param>
/// <param name="RpmUp">It belongs to the group that turns faster.</param>
/// <param name="RpmPercent">End of the ray in RPM [%].</param>
/// <param name="SpeedPercent">End of the ray in speed [%].</param>
/// <param name="Likely">The readings name it, or it is within ten to one of the likeliest: the others are less likely, not ruled out.</param>
public sealed record CauseRay(string Label, bool RpmUp, double RpmPercent, double SpeedPercent, bool Likely);

/// <summary>A trial's change with its doubt.</summary>
/// <param name="RpmPercent">Change of RPM [%].</param>
/// <param name="SpeedPercent">Change of speed [%].</param>
/// <param name="RpmSd">One standard deviation of RPM [%].</param>
/// <param name="SpeedSd">One standard deviation of speed [%].</param>
/// <param name="Correlation">Their correlation [1].</param>
public sealed record MappedChange(double RpmPercent, double SpeedPercent, double RpmSd, double SpeedSd, double Correlation);
