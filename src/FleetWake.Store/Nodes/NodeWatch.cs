using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetWake.Store.Nodes;

/// <summary>
/// Beats for this node and watches the others. A node judges only while its own beat has been regular: after a stall of
/// the database everybody looks silent, and whoever wakes first must not end all the rest.
/// </summary>
public sealed partial class NodeWatch(NodeBook book, NodeSettings settings, TimeProvider time, ILogger<NodeWatch> log) : BackgroundService
{
    /// <summary>Between two beats.</summary>
    public static readonly TimeSpan Interval = TimeSpan.FromSeconds(3);

    private readonly Regularity regularity = new(time, Interval * 2);
    private readonly Stillness stillness = new(time, NodeBook.Silence);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await OneRoundAsync(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                break;
            }
            catch (Exception e)
            {
                // Whatever it is, stopping here would make this node look dead to the others.
                LogUnheard(e, settings.Node.Value);
            }

            await Task.Delay(Interval, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        try
        {
            await book.LeaveAsync(settings.Node, cancellationToken).WaitAsync(Interval, time, cancellationToken);
        }
        catch (Exception e) when (e is NpgsqlException or OperationCanceledException or TimeoutException or ObjectDisposedException)
        {
            // Then the others find it silent and without sessions, and forget it themselves.
        }
    }

    private async Task OneRoundAsync(CancellationToken ct)
    {
        await book.BeatAsync(settings.Node, settings.Roles, settings.Version, ct);
        if (regularity.Beat() is { } stood) LogStoodStill(settings.Node.Value, stood.TotalSeconds);
        var silent = stillness.Of(await book.BeatsAsync(settings.Node, ct));
        if (regularity.For < NodeBook.Silence || silent.Count == 0) return;
        foreach (var ended in await book.EndAsync(silent, ct))
            LogEnded(ended.Node, ended.Since.TotalSeconds, ended.Ended, ended.Sessions);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Node {Node} was not heard of for {Seconds:0} s: ended {Ended} of its {Sessions} database sessions, so that its work goes on elsewhere.")]
    private partial void LogEnded(string node, double seconds, int ended, int sessions);

    [LoggerMessage(Level = LogLevel.Warning, Message = "This node ({Node}) was not heard for {Seconds:0} s; others may have taken its work meanwhile.")]
    private partial void LogStoodStill(string node, double seconds);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Node {Node} could not beat, or not look after the others; it tries again.")]
    private partial void LogUnheard(Exception e, string node);
}

/// <summary>What a node says of itself.</summary>
/// <param name="Node">Its id.</param>
/// <param name="Roles">What it does: "serve", "work" or "serve work".</param>
/// <param name="Version">Version of the program.</param>
public sealed record NodeSettings(NodeId Node, string Roles, string Version);
