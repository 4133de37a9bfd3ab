using FleetWake.Reports.Digests;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// The worker is killed (kill -9) again and again, at each step of a conversation: every message arrives, and twice only when the worker was
/// killed after the server had it and before that was on record, and then it is listed. Once a step here; <c>FLEETWAKE_MAIL_KILLS=50</c> runs
/// more, <c>FLEETWAKE_MAIL_SEED</c> draws others: which step comes when, whether the server stands still meanwhile, and how long the worker has left.
/// </summary>
public sealed class MailKillTests(PostgresFixture postgres, ITestOutputHelper output)
{
    private const int MessagesEach = 3;
    private static readonly string[] Steps = ["EHLO", "MAIL", "RCPT", "DATA", "TEXT", "TAKEN"];

    private static int Kills => Number("FLEETWAKE_MAIL_KILLS", 1);

    private static int Seed => Number("FLEETWAKE_MAIL_SEED", 7);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_worker_that_is_killed_at_any_step_loses_nothing_and_what_may_have_come_twice_is_listed()
    {
        var plan = Plan();
        await using var server = new FaultyServer();
        var database = await postgres.NewDatabaseAsync("kill", Ct);
        await using var fleet = await FleetDatabase.OnAsync(database, Ct);
        var card = await new FleetOperators(fleet.Store, TimeProvider.System).OpenAsync(RunningFleet.Operator, "Skerry Bay Hire", RunningFleet.Zone, Ct);
        foreach (var (round, kill) in plan.Index())
        {
            using var dead = new ManualResetEventSlim();
            var reached = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            using var worker = new FleetProgram(database, Settings(server.Port), "work");

            // What the kill before left is sent first, so that no message meets three of them.
            await SettledAsync(fleet);
            server.At = (at, to) =>
            {
                if (at != kill.Step) return;
                reached.TrySetResult();
                if (kill.StandsStill) dead.Wait(TimeSpan.FromSeconds(30), Ct);
            };
            await QueueAsync(fleet, card, round);
            await RunningFleet.UntilAsync($"{kill} in round {round} of seed {Seed}", () => Task.FromResult(reached.Task.IsCompleted), Ct, TimeSpan.FromMinutes(2));
            if (!kill.StandsStill) await Task.Delay(kill.LeftMilliseconds, Ct);
            worker.Signal("KILL");
            await worker.EndAsync(Ct);
            server.At = null;
            dead.Set();
        }

        using (new FleetProgram(database, Settings(server.Port), "work")) await SettledAsync(fleet);

        var lines = await new MailReading(fleet.Store, fleet.Source).ListAsync(card.Id, new MailFilter(), null, 100_000, Ct);
        var of = (await new FleetOperators(fleet.Store, TimeProvider.System).AllRecipientsAsync(card.Id, Ct)).ToDictionary(r => r.Id, r => r.Address);
        output.WriteLine(
            $"seed {Seed}: {plan.Count} kills, {lines.Count} messages, {lines.Count(l => l.State != MailState.Sent)} not sent, {lines.Count(l => l.Unclear > 0)} listed as unclear, "
            + $"{lines.Count(l => server.Kept.GetValueOrDefault(of[l.Recipient]) > 1)} twice with the server, {lines.Sum(l => Math.Max(0, server.Kept.GetValueOrDefault(of[l.Recipient]) - 1 - l.Unclear))} of these not listed");
        Assert.Equal(plan.Count * MessagesEach, lines.Count);
        Assert.All(lines, line =>
        {
            Assert.Equal(MailState.Sent, line.State);
            Assert.InRange(server.Kept.GetValueOrDefault(of[line.Recipient]), 1, 1 + line.Unclear);
        });
    }

    /// <summary>Each step as often as is asked for, in an order that the seed draws; at half of them, which the seed draws too, the server stands still.</summary>
    private static List<Kill> Plan()
    {
        var chance = new Random(Seed);
        var stands = Enumerable.Range(0, Steps.Length * Kills).Select(i => i % 2 == 0).ToArray();
        chance.Shuffle(stands);
        var plan = stands.Select((still, i) => new Kill(Steps[i % Steps.Length], still, chance.Next(12))).ToArray();
        chance.Shuffle(plan);
        return [.. plan];
    }

    /// <summary>Waits until everything queued is settled. The lease of the dead runs for minutes: it ends now; that of the living, who began after it, does not.</summary>
    private static async Task SettledAsync(FleetDatabase fleet)
    {
        await RunAsync(fleet, "update fleetwake.outgoing_mail set not_before = now() where state in ('sending', 'deferred', 'unclear')");
        await RunningFleet.UntilAsync(
            "everything queued to be settled",
            async () =>
            {
                await RunAsync(fleet, "update fleetwake.outgoing_mail set not_before = now() where state in ('deferred', 'unclear') and not_before > now()");
                return (await new MailLedger(fleet.Store, fleet.Source, TimeProvider.System).CountsAsync(Ct)).Keys.All(s => s is MailState.Sent or MailState.GivenUp);
            },
            Ct, TimeSpan.FromMinutes(2));
    }

    private static (string Name, string Value)[] Settings(int port) =>
        [("FLEETWAKE_SMTP_HOST", "127.0.0.1"), ("FLEETWAKE_SMTP_PORT", $"{port}"), ("FLEETWAKE_SMTP_SECURITY", "none"), ("FLEETWAKE_MAIL_FROM", "digest@fleet.example")];

    private static async Task QueueAsync(FleetDatabase fleet, OperatorCard card, int round)
    {
        var readers = Enumerable.Range(0, MessagesEach).Select(i => new Recipient($"r-{round:0000}-{i}", $"ok-{round}-{i}@d{i}.example", WeeklyWear.Digest, $"token-{round}-{i}", true)).ToList();
        await using (var session = fleet.Store.LightweightSession(card.Id))
        {
            session.Store<Recipient>([.. readers]);
            await session.SaveChangesAsync(Ct);
        }

        var digest = new RenderedDigest("Hello", "<p>Hello</p>", "Hello\n", [], UsedFallback: false);
        var mails = readers.Select(r => Reports.Mail.Outgoing.Of(
            Reports.Mail.MailComposer.Compose(digest, new Sender("digest@fleet.example", null).To(card, r, WeeklyWear.Digest, $"round-{round}", TimeProvider.System.GetUtcNow())), $"m-{r.Id}", r)).ToList();
        Assert.True(await new MailLedger(fleet.Store, fleet.Source, TimeProvider.System).IssueAsync(card, WeeklyWear.Digest, $"round-{round}", mails, [], Ct));
    }

    private static async Task RunAsync(FleetDatabase fleet, string sql)
    {
        await using var command = fleet.Source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }

    private static int Number(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), out var n) ? n : usual;

    /// <summary>One kill.</summary>
    /// <param name="Step">What the server had just heard or done.</param>
    /// <param name="StandsStill">The server says nothing until the worker is dead; else it goes on and the kill falls somewhere behind the step.</param>
    /// <param name="LeftMilliseconds">How long the worker has left when the server goes on [ms].</param>
    private sealed record Kill(string Step, bool StandsStill, int LeftMilliseconds);
}
