using FleetWake.Store.Servers;
using Npgsql;

namespace FleetWake.Store.Tests.Servers;

public sealed class StartAndStopTests
{
    [Fact]
    public async Task A_stopped_server_leaves_no_process_and_no_folder()
    {
        LocalServer server = await Server.StartAsync(Server.Quick);
        int pid = server.ProcessId!.Value;
        Assert.Equal("1", await Server.AskAsync(server, "SELECT 1"));
        Assert.True(Directory.Exists(server.Folder));

        await server.DisposeAsync();

        Assert.False(Server.Runs(pid));
        Assert.False(Directory.Exists(server.Folder));
    }

    [Fact]
    public async Task It_speaks_utf8_in_the_c_locale_and_utc_and_on_no_socket()
    {
        await using LocalServer server = await Server.StartAsync(Server.Quick);
        Assert.Equal("UTF8", await Server.AskAsync(server, "SHOW server_encoding"));
        Assert.Equal("C", await Server.AskAsync(server, "SELECT datcollate FROM pg_database WHERE datname = 'postgres'"));
        Assert.Equal("UTC", await Server.AskAsync(server, "SHOW timezone"));
        Assert.Equal("", await Server.AskAsync(server, "SHOW unix_socket_directories"));
        Assert.Equal("127.0.0.1", await Server.AskAsync(server, "SHOW listen_addresses"));
    }

    [Fact]
    public async Task A_second_server_runs_beside_the_first_and_outlives_it()
    {
        LocalServer first = await Server.StartAsync(Server.Quick);
        await using LocalServer second = await Server.StartAsync(Server.Quick);
        Assert.NotEqual(first.Port, second.Port);
        Assert.NotEqual(first.Folder, second.Folder);
        Assert.Equal("1", await Server.AskAsync(first, "SELECT 1"));

        await first.DisposeAsync();

        Assert.Equal("1", await Server.AskAsync(second, "SELECT 1"));
    }

    [Fact]
    public async Task Stopped_and_started_again_it_has_its_data_under_the_same_connection_string()
    {
        await using LocalServer server = await Server.StartAsync(Server.Quick);
        string before = server.ConnectionString("postgres");
        await Server.AskAsync(server, "CREATE TABLE props (serial text); INSERT INTO props VALUES ('4471') RETURNING serial");

        await server.StopAsync();
        await Assert.ThrowsAsync<NpgsqlException>(() => Server.AskAsync(before, "SELECT 1"));
        await server.StartAgainAsync(TestContext.Current.CancellationToken);

        Assert.Equal("4471", await Server.AskAsync(before, "SELECT serial FROM props"));
    }

    [Fact]
    public async Task A_database_can_be_made_from_another_as_a_template()
    {
        await using LocalServer server = await Server.StartAsync(Server.Quick);
        await server.CreateDatabaseAsync("the \"mould\"", ct: TestContext.Current.CancellationToken);
        await Server.AskAsync(server.ConnectionString("the \"mould\""), "CREATE TABLE cast_from_it (n int)");

        await server.CreateDatabaseAsync("copy", "the \"mould\"", TestContext.Current.CancellationToken);

        Assert.Equal("0", await Server.AskAsync(server.ConnectionString("copy"), "SELECT count(*) FROM cast_from_it"));
    }

    [Fact]
    public async Task A_start_that_fails_shows_what_the_server_said()
    {
        using var place = new TemporaryFolder();
        var kept = new LocalServerOptions(place.In("cluster"), Durable: false);
        await (await Server.StartAsync(kept)).DisposeAsync();
        await File.AppendAllTextAsync(Path.Combine(kept.DataFolder!, "data", "postgresql.conf"), "no such setting\n", TestContext.Current.CancellationToken);

        var failed = await Assert.ThrowsAsync<ServerStartException>(() => Server.StartAsync(kept));

        Assert.Contains("syntax error in file", failed.Message);
    }
}
