using System.Text;
using FleetWake.Logbook.Mail;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>What the office shows of a message: never what lets somebody act as its reader.</summary>
public class MailPreviewTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_question_whether_an_address_wants_a_digest_is_shown_to_nobody()
    {
        var mime = Mime("Do you want it?\r\nhttps://fleet.example/confirm/s3cr3t\r\n");
        Assert.Null(MailPreview.Of(Line(DigestNames.Confirmation), mime));
        Assert.NotNull(MailPreview.Of(Line(DigestNames.WeeklyWear), mime));
    }

    [Theory]
    [InlineData("https://fleet.example/confirm/s3cr3t")]
    [InlineData("https://fleet.example/unsubscribe/s3cr3t")]
    [InlineData("<https://fleet.example/office/UNSUBSCRIBE/s3cr3t?x=1>.")]
    [InlineData("(/confirm/s3cr3t)")]
    public void Ways_in_and_out_of_a_subscription_are_masked_wherever_they_stand(string link)
    {
        var text = MailPreview.Of(Mime($"Read this {link} please\r\n"))!.Text;
        Assert.DoesNotContain("s3cr3t", text, StringComparison.Ordinal);
        Assert.Contains("Read this … please", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_links_are_left()
    {
        var text = MailPreview.Of(Mime("See https://fleet.example/office/boats/tern\r\n"))!.Text;
        Assert.Contains("https://fleet.example/office/boats/tern", text, StringComparison.Ordinal);
    }

    private static byte[] Mime(string text) => Encoding.UTF8.GetBytes("From: <a@fleet.example>\r\nTo: <b@bay.example>\r\nSubject: s\r\nContent-Type: text/plain; charset=utf-8\r\n\r\n" + text);

    private static MailLine Line(string digest) => new("k", digest, "p", null, "s", "r-1", MailState.Sent, 1, 0, Now, null, Now, null, "id", null, true);
}
