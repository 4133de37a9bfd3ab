using System.Diagnostics;

namespace FleetWake.Faults.Tests;

/// <summary>The demo is stopped in the middle, kindly and unkindly, and starts again.</summary>
public sealed class DemoFaultTests
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_kill_9_no_server_is_left_and_the_next_demo_runs_to_its_last_line()
    {
        var before = Servers();
        using (var killed = new FleetProgram(null, "demo", "--once"))
        {
            await killed.SaysAsync("sent 5", Ct);
            killed.Signal("KILL");
            await killed.EndAsync(Ct);
        }

        await GoneAsync(before);
        var folder = Directory.CreateTempSubdirectory("fleetwake-demo-test-").FullName;
        var (exit, output) = await FleetProgram.RunAsync(null, Ct, "demo", "--once", "--out", folder);
        Assert.True(exit == 0, output);
        var last = output.TrimEnd().Split('\n')[^1].TrimEnd();
        Assert.Matches($"^demo: boats 45, records \\d{{4}}, findings 46, digests 1, mail {folder}$", last);
        Assert.Single(Directory.GetFiles(folder, "*.eml"));
        Assert.Single(Directory.GetFiles(folder, "*.html"));
        Assert.NotEmpty(Directory.GetFiles(folder, "*.png"));
        Assert.Empty(Directory.GetFiles(folder, "*.tmp"));
        await GoneAsync(before);
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public async Task Ctrl_c_or_a_stop_in_the_middle_ends_it_and_its_server(string signal)
    {
        var before = Servers();
        using var demo = new FleetProgram(null, "demo");
        await demo.SaysAsync("two years of records", Ct);
        demo.Signal(signal);
        Assert.NotEqual(0, await demo.EndAsync(Ct));
        Assert.DoesNotContain("   at ", demo.Output, StringComparison.Ordinal);
        await GoneAsync(before);
    }

    private static HashSet<int> Servers() => [.. Process.GetProcessesByName("postgres").Select(p => p.Id)];

    private static async Task GoneAsync(HashSet<int> before)
    {
        var clock = Stopwatch.StartNew();
        while (Servers().Except(before).Any(IsOfADemo))
        {
            Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), "a PostgreSQL of the demo is still there");
            await Task.Delay(100, Ct);
        }
    }

    // Other test assemblies run servers of their own beside us; a demo's is durable, and says so in its command.
    private static bool IsOfADemo(int id)
    {
        var command = $"/proc/{id}/cmdline";
        try
        {
            var text = File.ReadAllText(command);
            return text.Contains("fsync=on", StringComparison.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
