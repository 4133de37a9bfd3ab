using FleetWake.Reports.Digests;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// The worker is killed (kill -9) at each step of a conversation: the message arrives once all the same; twice only when it was killed
/// after the server had it and before that was on record, and then it is listed. Once a step here; <c>FLEETWAKE_MAIL_KILLS=50</c> runs more.
/// </summary>
public sealed class MailKillTests(PostgresFixture postgres)
{
    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("FLEETWAKE_MAIL_KILLS"), out var n) ? n : 1;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("EHLO", 1)]
    [InlineData("MAIL", 1)]
    [InlineData("RCPT", 1)]
    [InlineData("DATA", 1)]
    [InlineData("TEXT", 2)]
    [InlineData("TAKEN", 2)]
    public async Task A_worker_that_is_killed_loses_nothing(string step, int mostCopies)
    {
        for (var kill = 0; kill < Kills; kill++)
        {
            await using var server = new FaultyServer();
            var database = await postgres.NewDatabaseAsync("kill", Ct);
            Assert.Equal(0, (await FleetProgram.RunAsync(database, Ct, "schema")).Exit);
            await using (var fleet = await FleetDatabase.OnAsync(database, Ct)) await new Store.Operators.FleetOperators(fleet.Store, TimeProvider.System).OpenAsync(RunningFleet.Operator, "Skerry Bay Hire", RunningFleet.Zone, Ct);
            await QueueAsync(database);
            var reached = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            using var killed = new ManualResetEventSlim();
            server.At = (at, _) =>
            {
                // The server stands still at the step until the worker is dead.
                if (at != step || reached.Task.IsCompleted) return;
                reached.TrySetResult();
                killed.Wait(TimeSpan.FromSeconds(30), Ct);
            };
            using (var worker = Worker(database, server.Port))
            {
                await reached.Task.WaitAsync(TimeSpan.FromMinutes(2), Ct);
                worker.Signal("KILL");
                await worker.EndAsync(Ct);
                killed.Set();
            }

            using (var next = Worker(database, server.Port))
            {
                await RunningFleet.UntilAsync("the message to be settled", async () =>
                {
                    // The lease of the dead runs for minutes: it ends now.
                    await AskAsync(database, "update fleetwake.outgoing_mail set not_before = now() where state = 'sending' and attempts = 1");
                    return await AskAsync(database, "select count(*) from fleetwake.outgoing_mail where state = 'sent'") is 1L;
                }, Ct, TimeSpan.FromMinutes(2));
                next.Signal("KILL");
            }

            Assert.InRange(server.Kept["ok-1@a.example"], 1, mostCopies);

            // Whether or not the server had it, that it may is listed. Killed after the answer, the worker may have been quick enough to write it down.
            if (step != "TAKEN" || server.Kept["ok-1@a.example"] > 1) Assert.Equal(1, await AskAsync(database, "select unclear from fleetwake.outgoing_mail"));
        }
    }

    private static FleetProgram Worker(string database, int port) =>
        new(database, [("FLEETWAKE_SMTP_HOST", "127.0.0.1"), ("FLEETWAKE_SMTP_PORT", $"{port}"), ("FLEETWAKE_SMTP_SECURITY", "none"), ("FLEETWAKE_MAIL_FROM", "digest@fleet.example")], "work");

    private static async Task QueueAsync(string database)
    {
        await using var fleet = await FleetDatabase.OnAsync(database, Ct);
        var operators = new Store.Operators.FleetOperators(fleet.Store, TimeProvider.System);
        var card = (await operators.FindAsync(RunningFleet.Operator, Ct))!;
        await operators.SubscribeAsync(card, "ok-1@a.example", WeeklyWear.Digest, Ct);
        var reader = Assert.Single(await operators.RecipientsAsync(card.Id, WeeklyWear.Digest, Ct));
        var digest = new RenderedDigest("Hello", "<p>Hello</p>", "Hello\n", [], UsedFallback: false);
        var message = Reports.Mail.MailComposer.Compose(digest, new Sender("digest@fleet.example", null).To(card, reader, WeeklyWear.Digest, "2026-W49", TimeProvider.System.GetUtcNow()));
        Assert.True(await new Store.Mail.MailLedger(fleet.Store, fleet.Source, TimeProvider.System).IssueAsync(card, WeeklyWear.Digest, "2026-W49", [Reports.Mail.Outgoing.Of(message, "m-1", reader)], [], Ct));
    }

    private static async Task<object?> AskAsync(string database, string sql)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(Ct);
    }
}
