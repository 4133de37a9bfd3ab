using FleetWake.Store.Nodes;
using FleetWake.Tests.Kit;
using Npgsql;

namespace FleetWake.Store.Tests.Nodes;

/// <summary>Who works on a database, and what becomes of one that stands still.</summary>
public sealed class NodeBookTests : IAsyncLifetime
{
    private static readonly NodeId Judge = new("judge-1-aaaaaa");
    private static readonly NodeId Frozen = new("frozen-2-bbbbbb");
    private readonly PostgresFixture postgres;
    private readonly SteppedTime time = new();
    private readonly Stillness stillness;
    private string connection = null!;
    private FleetDatabase database = null!;
    private NodeBook book = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public NodeBookTests(PostgresFixture postgres) => (this.postgres, stillness) = (postgres, new Stillness(time, NodeBook.Silence));

    public async ValueTask InitializeAsync()
    {
        connection = await postgres.NewDatabaseAsync("nodes");
        database = await FleetDatabase.OnAsync(connection);
        book = new NodeBook(database.Source);
    }

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task A_node_that_beats_is_left_alone_and_one_that_leaves_is_gone()
    {
        await book.BeatAsync(Frozen, "serve work", "1.0.0", Ct);
        Assert.Empty(await EndAsync());
        var node = Assert.Single(await book.AllAsync(Ct));
        Assert.True(node.Does("work") && node.Does("serve") && !node.Does("rve") && !node.IsSilent);
        await book.LeaveAsync(Frozen, Ct);
        Assert.Empty(await book.AllAsync(Ct));
    }

    [Fact]
    public async Task The_sessions_of_a_silent_node_are_ended_with_what_they_held_and_then_it_is_forgotten()
    {
        await using var theirs = await OpenAsync(Frozen.ApplicationName);
        await using var transaction = await theirs.BeginTransactionAsync(Ct);
        await RunAsync(theirs, "select pg_advisory_lock(7)");
        await using var others = await OpenAsync("somebody else");
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(await EndAsync());
        time.Step(21);

        var ended = Assert.Single(await EndAsync());
        Assert.Equal((Frozen.Value, 1, 1), (ended.Node, ended.Sessions, ended.Ended));
        Assert.Equal(21, ended.Since.TotalSeconds);
        await RunAsync(others, "select pg_advisory_lock(7)"); // would wait without end
        await Assert.ThrowsAnyAsync<NpgsqlException>(() => RunAsync(theirs, "select 1"));

        await EndAsync();
        Assert.Empty(await book.AllAsync(Ct));
    }

    [Fact]
    public async Task A_node_does_not_judge_itself_and_not_too_early()
    {
        await book.BeatAsync(Judge, "work", "1.0.0", Ct);
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(await EndAsync());
        time.Step(15);
        Assert.Empty(await EndAsync());
        time.Step(15);
        Assert.Equal(Frozen.Value, Assert.Single(await EndAsync()).Node);
    }

    [Fact]
    public async Task A_step_of_the_database_s_clock_makes_nobody_silent()
    {
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(await EndAsync());
        time.Step(3);

        // What was written before a clock is set an hour ahead is an hour old after it.
        await AnHourEarlierAsync(Frozen);
        Assert.Empty(await EndAsync());
        time.Step(3);
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(await EndAsync());
    }

    [Fact]
    public async Task One_that_beats_between_the_look_and_the_sentence_keeps_its_sessions()
    {
        await using var theirs = await OpenAsync(Frozen.ApplicationName);
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(stillness.Of(await book.BeatsAsync(Judge, Ct)));
        time.Step(21);
        var silent = stillness.Of(await book.BeatsAsync(Judge, Ct));
        Assert.Single(silent);
        await book.BeatAsync(Frozen, "work", "1.0.0", Ct);
        Assert.Empty(await book.EndAsync(silent, Ct));
        await RunAsync(theirs, "select 1");
    }

    [Fact]
    public void Two_nodes_of_one_process_differ_and_a_long_machine_name_still_fits()
    {
        Assert.NotEqual(NodeId.Make(), NodeId.Make());
        Assert.True(NodeId.Make().ApplicationName.Length <= 63);
    }

    private async Task<IReadOnlyList<EndedNode>> EndAsync() => await book.EndAsync(stillness.Of(await book.BeatsAsync(Judge, Ct)), Ct);

    private async Task AnHourEarlierAsync(NodeId node)
    {
        await using var command = database.Source.CreateCommand($"update fleetwake.nodes set beat_at = beat_at - interval '1 hour' where node = '{node}'");
        await command.ExecuteNonQueryAsync(Ct);
    }

    private async Task<NpgsqlConnection> OpenAsync(string name)
    {
        var open = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connection) { ApplicationName = name, Pooling = false }.ConnectionString);
        await open.OpenAsync(Ct);
        return open;
    }

    private static async Task RunAsync(NpgsqlConnection on, string sql)
    {
        await using var command = new NpgsqlCommand(sql, on);
        await command.ExecuteNonQueryAsync(Ct);
    }
}
