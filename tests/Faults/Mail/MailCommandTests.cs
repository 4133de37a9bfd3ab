using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Faults.Tests.Mail;

/// <summary><c>fleetwake mail</c> as a person meets it: what it says, and what it says when something is not so.</summary>
public sealed class MailCommandTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Messages_are_listed_sent_again_and_addresses_mended()
    {
        var database = await postgres.NewDatabaseAsync("mailcommand", Ct);
        await using var mail = await StoredMail.OnAsync(database);
        var gone = await mail.ReaderAsync("gone@bay.example");
        var boss = await mail.ReaderAsync("boss@bay.example");
        var (lost, kept) = (await mail.IssueAsync(gone), await mail.IssueAsync(boss, "2026-W49"));
        for (var i = 0; i < 2; i++)
        {
            var claimed = await mail.ClaimAsync();
            if (claimed.Message == lost) await mail.Ledger.RefusedAsync(claimed, "550 5.1.1 no such user", Ct, aboutAddress: true);
            else await mail.Ledger.SentAsync(claimed, Ct);
        }

        await Says(database, 0, $"{lost}\trefused\t1 attempts, 0 unclear\t{gone.Id}", "list", "--operator", mail.Card.Id);
        var (_, refused) = await FleetProgram.RunAsync(database, Ct, "mail", "list", "--operator", mail.Card.Id, "--state", "refused");
        Assert.DoesNotContain(kept, refused, StringComparison.Ordinal);
        Assert.DoesNotContain("@bay.example", refused, StringComparison.Ordinal);
        await Says(database, 1, "There is no state \"lost\": give one of queued", "list", "--operator", mail.Card.Id, "--state", "lost");
        await Says(database, 1, "There is no operator", "list", "--operator", "nobody");

        await Says(database, 1, "\"fleetwake mail mend ADDRESS\" lets it be tried again", "again", lost, "--operator", mail.Card.Id);
        await Says(database, 1, "There is no such message", "again", "m-4711", "--operator", mail.Card.Id);
        await Says(database, 1, "Nothing on record says that \"boss@bay.example\" takes no mail", "mend", "boss@bay.example", "--operator", mail.Card.Id);
        await Says(database, 0, "gone@bay.example is tried again", "mend", "gone@bay.example", "--operator", mail.Card.Id);
        await Says(database, 0, "under its old Message-ID", "again", lost, "--operator", mail.Card.Id);
        await Says(database, 1, "It is on its way already", "again", lost, "--operator", mail.Card.Id);
        Assert.Equal(MailState.Queued, (await mail.LineAsync(lost)).State);
    }

    [Fact]
    public async Task All_mail_is_kept_in_and_let_go_and_check_says_so()
    {
        var database = await postgres.NewDatabaseAsync("mailhold", Ct);
        await using var mail = await StoredMail.OnAsync(database);
        await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        Assert.Equal(0, (await FleetProgram.RunAsync(database, Ct, "schema")).Exit); // the scheduler's tables too, which check looks at
        await Says(database, 1, "Mail is not kept in", "release");
        await Says(database, 0, "kept in until", "hold");
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        var (_, check) = await FleetProgram.RunAsync(database, Ct, "check");
        Assert.Contains("all mail is kept in since", check, StringComparison.Ordinal);
        await Says(database, 0, "1 messages wait, 0 of them went out before", "release");
        Assert.NotNull(await mail.Ledger.ClaimAsync(Ct));
    }

    [Fact]
    public async Task An_address_for_alerts_is_set_shown_and_ended()
    {
        var database = await postgres.NewDatabaseAsync("mailhook", Ct);
        await using var mail = await StoredMail.OnAsync(database);
        await Says(database, 0, "alerts are handed to no address", "hook", "--operator", mail.Card.Id);
        await Says(database, 1, "No address was set", "hook", "--operator", mail.Card.Id, "--off");
        await Says(database, 1, "\"http://hook.invalid/\" cannot be set: give an https address", "hook", "--operator", mail.Card.Id, "--address", "http://hook.invalid/");
        await Says(database, 1, "not of the public Internet", "hook", "--operator", mail.Card.Id, "--address", "https://192.168.1.1/");
        using (var set = new FleetProgram(database, "mail", "hook", "--operator", mail.Card.Id, "--address", "https://hook.invalid/alerts?key=k-4711"))
        {
            Assert.Equal(0, await set.EndAsync(Ct));
            Assert.StartsWith("fwh_", Assert.Single(set.StandardOutput.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        }

        var (_, shown) = await FleetProgram.RunAsync(database, Ct, "mail", "hook", "--operator", mail.Card.Id);
        Assert.Contains("alerts are handed to hook.invalid", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("k-4711", shown, StringComparison.Ordinal);
        await Says(database, 0, "no address any more", "hook", "--operator", mail.Card.Id, "--off");
    }

    [Fact]
    public async Task A_key_that_signs_is_made_for_its_owner_alone_and_never_over_another()
    {
        var folder = Directory.CreateTempSubdirectory("fleetwake-key-").FullName;
        var file = Path.Combine(folder, "fw2026.pem");
        await Says(null, 1, "--domain \"fleet\" is no domain", "dkim-key", "--domain", "fleet", "--selector", "fw2026", "--out", file);
        await Says(null, 1, "--selector \"fw 2026\" is no name in DNS", "dkim-key", "--domain", "fleet.example", "--selector", "fw 2026", "--out", file);
        Assert.False(File.Exists(file));
        await Says(null, 0, "fw2026._domainkey.fleet.example. IN TXT \"v=DKIM1; k=rsa; p=", "dkim-key", "--domain", "fleet.example", "--selector", "fw2026", "--out", file);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        var made = await File.ReadAllTextAsync(file, Ct);
        await Says(null, 1, "is there already", "dkim-key", "--domain", "fleet.example", "--selector", "fw2026", "--out", file);
        Assert.Equal(made, await File.ReadAllTextAsync(file, Ct));
        await Says(null, 0, "k=ed25519; p=", "dkim-key", "--domain", "fleet.example", "--selector", "fw2027", "--out", Path.Combine(folder, "fw2027.pem"), "--ed25519");
        Directory.Delete(folder, recursive: true);
    }

    private static async Task Says(string? database, int exit, string text, params string[] arguments)
    {
        var (ended, output) = await FleetProgram.RunAsync(database, Ct, ["mail", .. arguments]);
        Assert.True(ended == exit && output.Contains(text, StringComparison.Ordinal), $"mail {string.Join(' ', arguments)} ended with {ended}:\n{output}");
    }
}
