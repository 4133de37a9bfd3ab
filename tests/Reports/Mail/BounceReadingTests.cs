using System.Text;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>Reports of undeliverable mail (RFC 3464). The first example is after its appendix E.1, its names invented.</summary>
public class BounceReadingTests
{
    private const string Id = "0123456789abcdef0123456789abcdef01234567@fleet.example";

    [Fact]
    public void A_report_names_the_message_the_first_address_and_the_reason_without_an_address()
    {
        var report = Assert.Single(Read("Original-Recipient: rfc822;boss@bay.example\nFinal-Recipient: rfc822;boss@relay.bay.example\nAction: failed\nStatus: 5.1.1\nDiagnostic-Code: smtp; 550 5.1.1 <boss@relay.bay.example>: no such user"));
        Assert.Equal(new BounceReport(Id, "boss@bay.example", true, "5.1.1", "550 5.1.1 (address): no such user") { LastRecipient = "boss@relay.bay.example" }, report);
        Assert.True(report.IsAboutAddress);
    }

    [Theory]
    [InlineData("text/rfc822-headers")] // RFC 6522, 4
    [InlineData("message/rfc822")]
    public void The_message_is_known_by_its_headers_or_by_the_whole_of_it(string enclosed)
    {
        Assert.Equal(Id, Assert.Single(Read("Final-Recipient: rfc822;boss@bay.example\nAction: failed\nStatus: 5.1.1", enclosed)).MessageId);
    }

    [Theory]
    [InlineData("failed", "5.1.1", true, true)]
    [InlineData("failed", "5.2.1", true, true)]
    [InlineData("failed", "5.2.2", true, false)] // mailbox full
    [InlineData("failed", "5.2.3", true, false)] // too long for it
    [InlineData("failed", "5.1.8", true, false)] // our own address
    [InlineData("failed", "5.0.0", true, false)]
    [InlineData("failed", "5.3.4", true, false)] // too big: RFC 3463, 3.4
    [InlineData("failed", "5.7.1", true, false)] // policy: RFC 3463, 3.8
    [InlineData("failed", "4.4.7", true, false)] // nobody answered for days: RFC 3463, 3.5
    [InlineData("delayed", "4.4.1", false, false)]
    public void What_it_says_of_the_address_depends_on_action_and_status(string action, string status, bool failed, bool aboutAddress)
    {
        var report = Assert.Single(Read($"Final-Recipient: rfc822;boss@bay.example\nAction: {action}\nStatus: {status}"));
        Assert.Equal((failed, aboutAddress), (report.Failed, report.IsAboutAddress));
    }

    [Fact]
    public void What_a_report_answers_is_known_as_that_and_what_holds_a_control_character_is_no_address_and_no_id()
    {
        var answer = Whole("Final-Recipient: rfc822;boss@bay.example\nAction: failed\nStatus: 5.1.1", "text/x-nothing").Replace("Subject: Undelivered mail", $"Subject: Undelivered mail\r\nIn-Reply-To: <{Id}>", StringComparison.Ordinal);
        var report = Assert.Single(BounceReading.Of(Encoding.Latin1.GetBytes(answer)));
        Assert.Equal((Id, true), (report.MessageId, report.ByReply));
        Assert.Null(Assert.Single(Read("Final-Recipient: rfc822;bo\0ss@bay.example\nAction: failed\nStatus: 5.1.1")).Recipient);
        Assert.False(Assert.Single(Read("Final-Recipient: rfc822;boss@bay.example\nAction: failed\nStatus: 5.1.1")).ByReply);
    }

    [Theory]
    [InlineData("Final-Recipient: rfc822;boss@bay.example\nAction: delivered\nStatus: 2.0.0")]
    [InlineData("Final-Recipient: rfc822;boss@bay.example\nAction: relayed\nStatus: 2.0.0")]
    [InlineData("Final-Recipient: rfc822;boss@bay.example")]
    public void Good_news_and_half_a_report_say_nothing(string group) => Assert.Empty(Read(group));

    [Fact]
    public void Whatever_else_comes_in_says_nothing_and_breaks_nothing()
    {
        Assert.Empty(BounceReading.Of([]));
        Assert.Empty(BounceReading.Of("hello"u8.ToArray()));
        Assert.Empty(BounceReading.Of(Letters.Bytes(Letters.Message())));
        var dice = new Random(7);
        var good = Whole("Final-Recipient: rfc822;boss@bay.example\nAction: failed\nStatus: 5.1.1", "message/rfc822");
        for (var i = 0; i < 500; i++)
        {
            var spoilt = Encoding.Latin1.GetBytes(good);
            for (var hit = 0; hit < 12; hit++) spoilt[dice.Next(spoilt.Length)] = (byte)dice.Next(256);
            foreach (var report in BounceReading.Of(spoilt)) Assert.DoesNotContain(report.Why, char.IsControl);
        }
    }

    [Fact]
    public void Of_a_report_with_thousands_of_recipients_a_few_are_read()
    {
        var groups = string.Join("\n\n", Enumerable.Range(0, 5000).Select(i => $"Final-Recipient: rfc822;r{i}@bay.example\nAction: failed\nStatus: 5.1.1"));
        Assert.Equal(20, Read(groups).Count);
    }

    private static IReadOnlyList<BounceReport> Read(string groups, string enclosed = "text/rfc822-headers") => BounceReading.Of(Encoding.Latin1.GetBytes(Whole(groups, enclosed)));

    private static string Whole(string groups, string enclosed) =>
        $"""
        From: mailer-daemon@mx.example
        To: fleet@fleet.example
        Subject: Undelivered mail
        MIME-Version: 1.0
        Content-Type: multipart/report; report-type=delivery-status; boundary="b1"

        --b1
        Content-Type: text/plain

        Your message could not be delivered.
        --b1
        Content-Type: message/delivery-status

        Reporting-MTA: dns; mx.example

        {groups}

        --b1
        Content-Type: {enclosed}

        From: fleet@fleet.example
        Subject: Weekly wear
        Message-ID: <{Id}>

        Hello
        --b1--
        """.ReplaceLineEndings("\r\n");
}
