using System.Diagnostics;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests;

/// <summary>A worker that holds a lock of the daemon stands still or dies: another goes on with its work, and nothing is done twice.</summary>
public sealed class SilentNodeTests(PostgresFixture postgres)
{
    private readonly DockRecords dock = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_worker_that_stands_still_loses_its_work_to_another_within_45_seconds_and_does_nothing_twice_when_it_goes_on()
    {
        await using var workers = await Workers.StartAsync(await postgres.NewDatabaseAsync("frozen", Ct), 2, Ct);
        await workers.TakeAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 5600, 120)], Ct);
        await workers.SubscribeAsync(Ct);
        await TrialsAsync(workers, 1);
        // The tick that asks for a digest comes once a minute, and its mail a little later.
        await RunningFleet.UntilAsync("the digest", () => Task.FromResult(workers.Mails > 0), Ct, TimeSpan.FromMinutes(3));
        var frozen = await workers.LeaderAsync(Ct);
        var other = workers.Programs.Single(p => p != frozen);
        await Task.Delay(TimeSpan.FromSeconds(20), Ct); // the other judges only once its own beat has been regular for this long

        frozen.Signal("STOP");
        var clock = Stopwatch.StartNew();
        await workers.TakeAsync([dock.Trial("tern", "2026-03-01T10:00:00", 5620, 140)], Ct);
        await TrialsAsync(workers, 2);
        var took = clock.Elapsed;
        TestContext.Current.TestOutputHelper?.WriteLine($"taken over after {took.TotalSeconds:0.0} s");
        Assert.True(took < TimeSpan.FromSeconds(45), $"taken over only after {took.TotalSeconds:0.0} s");
        Assert.Contains("so that its work goes on elsewhere", other.Output, StringComparison.Ordinal);
        Assert.Same(other, await workers.LeaderAsync(Ct));

        frozen.Signal("CONT");
        await frozen.SaysAsync("others may have taken its work meanwhile", Ct);
        await workers.TakeAsync([dock.Trial("tern", "2026-04-01T10:00:00", 5640, 160)], Ct);
        await TrialsAsync(workers, 3);
        await RunningFleet.UntilAsync("both heard of", async () =>
            await workers.AskAsync<long>("select count(*) from fleetwake.nodes where beat_at > now() - interval '10 seconds'", Ct) == 2, Ct);
        await workers.IsFoldedOnceAsync(Ct);
        Assert.False(frozen.HasEnded);

        // One a period, which is one in all, but for a run that spans the moment at which the next is due.
        var periods = await workers.AskAsync<long>("select count(distinct data ->> 'period') from fleetwake.mt_events where type = 'digest_issued'", Ct);
        Assert.InRange(periods, 1, 2);
        Assert.Equal(periods, await workers.AskAsync<long>("select count(*) from fleetwake.mt_events where type = 'digest_issued'", Ct));
        await RunningFleet.UntilAsync("each digest mailed", () => Task.FromResult(workers.Mails >= periods), Ct, TimeSpan.FromMinutes(3));
        Assert.Equal(periods, workers.Mails);
    }

    [Fact]
    public async Task A_worker_that_is_killed_is_followed_by_another_within_15_seconds_and_is_forgotten()
    {
        await using var workers = await Workers.StartAsync(await postgres.NewDatabaseAsync("killed", Ct), 2, Ct);
        await workers.TakeAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 5600, 120)], Ct);
        await TrialsAsync(workers, 1);
        var killed = await workers.LeaderAsync(Ct);

        killed.Signal("KILL");
        var clock = Stopwatch.StartNew();
        await killed.EndAsync(Ct);
        await workers.TakeAsync([dock.Trial("tern", "2026-03-01T10:00:00", 5620, 140)], Ct);
        await TrialsAsync(workers, 2);
        var took = clock.Elapsed;
        TestContext.Current.TestOutputHelper?.WriteLine($"followed after {took.TotalSeconds:0.0} s");
        Assert.True(took < TimeSpan.FromSeconds(15), $"followed only after {took.TotalSeconds:0.0} s");
        await workers.IsFoldedOnceAsync(Ct);
        await RunningFleet.UntilAsync("the killed one forgotten", async () => await workers.AskAsync<long>("select count(*) from fleetwake.nodes", Ct) == 1, Ct);
    }

    /// <summary>
    /// Waits for the finding and for the daemon's every step: each has a lock of its own, and two workers may share them, so
    /// that the finding alone may come while a step stands still.
    /// </summary>
    private static Task TrialsAsync(Workers workers, int count) => RunningFleet.UntilAsync(
        $"{count} trials in the finding and every event folded", async () => await workers.TrialsAsync("tern", Ct) == count && await workers.UpToDateAsync(Ct), Ct);
}
