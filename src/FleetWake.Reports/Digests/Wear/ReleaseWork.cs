using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What releasing a blocked boat takes: minutes of a mechanic and what part. Minutes are judgement, no source: enough to plan a Monday by.</summary>
/// <param name="Minutes">Minutes of work [min].</param>
/// <param name="Part">What part goes with it; null for none.</param>
internal sealed record ReleaseWork(int Minutes, string? Part)
{
    /// <summary>What settling a matter takes; null where it is not a mechanic's work.</summary>
    public static ReleaseWork? Of(Attention attention, PositionFinding? position)
    {
        var pin = position?.Engine?.Fastening is Fastening.CastleNutCotterPin ? "a new cotter pin if the prop comes off" : null;
        return attention.Kind switch
        {
            AttentionKind.OpenStrike or AttentionKind.Damage when attention.ReleasedBy?.StartsWith("A short look", StringComparison.Ordinal) == true => new(5, null),
            AttentionKind.OpenStrike or AttentionKind.Damage => new(30, pin),
            AttentionKind.TakeOff => new(60, "another prop, or this one mended"),
            AttentionKind.HubSlip => new(60, "a hub or hub kit"),
            AttentionKind.Repair => new(60, "another prop while this one is mended"),
            AttentionKind.Watch => new(30, pin),
            AttentionKind.CannotSail when attention.ReleasedBy?.StartsWith("A look", StringComparison.Ordinal) == true => new(30, null),
            AttentionKind.CannotSail => new(45, "what is missing"),
            _ => null,
        };
    }

    /// <summary>In words.</summary>
    public string Text() => Part is null ? $"about {Minutes} min" : $"about {Minutes} min, {Part}";
}
