using FleetWake.Store.Servers;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Servers;

/// <summary>What becomes of the server when its program does not end as it should.</summary>
public sealed class DeathTests : IAsyncLifetime
{
    private const int Limit = 60_000; // milliseconds; a program that does not answer must not hold up the run

    private const string OnLinux = "Only Linux lets a child ask for a signal at its parent's death.";

    /// <summary>On a bare machine the first to look installs PostgreSQL, which must not count against a test's time.</summary>
    public async ValueTask InitializeAsync() => await ServerSearch.FindOrInstallAsync(
        Machine.Real, Console.Error.WriteLine, TimeProvider.System, TestContext.Current.CancellationToken);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact(Timeout = Limit)]
    public async Task When_the_program_is_killed_no_server_survives_and_the_next_start_clears_its_folder()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), OnLinux);
        using HoldingProgram program = await HoldingProgram.StartAsync(TestContext.Current.CancellationToken);
        Assert.True(Server.Runs(program.ServerProcessId));

        await program.KillAsync(TestContext.Current.CancellationToken);

        await Server.UntilAsync(() => !Server.Runs(program.ServerProcessId), "the server of a killed program ends");
        await using LocalServer next = await Server.StartAsync(Server.Quick);
        // Another test may start at this moment and be the one that clears it.
        await Server.UntilAsync(() => !Directory.Exists(program.Folder), "the folder of a killed program is gone");
    }

    [Fact(Timeout = Limit)]
    public async Task Ctrl_c_in_a_terminal_leaves_the_server_up_until_the_program_has_ended_its_work()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), OnLinux);
        using HoldingProgram program = await HoldingProgram.StartAsync(TestContext.Current.CancellationToken);

        await program.InterruptGroupAsync(TestContext.Current.CancellationToken);

        Assert.Equal("written after the interrupt", await program.NextLineAsync(TestContext.Current.CancellationToken));
        Assert.Equal(0, await program.EndAsync(TestContext.Current.CancellationToken));
        Assert.False(Server.Runs(program.ServerProcessId));
        Assert.False(Directory.Exists(program.Folder));
    }

    [Fact(Timeout = Limit)]
    public async Task A_server_that_outlived_its_program_all_the_same_is_ended_by_the_next_start()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), OnLinux);
        using HoldingProgram program = await HoldingProgram.StartAsync(TestContext.Current.CancellationToken);
        await HoldingProgram.FreezeAsync(program.ServerProcessId, TestContext.Current.CancellationToken);
        await program.KillAsync(TestContext.Current.CancellationToken);
        Assert.True(Server.Runs(program.ServerProcessId));

        await using LocalServer next = await Server.StartAsync(Server.Quick);

        await Server.UntilAsync(() => !Server.Runs(program.ServerProcessId), "the orphan is ended");
        await Server.UntilAsync(() => !Directory.Exists(program.Folder), "the orphan's folder is gone");
    }

    [Fact(Timeout = Limit)]
    public async Task A_stale_pid_file_whose_number_now_is_another_server_s_does_not_stop_a_start()
    {
        using var place = new TemporaryFolder();
        var kept = new LocalServerOptions(place.In("cluster"), Durable: false);
        await (await Server.StartAsync(kept)).DisposeAsync();
        await using LocalServer bystander = await Server.StartAsync(Server.Quick);
        string stale = Path.Combine(kept.DataFolder!, "data", "postmaster.pid");
        await File.WriteAllTextAsync(stale, $"{bystander.ProcessId}\n{kept.DataFolder}/data\n", TestContext.Current.CancellationToken);

        await using LocalServer server = await Server.StartAsync(kept);

        Assert.Equal("1", await Server.AskAsync(server, "SELECT 1"));
        Assert.Equal("1", await Server.AskAsync(bystander, "SELECT 1"));
    }
}
