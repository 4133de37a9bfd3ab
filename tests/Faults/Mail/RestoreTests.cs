using FleetWake.Logbook.Mail;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// A database that is restored from a backup no longer knows what went out since. With a journal outside it nothing goes out a second time; what had not
/// gone out goes. The backup here is a copy of the whole database at one moment, taken in the middle of sending.
/// </summary>
public sealed class RestoreTests(PostgresFixture postgres) : IDisposable
{
    private const int EachWord = 6;
    private static readonly string[] Words = ["ok", "later", "full", "gone", "cutbefore", "cutafter"];
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-journal-").FullName;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData(true)]
    [InlineData(false)] // what the journal is for: without it messages come twice
    public async Task Nothing_that_went_out_after_the_backup_goes_out_again(bool journalled)
    {
        await using var server = new FaultyServer();
        var (name, backup) = (await postgres.NewDatabaseAsync("restore", Ct), "");
        var addresses = Words.SelectMany(w => Enumerable.Range(0, EachWord).Select(i => $"{w}-{i}@d{i % 3}.example")).Append("ok-heard@heard.example").ToList();
        await using (var fleet = await OpenAsync(name, addresses))
        {
            await IssueAsync(fleet, "2026-W48");
            using var journal = journalled ? new MailJournal(folder, time) : null;
            using (var sender = Sender(fleet, server, journal))
            {
                // Of one the server's answer is heard and not yet written down; others are sent, put off or unclear.
                var claimed = (await Ledger(fleet).ClaimAsync(["d0.example", "d1.example", "d2.example"], Ct))!;
                using var mime = new MemoryStream(claimed.Mime);
                journal?.Begin(claimed);
                var delivery = await Post(server).SendAsync(await MimeKit.MimeMessage.LoadAsync(mime, Ct), Ct);
                journal?.End(claimed, delivery);
                for (var i = 0; i < addresses.Count / 2; i++)
                {
                    if (!await sender.SendOneAsync(Ct)) time.Move(TimeSpan.FromSeconds(15));
                }

                backup = await CopyAsync(fleet, name);
                Assert.IsType<Delivery.Sent>(delivery);
                await Ledger(fleet).SentAsync(claimed, Ct);
                await SettleAsync(fleet, sender);

                // And a week more, of which the backup knows nothing at all.
                await IssueAsync(fleet, "2026-W49");
                await SettleAsync(fleet, sender);
            }
        }

        var before = server.Kept.ToDictionary();
        await using (var restored = await FleetDatabase.OnAsync(backup, Ct))
        {
            var holds = new MailHolds(restored.Store, time);
            await holds.HoldAsync(Ct);
            using var journal = journalled ? new MailJournal(folder, time) : null;
            using var sender = Sender(restored, server, journal);
            time.Move(TimeSpan.FromMinutes(11)); // the lease of whoever was sending is over
            Assert.False(await sender.SendOneAsync(Ct));
            Assert.NotNull(await holds.SinceAsync(Ct));
            Assert.True(await holds.ReleaseAsync(Ct));
            Assert.False(await holds.ReleaseAsync(Ct));
            await SettleAsync(restored, sender);
            await IssueAsync(restored, "2026-W49");
            await SettleAsync(restored, sender);
            var again = server.Kept.Where(k => k.Value > before.GetValueOrDefault(k.Key)).Select(k => k.Key).ToList();
            if (!journalled)
            {
                Assert.NotEmpty(again);
                return;
            }

            Assert.Empty(again);
            var lines = await new MailReading(restored.Store, restored.Source).ListAsync(RunningFleet.Operator, new MailFilter(), null, 1000, Ct);
            var of = (await new FleetOperators(restored.Store, time).AllRecipientsAsync(RunningFleet.Operator, Ct)).ToDictionary(r => r.Id, r => r.Address);
            Assert.All(lines, l => Assert.Equal(of[l.Recipient].StartsWith("gone", StringComparison.Ordinal) ? MailState.Refused : MailState.Sent, l.State));

            // What may have come twice is listed in the restored ledger as it was in the one that is lost.
            Assert.All(lines.Where(l => of[l.Recipient].StartsWith("cut", StringComparison.Ordinal) && l.Period == "2026-W48"), l => Assert.InRange(l.Unclear, 1, 2));

            // What nobody has sent goes out as ever.
            await IssueAsync(restored, "2026-W50");
            await SettleAsync(restored, sender);
            Assert.All(addresses.Where(a => !a.StartsWith("gone", StringComparison.Ordinal)), a => Assert.Equal(before[a] + 1, server.Kept[a]));
        }
    }

    [Fact]
    public void A_line_that_was_not_finished_and_a_file_of_something_else_say_nothing()
    {
        File.WriteAllText(Path.Combine(folder, "sent-2026-11-29-aaaaaaaa.tsv"), "2026-11-29T07:00:00Z\tbay\tm-1\t1\tbegun\n2026-11-29T07:00:01Z\tbay\tm-1\t1\tsent\n2026-11-29T07:00:00Z\tbay\tm-2\t1\tbeg");
        File.WriteAllText(Path.Combine(folder, "sent-x.tsv"), "no journal\n");
        using var journal = new MailJournal(folder, time);
        Assert.IsType<Delivery.Sent>(journal.Before(new ClaimedMail("bay", "m-1", 1, 0, [])));
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-1", 2, 0, []))); // somebody asked for it to be sent again
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-2", 1, 0, [])));
        Assert.Null(journal.Before(new ClaimedMail("other", "m-1", 1, 0, [])));
    }

    [Fact]
    public void An_alert_is_known_by_what_it_tells_of_and_whom_though_it_is_told_at_another_minute()
    {
        using (var first = new MailJournal(folder, time))
        {
            var told = new ClaimedMail("bay", "alert-2026-11-30T07:00Z-0a1b2c3d-r-1", 1, 0, []);
            first.Begin(told);
            first.End(told, new Delivery.Sent());
        }

        using var journal = new MailJournal(folder, time);
        Assert.IsType<Delivery.Sent>(journal.Before(new ClaimedMail("bay", "alert-2026-11-30T09:12Z-0a1b2c3d-r-1", 1, 0, [])));
        Assert.Null(journal.Before(new ClaimedMail("bay", "alert-2026-11-30T09:12Z-0a1b2c3d-r-2", 1, 0, [])));
        Assert.Null(journal.Before(new ClaimedMail("bay", "alert-2026-11-30T09:12Z-ffffffff-r-1", 1, 0, [])));
    }

    [Fact]
    public void What_was_on_its_way_at_the_backup_counts_as_gone_out_when_it_was_taken_at_that_very_attempt()
    {
        using var journal = new MailJournal(folder, time);
        var second = new ClaimedMail("bay", "m-1", 2, 0, []);
        journal.Begin(second);
        journal.End(second, new Delivery.Sent());
        Assert.True(journal.WasTaken(new WaitingMail("bay", "m-1", 1, MailState.Deferred)));
        Assert.True(journal.WasTaken(new WaitingMail("bay", "m-1", 2, MailState.Sending)));
        Assert.False(journal.WasTaken(new WaitingMail("bay", "m-1", 2, MailState.Queued))); // somebody asked for it to be sent again
        Assert.False(journal.WasTaken(new WaitingMail("bay", "m-1", 3, MailState.Sending)));
    }

    [Fact]
    public void What_is_older_than_sixty_days_is_not_read_any_more_and_goes_when_a_day_begins()
    {
        string[] names = ["sent-2026-09-30-aaaaaaaa.tsv", "sent-2026-10-01-aaaaaaaa.tsv", "sent-x.tsv"];
        foreach (var (n, name) in names.Index()) File.WriteAllText(Path.Combine(folder, name), $"2026-10-01T07:00:00Z\tbay\tm-{n}\t1\tbegun\n2026-10-01T07:00:01Z\tbay\tm-{n}\t1\tsent\n");
        using var journal = new MailJournal(folder, time);
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-0", 1, 0, [])));
        Assert.IsType<Delivery.Sent>(journal.Before(new ClaimedMail("bay", "m-1", 1, 0, [])));
        journal.Begin(new ClaimedMail("bay", "m-9", 1, 0, []));
        Assert.Equal(names[1..], Directory.EnumerateFiles(folder).Select(p => Path.GetFileName(p)!).Where(n => names.Contains(n)).Order(StringComparer.Ordinal));
        time.Move(TimeSpan.FromDays(1));
        Assert.IsType<Delivery.Unclear>(journal.Before(new ClaimedMail("bay", "m-9", 2, 0, [])));
        journal.Begin(new ClaimedMail("bay", "m-8", 1, 0, []));
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-1", 1, 0, [])));
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-9", 2, 1, []))); // counted once, though it was read again
        Assert.Null(journal.Before(new ClaimedMail("bay", "m-8", 2, 1, [])));
    }

    [Fact]
    public void What_another_process_notes_is_read_on_once()
    {
        using var dead = new MailJournal(folder, time);
        using var next = new MailJournal(folder, time);
        var first = new ClaimedMail("bay", "m-1", 1, 0, []);
        var after = new ClaimedMail("bay", "m-1", 2, 0, []) { AfterSilence = true };
        next.Begin(new ClaimedMail("bay", "m-2", 1, 0, []));
        dead.Begin(first);
        Assert.IsType<Delivery.Unclear>(next.Before(after));
        Assert.Null(next.Before(after with { Unclear = 1 }));
        dead.End(first, new Delivery.Sent());
        Assert.IsType<Delivery.Sent>(next.Before(after with { Unclear = 1 }));
        Assert.Null(next.Before(new ClaimedMail("bay", "m-2", 2, 1, []) { AfterSilence = true }));
    }

    [Fact]
    public async Task A_wish_to_send_again_is_granted_in_a_restored_database_too()
    {
        await using var server = new FaultyServer();
        var name = await postgres.NewDatabaseAsync("again", Ct);
        using var journal = new MailJournal(folder, time);
        var backup = "";
        await using (var fleet = await OpenAsync(name, ["ok-1@a.example"]))
        {
            await IssueAsync(fleet, "2026-W48");
            using var sender = Sender(fleet, server, journal);
            await SettleAsync(fleet, sender);
            backup = await CopyAsync(fleet, name);
            await AgainAsync(fleet, sender);
            Assert.Equal(2, server.Kept["ok-1@a.example"]);
        }

        time.Move(TimeSpan.FromHours(1));
        await using var restored = await FleetDatabase.OnAsync(backup, Ct);
        using var other = Sender(restored, server, journal);
        await AgainAsync(restored, other);
        Assert.Equal(3, server.Kept["ok-1@a.example"]);

        async Task AgainAsync(FleetDatabase fleet, MailSender sender)
        {
            var card = (await new FleetOperators(fleet.Store, time).FindAsync(RunningFleet.Operator, Ct))!;
            var again = new MailAgain(new MailReading(fleet.Store, fleet.Source), new MailResends(fleet.Store, fleet.Source, time));
            Assert.Equal(Resend.AsAnother, await again.SendAsync(card, "weekly-wear-2026-W48-r-000", null, Ct));
            await SettleAsync(fleet, sender);
        }
    }

    [Fact]
    public async Task What_cannot_be_noted_is_not_sent()
    {
        await using var server = new FaultyServer();
        await using var fleet = await OpenAsync(await postgres.NewDatabaseAsync("unnoted", Ct), ["ok-1@a.example"]);
        await IssueAsync(fleet, "2026-W48");
        using var journal = new MailJournal(Path.Combine(folder, "away"), time);
        using var sender = Sender(fleet, server, journal);
        Assert.True(await sender.SendOneAsync(Ct));
        Assert.Empty(server.Lines);
        var line = Assert.Single(await new MailReading(fleet.Store, fleet.Source).ListAsync(RunningFleet.Operator, new MailFilter(), null, 10, Ct));
        Assert.Equal(MailState.Deferred, line.State);
        Assert.StartsWith("the journal of mail cannot be written", line.Why, StringComparison.Ordinal);
    }

    private MailLedger Ledger(FleetDatabase fleet) => new(fleet.Store, fleet.Source, time);

    private static SmtpPost Post(FaultyServer server) => new(new SmtpSettings("127.0.0.1", server.Port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(20)));

    private MailSender Sender(FleetDatabase fleet, FaultyServer server, MailJournal? journal) => new(Ledger(fleet), Post(server), time, NullLogger<MailSender>.Instance, journal: journal);

    private async Task<FleetDatabase> OpenAsync(string name, IReadOnlyList<string> addresses)
    {
        var fleet = await FleetDatabase.OnAsync(name, Ct);
        await new FleetOperators(fleet.Store, time).OpenAsync(RunningFleet.Operator, "Skerry Bay Hire", RunningFleet.Zone, Ct);
        await using var session = fleet.Store.LightweightSession(RunningFleet.Operator);
        foreach (var (i, address) in addresses.Index()) session.Store(new Recipient($"r-{i:000}", address, DigestNames.WeeklyWear, $"token-{i}", true));
        await session.SaveChangesAsync(Ct);
        return fleet;
    }

    private async Task IssueAsync(FleetDatabase fleet, string period)
    {
        var operators = new FleetOperators(fleet.Store, time);
        var card = (await operators.FindAsync(RunningFleet.Operator, Ct))!;
        var digest = new RenderedDigest("Nothing to decide", "<p>Nothing to decide</p>", "Nothing to decide\n", [], UsedFallback: false);
        var mails = (await operators.RecipientsAsync(card.Id, DigestNames.WeeklyWear, Ct)).Select(r => Outgoing.Of(
            MailComposer.Compose(digest, new Sender("digest@fleet.example", null).To(card, r, DigestNames.WeeklyWear, period, time.GetUtcNow())), $"weekly-wear-{period}-{r.Id}", r)).ToList();
        Assert.True(await Ledger(fleet).IssueAsync(card, DigestNames.WeeklyWear, period, mails, [], Ct));
    }

    private async Task SettleAsync(FleetDatabase fleet, MailSender sender)
    {
        for (var round = 0; round < 400; round++)
        {
            while (await sender.SendOneAsync(Ct))
            {
            }

            if ((await Ledger(fleet).CountsAsync(Ct)).Keys.All(s => s is MailState.Sent or MailState.Refused or MailState.GivenUp)) return;
            time.Move(TimeSpan.FromMinutes(11));
        }

        Assert.Fail("not everything was settled");
    }

    /// <summary>The database as it stands, under another name.</summary>
    private static async Task<string> CopyAsync(FleetDatabase fleet, string connection)
    {
        var from = new NpgsqlConnectionStringBuilder(connection);
        var to = $"{from.Database}_copy";

        // PostgreSQL copies what nobody is connected to.
        fleet.Source.Clear();
        await using var server = NpgsqlDataSource.Create(new NpgsqlConnectionStringBuilder(connection) { Database = "postgres" }.ConnectionString);
        await using (var end = server.CreateCommand($"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{from.Database}'")) await end.ExecuteNonQueryAsync(Ct);
        await using var copy = server.CreateCommand($"create database \"{to}\" template \"{from.Database}\"");
        await copy.ExecuteNonQueryAsync(Ct);
        fleet.Source.Clear();
        return new NpgsqlConnectionStringBuilder(connection) { Database = to }.ConnectionString;
    }
}
