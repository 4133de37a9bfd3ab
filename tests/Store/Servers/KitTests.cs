using FleetWake.Tests.Kit;
using Npgsql;

namespace FleetWake.Store.Tests.Servers;

/// <summary>Other tests stand on the kit, so it is held to its own promises.</summary>
public sealed class KitTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Every_database_is_fresh_whatever_the_hint()
    {
        string[] made = await Task.WhenAll(Enumerable.Range(0, 4)
            .Select(_ => postgres.NewDatabaseAsync("Hélice, 4 blades", TestContext.Current.CancellationToken)));
        foreach (string database in made)
            await Server.AskAsync(database, "CREATE TABLE only_here (n int)");
        Assert.Equal(4, made.Distinct().Count());
    }

    [Fact]
    public async Task A_filling_that_failed_fails_nobody_who_asks_later()
    {
        var ct = TestContext.Current.CancellationToken;
        await Assert.ThrowsAsync<TimeoutException>(() => postgres.CopyAsync("once", "kit failing", _ => throw new TimeoutException(), ct));
        string copy = await postgres.CopyAsync("once", "kit failing", filled => Server.AskAsync(filled, "CREATE TABLE filled (n int)"), ct);
        Assert.Equal("0", await Server.AskAsync(copy, "SELECT count(*) FROM filled"));
    }

    [Fact]
    public async Task A_server_goes_down_during_a_request_and_comes_back_with_what_was_committed()
    {
        await using RestartableServer server = await RestartableServer.StartAsync(TestContext.Current.CancellationToken);
        string database = await server.NewDatabaseAsync("outage", TestContext.Current.CancellationToken);
        await Server.AskAsync(database, "CREATE TABLE props (serial text); INSERT INTO props VALUES ('4471') RETURNING serial");

        Task<string> request = Server.AskAsync(database, "INSERT INTO props VALUES ('4472'); SELECT pg_sleep(60)");
        await UntilAskedAsync(database);
        await server.StopAsync();

        var broken = await Assert.ThrowsAsync<PostgresException>(() => request);
        Assert.Equal(PostgresErrorCodes.AdminShutdown, broken.SqlState);
        await server.StartAgainAsync(TestContext.Current.CancellationToken);
        Assert.Equal("4471", await Server.AskAsync(database, "SELECT string_agg(serial, ', ') FROM props"));
    }

    private static async Task UntilAskedAsync(string database)
    {
        const string asleep = "SELECT count(*) FROM pg_stat_activity WHERE wait_event = 'PgSleep'";
        for (int attempt = 0; await Server.AskAsync(database, asleep) == "0"; attempt++)
        {
            Assert.True(attempt < 200, "The request never reached the server.");
            await Task.Delay(25, TestContext.Current.CancellationToken);
        }
    }
}
