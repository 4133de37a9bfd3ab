using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>The folder of reports of undeliverable mail, with whatever a mail server and people may put into it: nothing is lost, nothing is taken twice.</summary>
public sealed class BounceFolderTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-bounce-").FullName;
    private readonly ShiftedTime time = new();
    private StoredMail mail = null!;
    private BounceFolder bounces = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private string[] Aside => Directory.Exists(Path.Combine(folder, BounceFolder.Aside)) ? [.. Directory.EnumerateFiles(Path.Combine(folder, BounceFolder.Aside)).Select(f => Path.GetFileName(f)!).Order()] : [];

    public async ValueTask InitializeAsync()
    {
        mail = await StoredMail.OpenAsync(postgres);
        bounces = new BounceFolder(folder, new MailBounces(mail.Database.Store, mail.Database.Source, mail.Time), time, NullLogger<BounceFolder>.Instance);
        time.Move(TimeSpan.FromMinutes(1)); // what is written now is quiet
    }

    public async ValueTask DisposeAsync()
    {
        bounces.Dispose();
        await mail.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_file_that_is_still_being_written_is_left_until_it_is_whole_and_then_taken_once()
    {
        var key = await SentAsync("boss@bay.example");
        var path = Path.Combine(folder, "r.eml");
        var whole = Report($"{key}@fleet.example", "boss@bay.example");
        time.Move(TimeSpan.FromMinutes(-1));
        await using (var writing = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.ReadWrite))
        {
            await writing.WriteAsync(whole.AsMemory(0, whole.Length / 2), Ct);
            await writing.FlushAsync(Ct);
            Assert.Equal(0, await bounces.TakeAsync(Ct));
            Assert.True(File.Exists(path));
            Assert.Empty(Aside);
            await writing.WriteAsync(whole.AsMemory(whole.Length / 2), Ct);
        }

        Assert.Equal(0, await bounces.TakeAsync(Ct)); // nobody can know that this was the last of it
        time.Move(TimeSpan.FromMinutes(1));
        Assert.Equal(1, await bounces.TakeAsync(Ct));
        Assert.False(File.Exists(path));
        Assert.Equal(MailState.Bounced, (await mail.LineAsync(key)).State);
        Assert.Equal(0, await bounces.TakeAsync(Ct));
    }

    [Fact]
    public async Task The_same_report_twice_and_by_two_workers_at_once_is_on_record_once()
    {
        var key = await SentAsync("boss@bay.example");
        for (var i = 0; i < 6; i++) await File.WriteAllBytesAsync(Path.Combine(folder, $"r{i}.eml"), Report($"{key}@fleet.example", "boss@bay.example"), Ct);
        using var second = new BounceFolder(folder, new MailBounces(mail.Database.Store, mail.Database.Source, mail.Time), time, NullLogger<BounceFolder>.Instance);
        await Task.WhenAll(bounces.TakeAsync(Ct), second.TakeAsync(Ct));
        await bounces.TakeAsync(Ct);
        Assert.Empty(Directory.EnumerateFiles(folder));
        Assert.Empty(Aside);
        Assert.Single((await mail.StepsAsync(key)).Split(' '), "bounced");
    }

    [Fact]
    public async Task What_is_no_report_or_too_large_is_put_aside_whole_and_keeps_no_report_waiting()
    {
        var key = await SentAsync("boss@bay.example");
        var huge = new byte[(5 * 1024 * 1024) + 1];
        await File.WriteAllBytesAsync(Path.Combine(folder, "a-huge.eml"), huge, Ct);
        await File.WriteAllTextAsync(Path.Combine(folder, "b-letter.eml"), "Subject: away\r\n\r\nI am on holiday.\r\n", Ct);
        await File.WriteAllTextAsync(Path.Combine(folder, "c-empty.eml"), "", Ct);
        await File.WriteAllBytesAsync(Path.Combine(folder, "d-noise.eml"), [0, 255, 13, 10, 0, 1, 2, 3], Ct);
        await File.WriteAllTextAsync(Path.Combine(folder, "e-other.txt"), "not looked at", Ct);
        Directory.CreateDirectory(Path.Combine(folder, "f-folder.eml"));
        await File.WriteAllBytesAsync(Path.Combine(folder, "z-report.eml"), Report($"{key}@fleet.example", "boss@bay.example"), Ct);
        Assert.Equal(5, await bounces.TakeAsync(Ct));
        Assert.Equal(["a-huge.eml", "b-letter.eml", "c-empty.eml", "d-noise.eml"], Aside);
        Assert.Equal(huge.Length, new FileInfo(Path.Combine(folder, BounceFolder.Aside, "a-huge.eml")).Length);
        Assert.Equal(MailState.Bounced, (await mail.LineAsync(key)).State);
        Assert.Equal(["e-other.txt"], Directory.EnumerateFiles(folder).Select(Path.GetFileName));
        Assert.Equal(0, await bounces.TakeAsync(Ct));
    }

    [Fact]
    public async Task While_the_database_is_away_a_report_stays_where_it_is()
    {
        var key = await SentAsync("boss@bay.example");
        await File.WriteAllBytesAsync(Path.Combine(folder, "r.eml"), Report($"{key}@fleet.example", "boss@bay.example"), Ct);
        await using var nowhere = Npgsql.NpgsqlDataSource.Create("Host=127.0.0.1;Port=1;Database=x;Username=x");
        using var store = Store.Schema.FleetStore.Open(nowhere);
        using var cut = new BounceFolder(folder, new MailBounces(store, nowhere, mail.Time), time, NullLogger<BounceFolder>.Instance);
        await Assert.ThrowsAnyAsync<Exception>(() => cut.TakeAsync(Ct));
        Assert.True(File.Exists(Path.Combine(folder, "r.eml")));
        Assert.Equal(1, await bounces.TakeAsync(Ct));
        Assert.Equal(MailState.Bounced, (await mail.LineAsync(key)).State);
    }

    private async Task<string> SentAsync(string address)
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync(address));
        await mail.Ledger.SentAsync(await mail.ClaimAsync(), Ct);
        return key;
    }

    private static byte[] Report(string id, string address) => System.Text.Encoding.ASCII.GetBytes(
        $"""
        Subject: Undelivered mail
        MIME-Version: 1.0
        Content-Type: multipart/report; report-type=delivery-status; boundary="b1"

        --b1
        Content-Type: message/delivery-status

        Reporting-MTA: dns; mx.example

        Final-Recipient: rfc822;{address}
        Action: failed
        Status: 5.1.1

        --b1
        Content-Type: text/rfc822-headers

        Message-ID: <{id}>

        --b1--
        """.ReplaceLineEndings("\r\n"));
}
