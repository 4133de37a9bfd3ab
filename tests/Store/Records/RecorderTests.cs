using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using Marten;

namespace FleetWake.Store.Tests.Records;

public sealed class RecorderTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tenant = "skerry-bay";
    private static readonly DateTimeOffset Now = new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);
    private FleetDatabase database = null!;
    private Recorder recorder = null!;

    public async ValueTask InitializeAsync()
    {
        database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("recorder"));
        recorder = new Recorder(database.Store);
    }

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task Of_eight_equal_submissions_at_once_one_is_recorded_and_all_get_its_answer_thirty_times()
    {
        await Take(Register("tern"));
        for (var round = 0; round < 30; round++)
        {
            var strike = Strike("tern", Id(1000 + round));
            var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => Take(strike))));
            Assert.All(answers, a => Assert.Equal(Outcome.Recorded, a.Outcome));
            Assert.Equal(1, answers.Count(a => !a.Repeat));
        }

        await using var session = database.Store.QuerySession(Tenant);
        var events = await session.Events.FetchStreamAsync(StreamName.Boat("tern"), token: TestContext.Current.CancellationToken);
        Assert.Equal(1 + 30, events.Count);
    }

    [Fact]
    public async Task Different_records_of_one_boat_at_once_are_all_kept()
    {
        await Take(Register("gannet"));
        var answers = await Task.WhenAll(Enumerable.Range(0, 24).Select(i => Task.Run(() => Take(Strike("gannet", Id(2000 + i))))));
        Assert.All(answers, a => Assert.Equal(Outcome.Recorded, a.Outcome));
        await using var session = database.Store.QuerySession(Tenant);
        Assert.Equal(25, (await session.Events.FetchStreamAsync(StreamName.Boat("gannet"), token: TestContext.Current.CancellationToken)).Count);
    }

    [Fact]
    public async Task Different_records_that_race_to_open_one_boats_stream_are_all_kept()
    {
        for (var round = 0; round < 10; round++)
        {
            var boat = $"opened-{round}";
            var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => Task.Run(() => Take(Strike(boat, Id(5000 + (round * 10) + i))))));
            Assert.All(answers, a => Assert.Equal(Outcome.Held, a.Outcome));
        }
    }

    [Fact]
    public async Task The_same_id_with_other_content_is_a_conflict_and_stores_nothing()
    {
        await Take(Register("skua"));
        await Take(Strike("skua", Id(3)));
        var answer = await Take(Strike("skua", Id(3)) with { Severity = "bent" });
        Assert.Equal(Outcome.Conflict, answer.Outcome);
        Assert.Equal("/entry/id", Assert.Single(answer.Refusals).Field);
    }

    [Fact]
    public async Task A_refusal_leaves_no_receipt_so_the_id_is_free_for_the_mended_record()
    {
        await Take(Register("auk"));
        Assert.Equal(Outcome.Refused, (await Take(Strike("auk", Id(4)) with { Severity = "awful" })).Outcome);
        Assert.Equal(Outcome.Recorded, (await Take(Strike("auk", Id(4)))).Outcome);
    }

    [Fact]
    public async Task A_record_of_a_boat_that_is_not_registered_is_held_with_its_field_until_the_registration_arrives()
    {
        var strike = Strike("fulmar", Id(5));
        var held = await Take(strike);
        Assert.Equal(Outcome.Held, held.Outcome);
        Assert.Equal("/boat", Assert.Single(held.Held).Field);

        await Take(Register("fulmar"));
        var again = await Take(strike);
        Assert.Equal((Outcome.Recorded, true), (again.Outcome, again.Repeat));
    }

    [Fact]
    public async Task A_prop_on_two_boats_is_kept_and_asked_about()
    {
        await Take(Register("petrel"));
        await Take(Register("puffin"));
        await Take(Mount("petrel", "P-9", Id(6)));
        var answer = await Take(Mount("puffin", "P-9", Id(7)));
        Assert.Contains(answer.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces && c.Question.EndsWith('?'));
    }

    [Fact]
    public async Task A_number_that_json_cannot_write_is_refused_and_breaks_nothing()
    {
        await Take(Register("rail"));
        var answer = await recorder.TakeAsync(Tenant, Kind<ReportStrike>(), Strike("rail", Id(77)) with { Hours = double.PositiveInfinity }, Sent(), TestContext.Current.CancellationToken);
        Assert.Equal((Outcome.Refused, "/hours"), (answer.Outcome, Assert.Single(answer.Refusals).Field));
    }

    [Fact]
    public async Task One_operators_records_are_nothing_to_another()
    {
        await Take(Register("knot"));
        await recorder.TakeAsync("other-fleet", Kind<ReportStrike>(), Strike("knot", Id(8)), Sent(), TestContext.Current.CancellationToken);
        await using var session = database.Store.QuerySession(Tenant);
        var events = await session.Events.FetchStreamAsync(StreamName.Boat("knot"), token: TestContext.Current.CancellationToken);
        Assert.Equal("skerry-bay", Assert.Single(events).TenantId);
    }

    [Fact]
    public async Task Both_facts_of_a_moved_prop_share_one_entry_id_under_their_stored_names()
    {
        await Take(Register("dunlin"));
        await Take(Mount("dunlin", "P-10", Id(9)));
        await using var command = database.Source.CreateCommand(
            "select type, data -> 'entry' ->> 'id', data ->> 'position' from fleetwake.mt_events where stream_id in ('boat/dunlin', 'prop/P-10') and type <> 'boat_registered' order by type");
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = new List<(string, string, string)>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken)) rows.Add((reader.GetString(0), reader.GetString(1), reader.GetString(2)));
        Assert.Equal([("prop_issued", Id(9).ToString(), "single"), ("prop_mounted", Id(9).ToString(), "single")], rows);
    }

    private Task<Answer> Take<T>(T command)
        where T : ICommand<T> =>
        recorder.TakeAsync(Tenant, Kind<T>(), command, Sent(), TestContext.Current.CancellationToken);

    private static RecordKind Kind<T>()
        where T : ICommand<T> => RecordKind.Find(T.Kind)!;

    private static Arrival Sent() => new("dock-1", Now, null);

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);

    private static Stamp At(Guid id) => new(id, "mech-1", "2026-05-03T10:15:00", "Pacific/Auckland");

    private static RegisterBoat Register(string boat) =>
        new(At(new Guid(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(boat)).AsSpan(0, 16))), boat, boat, "north", "Pacific/Auckland", "salt", ["single"]);

    private static ReportStrike Strike(string boat, Guid id) => new(At(id), boat, "single", "rock", "scuffed");

    private static MountProp Mount(string boat, string prop, Guid id) => new(At(id), boat, "single", prop);
}
