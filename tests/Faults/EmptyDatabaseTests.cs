using System.Text.RegularExpressions;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests;

/// <summary>A whole fleet of processes is started at the same moment on a database that holds nothing.</summary>
public sealed class EmptyDatabaseTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Four_programs_started_at_once_all_come_up_and_stay_up()
    {
        var database = await postgres.NewEmptyDatabaseAsync("rush", Ct);
        (string, string)[] own = [("FLEETWAKE_URLS", "http://127.0.0.1:0")];
        FleetProgram[] programs =
        [
            .. new[] { "serve", "work", "serve", "work" }.Select(role => new FleetProgram(database, own, role, "--apply-schema")),
        ];
        try
        {
            foreach (var program in programs) await program.SaysAsync("Ctrl-C stops it", Ct);
            var served = Regex.Match(programs[0].Output, "serving on (http://[^ ;]+)").Groups[1].Value;
            using var http = new HttpClient { BaseAddress = new Uri(served) };
            await RunningFleet.UntilAsync("all four heard of and the work in order", async () =>
                (await http.GetStringAsync("/health/ready", Ct)).Contains("\"status\":\"ready\"", StringComparison.Ordinal), Ct);
            var (_, check) = await FleetProgram.RunAsync(database, Ct, "check");
            Assert.Contains("ok    schema", check, StringComparison.Ordinal);
            Assert.Matches(@"ok    nodes .*serve.*work|ok    nodes .*work.*serve", check);
            Assert.Contains("ok    ticks", check, StringComparison.Ordinal);
            Assert.All(programs, p => Assert.False(p.HasEnded, p.Output));
            Assert.All(programs, p => Assert.DoesNotContain("fail:", p.Output, StringComparison.Ordinal));
        }
        finally
        {
            foreach (var program in programs) program.Dispose();
        }
    }
}
