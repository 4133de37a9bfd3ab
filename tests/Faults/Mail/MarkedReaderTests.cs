using FleetWake.Reports.Mail;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>An address that takes no mail, and reports that cannot be taken: what they leave on record, and whom they keep waiting.</summary>
public sealed class MarkedReaderTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_digest_whose_only_reader_takes_no_mail_is_on_record_as_issued_without_it_and_not_as_passed_over()
    {
        await using var mailbox = Mailbox.Open();
        var time = new ShiftedTime();
        time.Set(new DateTimeOffset(2026, 3, 4, 12, 0, 0, TimeSpan.FromHours(13))); // 2026-W10
        var database = await postgres.NewDatabaseAsync("marked", Ct);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        await fleet.SendAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        mailbox.Answers.Enqueue(new SmtpServer.Protocol.SmtpResponse(SmtpServer.Protocol.SmtpReplyCode.MailboxUnavailable, "5.1.1 no such person"));
        await fleet.SubscribeAsync("gone@bay.example", Ct);
        await RunningFleet.UntilAsync("the mark", async () => await CountAsync(database, "recipient_takes_no_mail") == 1, Ct);

        time.Move(TimeSpan.FromDays(7));
        await RunningFleet.UntilAsync("the digest without it", async () => await CountAsync(database, "recipient_left_out") == 1, Ct);
        time.Move(TimeSpan.FromDays(7));
        await RunningFleet.UntilAsync("the next without it", async () => await CountAsync(database, "recipient_left_out") == 2, Ct);
        Assert.Equal(3, await CountAsync(database, "digest_issued"));

        var card = (await fleet.Service<FleetOperators>().FindAsync(RunningFleet.Operator, Ct))!;
        await fleet.Service<FleetOperators>().TryAgainAsync(card, "gone@bay.example", null, Ct);
        time.Move(TimeSpan.FromDays(7));
        Assert.Contains("2026-W13", (await mailbox.NextAsync(Ct)).TextBody, StringComparison.Ordinal);
        Assert.Equal(0, await CountAsync(database, "digest_passed_over"));
    }

    [Fact]
    public async Task A_report_that_cannot_be_read_is_put_aside_and_keeps_no_other_waiting()
    {
        await using var mailbox = Mailbox.Open();
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("bounces", Ct), mailbox.Settings, ct: Ct);
        var folder = Directory.CreateTempSubdirectory("fleetwake-bounces").FullName;
        File.CreateSymbolicLink(Path.Combine(folder, "a.eml"), Path.Combine(folder, "a.eml")); // a link to itself: nobody can read it
        await File.WriteAllTextAsync(Path.Combine(folder, "b.eml"), Report("<made\0up@fleet.example>", "rfc822;bo\0ss@bay.example"), Ct);
        await File.WriteAllTextAsync(Path.Combine(folder, "c.eml"), Report("<made-up@fleet.example>", "rfc822;boss@bay.example"), Ct);
        using var bounces = new BounceFolder(folder, fleet.Service<MailBounces>(), ShiftedTime.From(TimeProvider.System.GetUtcNow().AddMinutes(1)), NullLogger<BounceFolder>.Instance);
        Assert.Equal(3, await bounces.TakeAsync(Ct));
        Assert.Empty(Directory.EnumerateFiles(folder));
        Assert.Equal("a.eml", Path.GetFileName(Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(folder, BounceFolder.Aside)))));
        Directory.Delete(folder, recursive: true);
    }

    private static string Report(string id, string address) =>
        $"""
        Subject: Undelivered mail
        MIME-Version: 1.0
        Content-Type: multipart/report; report-type=delivery-status; boundary="b1"

        --b1
        Content-Type: message/delivery-status

        Reporting-MTA: dns; mx.example

        Final-Recipient: {address}
        Action: failed
        Status: 5.1.1

        --b1
        Content-Type: text/rfc822-headers

        Message-ID: {id}

        --b1--
        """.ReplaceLineEndings("\r\n");

    private static async Task<long> CountAsync(string database, string fact)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand($"select count(*) from fleetwake.mt_events where type = '{fact}'");
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }
}
