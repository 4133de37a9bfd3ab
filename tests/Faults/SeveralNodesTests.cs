using FleetWake.Reports.Mail;
using FleetWake.Settings;
using FleetWake.Store.Schema;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>Several programs on one database.</summary>
public sealed class SeveralNodesTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Six_that_apply_the_schema_to_an_empty_database_at_once_all_find_it_up_to_date()
    {
        var database = await postgres.NewEmptyDatabaseAsync("schema", Ct);
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(async () =>
        {
            await using var source = NpgsqlDataSource.Create(database);
            await SchemaSteps.ApplyAsync(source, Ct);
            Assert.Null(await SchemaSteps.DifferenceAsync(source, Ct));
        })));
    }

    [Fact]
    public async Task An_empty_database_differs_and_says_so()
    {
        await using var source = NpgsqlDataSource.Create(await postgres.NewEmptyDatabaseAsync("empty", Ct));
        Assert.NotNull(await SchemaSteps.DifferenceAsync(source, Ct));
    }

    [Fact]
    public async Task Two_programs_started_at_once_on_an_empty_database_serve_and_issue_one_digest()
    {
        await using var mailbox = Mailbox.Open();
        var database = await postgres.NewEmptyDatabaseAsync("two", Ct);
        var mail = mailbox.Settings;
        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() => RunningFleet.StartAsync(database, mail, ct: Ct))));
        await using var one = both[0];
        await using var two = both[1];

        var north = new DockRecords(1);
        var south = new DockRecords(2);
        await Task.WhenAll(one.SendAsync(north.Outfit("tern", "Tern"), Ct, "north"), two.SendAsync(south.Outfit("skua", "Skua"), Ct, "south"));
        await RunningFleet.UntilAsync("both boats by both programs", async () =>
            (await one.Http.GetStringAsync("/api/boats", Ct)).Contains("Skua", StringComparison.Ordinal)
            && (await two.Http.GetStringAsync("/api/boats", Ct)).Contains("Tern", StringComparison.Ordinal), Ct);

        await one.SubscribeAsync("manager@skerry-bay.example", Ct);
        await mailbox.NextAsync(Ct);
        await Task.Delay(TimeSpan.FromSeconds(4), Ct); // some more ticks of both
        Assert.Equal(1, mailbox.Offered);
    }
}
