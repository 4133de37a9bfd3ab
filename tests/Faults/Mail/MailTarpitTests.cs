using System.Diagnostics;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>A receiving host that says nothing for ten minutes keeps its own mail waiting, and nobody else's.</summary>
public sealed class MailTarpitTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Mail_to_other_hosts_goes_out_within_a_minute()
    {
        // Twenty messages stand first for a host that never answers; by themselves they would block each sender for a minute and a half again and again.
        await using var server = new FaultyServer();
        var quick = Enumerable.Range(0, 60).Select(i => $"ok-{i}@d{i % 6}.example").ToList();
        await using var fleet = await SendingFleet.OpenAsync(
            postgres, [.. Enumerable.Range(0, 20).Select(i => $"tarpit-{i}@slow.example"), .. quick], port: server.Port, timeout: TimeSpan.FromSeconds(30));
        var clock = Stopwatch.StartNew();
        await fleet.StartAsync();
        await RunningFleet.UntilAsync("all other mail", () => Task.FromResult(quick.All(server.Kept.ContainsKey)), TestContext.Current.CancellationToken, TimeSpan.FromSeconds(60));
        Assert.All(server.Kept.Values, copies => Assert.Equal(1, copies));

        // Two at a time, and no more while these two hold.
        Assert.InRange(server.Offers.Keys.Count(a => a.StartsWith("tarpit-", StringComparison.Ordinal)), 1, 2 * (1 + (int)(clock.Elapsed.TotalSeconds / 30)));
    }
}
