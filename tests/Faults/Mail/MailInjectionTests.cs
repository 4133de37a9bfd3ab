using FleetWake.Reports.Digests;
using FleetWake.Reports.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>Names and addresses that try to break out of a header or into the conversation (CVE-2026-30227 is of this kind).</summary>
public sealed class MailInjectionTests(PostgresFixture postgres)
{
    public static TheoryData<string> Hostile => new(
        "Bay\r\nBcc: all@elsewhere.example", "Bay\nRCPT TO:<all@elsewhere.example>", "Bay\0Hire", "Bay\u2028Bcc: all@elsewhere.example", "\u202Eerih yab", "=?utf-8?q?Bay=0D=0ABcc:_x@y.example?=",
        "\"><script>alert(1)</script>", "{{ 1 | divided_by: 0 }}", new string('x', 5000), "Fjord \u00c5s & S\u00f8n <\u00e6@\u00f8>");

    public static TheoryData<string> HostileAddresses => new(
        "a@b.example\r\nRCPT TO:<all@elsewhere.example>", "\"a\r\nRCPT TO:<all@elsewhere.example>\"@b.example", "a@b.example>, <all@elsewhere.example", "a@b.example, c@d.example", "<a@b.example> SIZE=1", "a b@c.example", "@b.example", "a@", "a@b");

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_hostile_name_sends_one_message_to_one_reader_or_none(string name)
    {
        await using var server = new FaultyServer();
        try
        {
            await using var fleet = await SendingFleet.OpenAsync(postgres, ["ok-1@a.example"], name, port: server.Port);
            await fleet.SettleAsync();
        }
        catch (ArgumentException)
        {
            // Refused before anything was queued: then nothing was said to any server.
            Assert.Empty(server.Lines);
            return;
        }

        Assert.Equal(["RCPT TO:<ok-1@a.example>"], server.Lines.Where(l => l.StartsWith("RCPT", StringComparison.Ordinal)));
        Assert.Equal(1, Assert.Single(server.Kept).Value);
        Assert.DoesNotContain(server.Lines, l => l.StartsWith("Bcc", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [MemberData(nameof(HostileAddresses))]
    public void A_hostile_address_is_none(string address)
    {
        Assert.Null(ConfirmationMail.Plain(address));
        var card = new OperatorCard("bay", "Bay", "Pacific/Auckland");
        var digest = new RenderedDigest("Hello", "<p>Hello</p>", "Hello", [], UsedFallback: false);
        if (address == "a@b") return; // a machine of the own network may be called so
        Assert.ThrowsAny<Exception>(() => MailComposer.Compose(digest, new Sender("digest@fleet.example", null).To(card, new Recipient("r-1", address, "weekly-wear", "t", true), "weekly-wear", "2026-W49", DateTimeOffset.UnixEpoch)));
    }
}
