using System.Collections.Concurrent;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using FleetWake.Web.Api.Reading;

namespace FleetWake.Web.Office.Props;

/// <summary>
/// How much longer each prop of a fleet may last. Every boat's history is told for it, and a day's records hardly change
/// it: what was reckoned serves for some minutes.
/// </summary>
internal sealed class FleetLives(FleetReading reading, TimeProvider time)
{
    private static readonly TimeSpan Serves = TimeSpan.FromMinutes(10);
    private readonly ConcurrentDictionary<string, (long At, IReadOnlyDictionary<string, RemainingLife>? Lives, int? TooMany)> known = new(StringComparer.Ordinal);

    /// <summary>By tag; or how many boats there are, when those are too many for a request.</summary>
    public async Task<(IReadOnlyDictionary<string, RemainingLife>? Lives, int? TooManyBoats)> OfAsync(string tenant, CancellationToken ct)
    {
        if (known.TryGetValue(tenant, out var before) && time.GetElapsedTime(before.At) < Serves) return (before.Lives, before.TooMany);
        var (fleet, boats) = await FleetGathering.ReadAsync(reading, tenant, ct);
        var lives = fleet is null ? null : RemainingLife.Of(fleet);
        known[tenant] = (time.GetTimestamp(), lives, fleet is null ? boats : null);
        return (lives, fleet is null ? boats : null);
    }
}
