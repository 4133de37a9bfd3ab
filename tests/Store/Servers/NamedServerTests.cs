using FleetWake.Store.Servers;
using FleetWake.Tests.Kit;
using Npgsql;

namespace FleetWake.Store.Tests.Servers;

public sealed class NamedServerTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Fleetwake_db_is_taken_first_though_nothing_is_installed()
    {
        string named = await postgres.NewDatabaseAsync(nameof(NamedServerTests), TestContext.Current.CancellationToken);
        await using DatabaseServer server = await OpenAsync(named);

        Assert.False(server.IsOwn);
        var parts = new NpgsqlConnectionStringBuilder(named);
        string version = (await Server.AskAsync(named, "SHOW server_version")).Split(' ')[0];
        Assert.Equal($"PostgreSQL {version} at {parts.Host}:{parts.Port}, named by FLEETWAKE_DB", server.Source.ToString());
    }

    [Fact]
    public async Task Databases_are_made_on_the_named_server_and_dropped_from_it()
    {
        string named = await postgres.NewDatabaseAsync(nameof(NamedServerTests), TestContext.Current.CancellationToken);
        await using DatabaseServer server = await OpenAsync(named);
        string name = new NpgsqlConnectionStringBuilder(named).Database + "_more";
        string isThere = $"SELECT count(*) FROM pg_database WHERE datname = '{name}'";

        await server.CreateDatabaseAsync(name, ct: TestContext.Current.CancellationToken);
        Assert.Equal(name, await Server.AskAsync(server.ConnectionString(name), "SELECT current_database()"));

        await server.DropDatabaseAsync(name, TestContext.Current.CancellationToken);
        Assert.Equal("0", await Server.AskAsync(named, isThere));
    }

    [Fact]
    public async Task A_named_server_that_does_not_answer_is_not_replaced_by_another()
    {
        await Assert.ThrowsAsync<NpgsqlException>(() => OpenAsync("Host=127.0.0.1;Port=1;Username=nobody"));
    }

    private static Task<DatabaseServer> OpenAsync(string named)
    {
        Machine machine = Server.Bare("debian") with { Variable = name => name == "FLEETWAKE_DB" ? named : null };
        return DatabaseServer.OpenAsync(machine, Server.Quick, _ => { }, TimeProvider.System, TestContext.Current.CancellationToken);
    }
}
