using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet;
using FleetWake.Store.Findings;
using Marten;

namespace FleetWake.Store.Histories;

/// <content>What was foretold, held against what came.</content>
public sealed partial class FleetReading
{
    private const int BoatsAtATime = 32;

    /// <summary>
    /// The forecasts of every boat as they would have been at the end of a day, held against what has come since. They lean on the
    /// fleet prior of that day, as <see cref="FindingsOnAsync"/> does.
    /// </summary>
    public async Task<ForecastCalibration> CalibrationAsync(string @operator, DateOnly made, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var boats = await session.Query<CurrentFinding>().Select(c => c.Id).ToListAsync(ct);
        var priors = await PriorsOfDayAsync(@operator, made, ct);
        var checks = new List<ForecastCheck>();
        foreach (var some in boats.Chunk(BoatsAtATime))
            foreach (var dossier in await Dossiers.FoldedAsync(session, some, ct)) checks.AddRange(ForecastChecks.Of(dossier, made, priors));
        return ForecastCalibration.Of(made, checks);
    }
}
