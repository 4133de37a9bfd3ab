using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>Every engine of a fleet by where it stands in its own rated band, at a glance.</summary>
/// <param name="Title">What it is of.</param>
/// <param name="Statement">How many stand where, and who is outside.</param>
/// <param name="Marks">One an engine, in order from far below to far above.</param>
/// <param name="NotKnown">Engines of which nobody knows where they stand: no trial, or no rated band.</param>
public sealed record FleetStrip(string Title, string Statement, IReadOnlyList<StripMark> Marks, int NotKnown) : Picture(Title, Statement)
{
    /// <summary>How many names of a kind a sentence tells.</summary>
    private const int MostNames = 6;

    /// <summary>The strip of some boats; boats that left the fleet or are laid up are left out. Null where no engine stands anywhere.</summary>
    /// <param name="findings">The boats, in any order.</param>
    /// <param name="of">Whose they are, as a title has it: a fleet or a dock.</param>
    public static FleetStrip? Of(IReadOnlyList<BoatFinding> findings, string of)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(of);
        var engines = findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .SelectMany(f => f.Positions.Where(p => p.Engine is not null && p.EngineOffOn is null).Select(p => (Finding: f, Position: p))).ToList();
        var marks = engines.Select(e => Mark(e.Finding, e.Position)).OfType<StripMark>()
            .OrderBy(m => m.Place).ThenBy(m => m.Name, StringComparer.Ordinal).ToList();
        if (marks.Count == 0) return null;
        var resting = findings.Count(f => f.Retired is null && f.IsLaidUp());
        return new FleetStrip($"{Fitting.Name(Phrases.Plain(of))}: every engine in its rated band", Sentence(marks, engines.Count - marks.Count, resting), marks, engines.Count - marks.Count);
    }

    private static StripMark? Mark(BoatFinding finding, PositionFinding position)
    {
        if (position is not { Mounting: { } mounting, Engine: { BandLowRpm: { } low, BandHighRpm: { } high } } || !(high - low >= 1)) return null;
        var standing = Standings.Of(position);
        if (standing.MarginRpm is null || mounting.Band.ObservedRpm is not { } observed) return null;

        // The less favourable of the last reading and the trials together, as everywhere else.
        var together = standing.TogetherRpm ?? observed;
        var rpm = Standings.Margin(observed, low, high) <= Standings.Margin(together, low, high) ? observed : together;
        if (!double.IsFinite(rpm)) return null;
        var held = mounting.LastWideOpen(position.Engine)?.SetAside == SetAsideReason.LimiterReached;
        var place = (rpm - low) / (high - low);
        var state = standing.Outside
            ? held || place > 0.5 ? StripState.Above : StripState.Below
            : mounting.Exit.Within100HoursChance >= NextTrialCard.ActAtChance ? StripState.Leaving : StripState.Inside;
        // What the limiter holds would turn over the top without it.
        return new StripMark(Phrases.Name(finding, position), state == StripState.Above ? Math.Max(place, 1) : place, rpm, rpm > (low + high) / 2 ? rpm - high : low - rpm, state);
    }

    private static string Sentence(List<StripMark> marks, int notKnown, int laidUp)
    {
        string?[] parts =
        [
            Told(marks, StripState.Above, "above the top", over: true),
            Told(marks, StripState.Below, "below the bottom", over: true),
            Told(marks, StripState.Leaving, "inside but likely to leave it within 100 engine hours", over: false),
        ];
        var outside = parts.OfType<string>().ToList();
        var inside = marks.Count(m => m.State == StripState.Inside);
        var rest = outside.Count == 0 ? "" : $"; {(inside == marks.Count ? "all" : $"{inside}")} inside";
        var said = outside.Count == 0
            ? $"{(marks.Count == 1 ? "The one engine that was tried runs" : $"All {marks.Count} engines that were tried run")} inside {(marks.Count == 1 ? "its" : "their")} rated band"
            : $"Of {Phrases.Count(marks.Count, "engine")} in {(marks.Count == 1 ? "its" : "their")} rated bands: {string.Join("; ", outside)}{rest}";
        return $"{said}.{(notKnown == 0 ? "" : $" Of {notKnown} more nobody knows: no trial or no band.")}{(laidUp == 0 ? "" : $" {Phrases.Count(laidUp, "boat")} laid up {(laidUp == 1 ? "is" : "are")} not shown.")}";
    }

    private static string? Told(List<StripMark> marks, StripState state, string where, bool over)
    {
        var some = marks.Where(m => m.State == state).OrderByDescending(m => m.BeyondRpm).ToList();
        if (some.Count == 0) return null;
        return $"{some.Count} {where} ({Fitting.List([.. some.Select(m => over && m.BeyondRpm >= 0.5 ? $"{Fitting.Name(m.Name)} by {m.BeyondRpm:0}" : Fitting.Name(m.Name))], MostNames)})";
    }
}

/// <summary>An engine on the strip.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="Place">Where it stands: 0 is the bottom of its band, 1 the top [1].</param>
/// <param name="Rpm">The RPM that says so [RPM].</param>
/// <param name="BeyondRpm">How far beyond the nearer edge, negative inside [RPM].</param>
/// <param name="State">What that means.</param>
public sealed record StripMark(string Name, double Place, double Rpm, double BeyondRpm, StripState State);

/// <summary>Where an engine stands.</summary>
public enum StripState
{
    /// <summary>Inside, by its last reading and by its trials together.</summary>
    Inside,

    /// <summary>Inside, and likely to leave within 100 engine hours.</summary>
    Leaving,

    /// <summary>Above the top by one of the two, or held by the limiter.</summary>
    Above,

    /// <summary>Below the bottom by one of the two.</summary>
    Below,
}
