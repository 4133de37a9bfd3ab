using System.Globalization;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>Takes runs as somebody typed them, each checked by itself.</summary>
/// <param name="log">Where they go.</param>
/// <param name="count">How many there are: a single run needs no heading, for nothing is paired with it.</param>
internal sealed class TypedRuns(LogBuilder log, int count)
{
    internal void Take(double? rpm, double? knots, double? heading, double? heldSeconds, bool limiter, bool ventilated, int line)
    {
        var reason = rpm switch
        {
            null => "a run without its rpm",
            <= 0 => string.Create(CultureInfo.InvariantCulture, $"rpm {rpm} of a run is not above zero"),
            { } n => Plausible.Rpm(n),
        };
        reason ??= knots is { } v ? Plausible.Knots(v) : null;
        reason ??= heading is { } h ? Plausible.Course(h) : count > 1 ? "a run without its heading, which pairs it with another" : null;
        reason ??= heldSeconds is < 0 or > 86_400
            ? string.Create(CultureInfo.InvariantCulture, $"a run held for {heldSeconds} s is outside 0 to 86400") : null;
        if (reason is not null)
        {
            log.Drop(line, reason);
            return;
        }

        log.Run(new RunReading(
            EngineRate.FromRevolutionsPerMinute(rpm!.Value), knots is { } kn ? Speed.FromKnots(kn) : null, Turn.Of(heading ?? 0))
        {
            Held = heldSeconds is { } s ? TimeSpan.FromSeconds(s) : null,
            LimiterReached = limiter,
            Ventilated = ventilated,
        });
    }
}
