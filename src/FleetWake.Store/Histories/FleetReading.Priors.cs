using FleetWake.Logbook.Fleet;
using FleetWake.Store.Fleet;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Histories;

/// <content>What the fleet has shown of itself.</content>
public sealed partial class FleetReading
{
    // Backwards, so that usually one fit is looked at: its date lies in its text, and that is long.
    private const string FitOfDay =
        "select coalesce((select version::int from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and stream_id = 'fleet'"
        + " and left(data -> 'entry' ->> 'happenedAt', 10) <= $2 order by version desc limit 1),"
        + " (select least(max(version), 1)::int from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and stream_id = 'fleet'), 0)";

    private readonly FleetPriorBook priorBook = new();

    /// <summary>What an operator's fleet has shown, by its newest fit; the trade's before the first.</summary>
    public async Task<FleetPriors> PriorsAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await priorBook.NewestAsync(session, ct);
    }

    /// <summary>The newest fit of an operator's fleet; null before the first.</summary>
    public async Task<FleetPriorFitted?> FittedPriorAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await FleetPriorBook.NewestFittedAsync(session, ct);
    }

    /// <summary>A fit of an operator's fleet by its number; null when there is none.</summary>
    public async Task<FleetPriorFitted?> FittedPriorAsync(string @operator, int number, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await FleetPriorBook.FittedAsync(session, number, ct);
    }

    /// <summary>What an operator's fleet had shown at the end of a day: a forecast of that day knew no later fit. Of days before the first fit, that one.</summary>
    public async Task<FleetPriors> PriorsOfDayAsync(string @operator, DateOnly day, CancellationToken ct) =>
        FleetPriors.Of(await FittedPriorAsync(@operator, await FitOfDayAsync(@operator, day, ct), ct));

    /// <summary>The last look at each operator's fleet, by operator.</summary>
    public Task<IReadOnlyList<(string Operator, FitLook Look)>> FitLooksAsync(CancellationToken ct) => FitLooks.AllAsync(source, ct);

    private async Task<int> FitOfDayAsync(string @operator, DateOnly day, CancellationToken ct)
    {
        await using var command = source.CreateCommand(FitOfDay);
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        command.Parameters.Add(new NpgsqlParameter { Value = $"{day:yyyy-MM-dd}" });
        return (int)(await command.ExecuteScalarAsync(ct))!;
    }
}
