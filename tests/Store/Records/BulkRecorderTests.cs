using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Records;

public sealed class BulkRecorderTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tenant = "skerry-bay";
    private static readonly Arrival Arrival = new("import", new DateTimeOffset(2026, 5, 4, 9, 0, 0, TimeSpan.Zero), null);
    private FleetDatabase database = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("bulk"));

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task A_chunk_is_recorded_once_however_often_it_comes()
    {
        Submission[] chunk = [Register("tern", 1), .. Enumerable.Range(0, 40).Select(i => Strike("tern", 10 + i))];
        var first = await Bulk().TakeAsync(chunk, Ct);
        Assert.All(first, a => Assert.Equal((Outcome.Recorded, false), (a.Outcome, a.Repeat)));
        var second = await Bulk().TakeAsync(chunk, Ct);
        Assert.All(second, a => Assert.Equal((Outcome.Recorded, true), (a.Outcome, a.Repeat)));
        Assert.Equal(41, await CountAsync("tern"));
    }

    [Fact]
    public async Task It_answers_as_one_at_a_time_would()
    {
        var one = new Recorder(database.Store);
        await one.TakeAsync(Tenant, Strike("skua", 1).Kind, Strike("skua", 1).Command, Arrival, Ct);
        var answers = await Bulk().TakeAsync(
            [
                Strike("skua", 1), // held by the other way, and held still
                Strike("skua", 1, "bent"), // its id with other content
                Strike("skua", 2, "awful"), // refused
                Register("gannet", 3),
                Strike("gannet", 4), // registered a line above
                Strike("gannet", 4), // twice in one chunk
            ],
            Ct);
        Assert.Equal(
            [Outcome.Held, Outcome.Conflict, Outcome.Refused, Outcome.Recorded, Outcome.Recorded, Outcome.Recorded],
            answers.Select(a => a.Outcome));
        Assert.Equal([true, false, false, false, false, true], answers.Select(a => a.Repeat));
        Assert.Equal("/severity", Assert.Single(answers[2].Refusals).Field);

        // What was held is not any more once its boat is known, by either way.
        var later = await Bulk().TakeAsync([Register("skua", 5), Strike("skua", 1)], Ct);
        Assert.Equal((Outcome.Recorded, true), (later[1].Outcome, later[1].Repeat));
        var again = await one.TakeAsync(Tenant, Strike("gannet", 4).Kind, Strike("gannet", 4).Command, Arrival, Ct);
        Assert.Equal((Outcome.Recorded, true), (again.Outcome, again.Repeat));
    }

    [Fact]
    public async Task A_registration_that_was_taken_back_holds_what_names_it()
    {
        await Bulk().TakeAsync([Register("auk", 1)], Ct);
        var retraction = new Retract(Stamp(2), Stamp(1).Id, "wrong_subject", "auk");
        await Bulk().TakeAsync([new Submission(RecordKind.Find("retracted")!, retraction, Arrival)], Ct);
        Assert.Equal(Outcome.Held, Assert.Single(await Bulk().TakeAsync([Strike("auk", 3)], Ct)).Outcome);
    }

    [Fact]
    public async Task A_registration_that_is_a_conflict_or_was_taken_back_since_registers_nothing()
    {
        await Bulk().TakeAsync([Register("tern", 1), Register("auk", 2)], Ct);
        await Bulk().TakeAsync([new Submission(RecordKind.Find("retracted")!, new Retract(Stamp(3), Stamp(2).Id, "wrong_subject", "auk"), Arrival)], Ct);
        var answers = await Bulk().TakeAsync([Register("skua", 1), Strike("skua", 4), Register("auk", 2), Strike("auk", 5), Register("gull", 6), Strike("gull", 7)], Ct);
        Assert.Equal(
            [Outcome.Conflict, Outcome.Held, Outcome.Recorded, Outcome.Held, Outcome.Recorded, Outcome.Recorded],
            answers.Select(a => a.Outcome));
    }

    [Fact]
    public async Task An_amount_written_with_another_zero_at_its_end_is_the_same()
    {
        Assert.Equal((Outcome.Recorded, false), await PriceAsync(10.50m));
        Assert.Equal((Outcome.Recorded, true), await PriceAsync(10.5m));
        Assert.Equal(Outcome.Conflict, (await PriceAsync(10.51m)).Outcome);

        async Task<(Outcome Outcome, bool Repeat)> PriceAsync(decimal amount)
        {
            var price = Logbook.Office.SetPrice.Example with { Amount = amount };
            var answer = Assert.Single(await Bulk().TakeAsync([new Submission(RecordKind.Find("price_set")!, price, Arrival)], Ct));
            return (answer.Outcome, answer.Repeat);
        }
    }

    [Fact]
    public void Races_that_were_lost_together_are_lost_races()
    {
        var lost = new JasperFx.DocumentAlreadyExistsException(new InvalidOperationException(), typeof(Receipt), 1);
        var moved = new JasperFx.Events.EventStreamUnexpectedMaxEventIdException("boat/tern", null, 1, 2);
        Assert.True(Contention.IsLost(new AggregateException(lost, new AggregateException(lost)), taken: true));
        Assert.False(Contention.IsLost(new AggregateException(lost, new InvalidOperationException()), taken: true));
        Assert.False(Contention.IsLost(new AggregateException(), taken: true));

        // Of what is issued once the loser does not look again by itself: it is told that another was first.
        Assert.False(Contention.IsLost(new AggregateException(lost)));
        Assert.True(Contention.IsLost(new AggregateException(lost, moved)));
    }

    [Fact]
    public async Task A_look_records_nothing_and_knows_what_the_chunks_before_would_have_registered()
    {
        var bulk = Bulk();
        await bulk.TryAsync([Register("fulmar", 1)], Ct);
        Assert.Equal(Outcome.Recorded, Assert.Single(await bulk.TryAsync([Strike("fulmar", 2)], Ct)).Outcome);
        Assert.Equal(0, await CountAsync("fulmar"));
    }

    [Fact]
    public async Task Four_bulks_of_the_same_rows_and_a_phone_on_the_same_boat_at_once_lose_and_double_nothing()
    {
        await Bulk().TakeAsync([Register("puffin", 1)], Ct);
        var phone = new Recorder(database.Store);
        var bulks = Enumerable.Range(0, 4).Select(_ => Task.Run(async () =>
        {
            var bulk = Bulk();
            var fresh = 0;
            foreach (var chunk in Enumerable.Range(0, 200).Select(i => Strike("puffin", 100 + i)).Chunk(50))
                fresh += (await bulk.TakeAsync(chunk, Ct)).Count(a => a is { Outcome: Outcome.Recorded, Repeat: false });
            return fresh;
        })).ToList();
        for (var i = 0; i < 30; i++)
        {
            var strike = Strike("puffin", 5000 + i);
            Assert.Equal(Outcome.Recorded, (await phone.TakeAsync(Tenant, strike.Kind, strike.Command, Arrival, Ct)).Outcome);
        }

        Assert.Equal(200, (await Task.WhenAll(bulks)).Sum());
        Assert.Equal(1 + 200 + 30, await CountAsync("puffin"));
    }

    private BulkRecorder Bulk() => new(database.Store, Tenant);

    private async Task<int> CountAsync(string boat)
    {
        await using var session = database.Store.QuerySession(Tenant);
        return (await session.Events.FetchStreamAsync(StreamName.Boat(boat), token: Ct)).Count;
    }

    private static Submission Register(string boat, int number) => new(
        RecordKind.Find("boat_registered")!, new RegisterBoat(Stamp(number), boat, boat, "north-pier", "Pacific/Auckland", "salt", ["single"]), Arrival);

    private static Submission Strike(string boat, int number, string severity = "chipped") => new(
        RecordKind.Find("strike_reported")!, new ReportStrike(Stamp(number), boat, "single", "rock", severity), Arrival);

    private static Stamp Stamp(int number) => new(new Guid(number, 9, 9, new byte[8]), "mech-1", "2026-05-03T10:15:00", "Pacific/Auckland", number);
}
