using FleetWake.Reports.Digests;
using FleetWake.Reports.Mail;
using FleetWake.Store.Operators;
using MimeKit;

namespace FleetWake.Reports.Tests.Mail;

public class MailComposerTests
{
    [Fact]
    public void A_message_has_its_text_first_then_the_html_with_its_pictures_inside()
    {
        var alternative = Assert.IsType<MultipartAlternative>(Letters.Message().Body);
        Assert.True(Assert.IsType<TextPart>(alternative[0]).IsPlain);
        var related = Assert.IsType<MultipartRelated>(alternative[1]);
        Assert.True(Assert.IsType<TextPart>(related.Root).IsHtml);
        var pictures = related.OfType<MimePart>().Where(p => p is not TextPart).ToList();
        Assert.Equal(Letters.Digest.Pictures.Select(p => p.ContentId), pictures.Select(p => p.ContentId!));
        Assert.All(pictures, p => Assert.Equal(ContentDisposition.Inline, p.ContentDisposition!.Disposition));
        Assert.All(pictures, p => Assert.Contains($"cid:{p.ContentId}", Letters.Message().HtmlBody, StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_digest_to_the_same_person_is_the_same_message_byte_for_byte()
    {
        Assert.Equal(Letters.Bytes(Letters.Message()), Letters.Bytes(Letters.Message()));
    }

    [Fact]
    public void The_Message_ID_follows_from_what_it_is_and_gives_nobody_away()
    {
        var id = Letters.Message().MessageId!;
        Assert.Equal(id, Letters.Message(Letters.To with { Date = Letters.To.Date.AddDays(1), ToName = "M. Ness" }).MessageId);
        Assert.EndsWith("@mail.example", id, StringComparison.Ordinal);
        Assert.Matches("^[0-9a-f]{40}@", id);
        MailAddressing[] others =
        [
            Letters.To with { Operator = "other" }, Letters.To with { Digest = "other" }, Letters.To with { Period = "2026-W48" }, Letters.To with { Recipient = "person-5" },
        ];
        Assert.Equal(5, others.Select(o => Letters.Message(o).MessageId!).Append(id).Distinct().Count());
        Assert.NotEqual(MessageIds.Of("ab", "c", "p", "r", "d"), MessageIds.Of("a", "bc", "p", "r", "d"));
    }

    [Fact]
    public void It_says_that_a_program_wrote_it_and_which_list_it_belongs_to()
    {
        var headers = Letters.Message().Headers;
        Assert.Equal("auto-generated", headers["Auto-Submitted"]);
        Assert.Equal("skerry-bay-hire <weekly-wear.skerry-bay.mail.example>", headers["List-Id"]);
        Assert.Equal(Letters.To.Date, Letters.Message().Date);
        Assert.Single(Letters.Message().To);
    }

    [Fact]
    public void A_way_to_stop_it_is_named_in_header_and_body_only_when_it_is_https()
    {
        Assert.Null(Letters.Message().Headers["List-Unsubscribe"]);
        Assert.Null(Letters.Message(Letters.To with { Unsubscribe = new Uri("http://fleetwake.example/stop/abc") }).Headers["List-Unsubscribe"]);
        Assert.Null(Letters.Message().Headers["List-Unsubscribe-Post"]);
        var message = Letters.Message(Letters.To with { Unsubscribe = new Uri("https://fleetwake.example/stop/abc?a=1&b=2") });
        Assert.Equal("<https://fleetwake.example/stop/abc?a=1&b=2>", message.Headers["List-Unsubscribe"]);
        Assert.Equal("List-Unsubscribe=One-Click", message.Headers["List-Unsubscribe-Post"]);
        Assert.Contains("https://fleetwake.example/stop/abc?a=1&b=2", message.TextBody, StringComparison.Ordinal);
        Assert.Contains("href=\"https://fleetwake.example/stop/abc?a=1&amp;b=2\"", message.HtmlBody, StringComparison.Ordinal);
    }

    [Fact]
    public void Readers_answer_to_the_operators_own_address_else_to_the_one_that_is_set_else_to_the_sender()
    {
        var (card, reader) = (new OperatorCard("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland"), new Recipient("r-1", "mo@skerry.example", "weekly-wear", "t", true));
        var sender = new Sender("digest@mail.example", null);
        Assert.Empty(Message(sender, card).ReplyTo);
        Assert.Equal("office@mail.example", Assert.Single(Message(sender with { ReplyTo = "office@mail.example" }, card).ReplyTo.Mailboxes).Address);
        Assert.Equal("kari@skerry.example", Assert.Single(Message(sender with { ReplyTo = "office@mail.example" }, card with { ReplyTo = "kari@skerry.example" }).ReplyTo.Mailboxes).Address);
        Assert.Throws<ArgumentException>(() => Message(sender, card with { ReplyTo = "kari@skerry.example\r\nBcc: all@skerry.example" }));
        Assert.Throws<ArgumentException>(() => Message(sender, card with { ReplyTo = "kari@skerry.example, all@skerry.example" }));

        MimeKit.MimeMessage Message(Sender from, OperatorCard of) => Letters.Message(from.To(of, reader, "weekly-wear", "2026-W47", Letters.To.Date));
    }

    [Fact]
    public void A_line_break_in_a_name_or_address_is_refused_and_so_is_an_address_that_is_none()
    {
        MailAddressing[] bad =
        [
            Letters.To with { ToName = "Mo\r\nBcc: all@skerry.example" },
            Letters.To with { FromName = "FleetWake\nX-Other: 1" },
            Letters.To with { ToAddress = "mo@skerry.example\r\nBcc: all@skerry.example" },
            Letters.To with { ToAddress = "mo@skerry.example, all@skerry.example" },
            Letters.To with { ToAddress = "Mo <mo@skerry.example>" },
            Letters.To with { ToAddress = "mo" },
            Letters.To with { ReplyTo = "office@skerry.example\n" },
            Letters.To with { Period = "2026-W47\r\nX-Other: 1" },
            Letters.To with { OperatorName = "Skerry\u0000Bay" },
        ];
        Assert.All(bad, to => Assert.Throws<ArgumentException>(() => Letters.Message(to)));
        Assert.Throws<ArgumentException>(() => MailComposer.Compose(Letters.Digest with { Subject = "a\r\nBcc: x@y.example" }, Letters.To));
    }

    [Fact]
    public void No_line_of_the_message_is_longer_than_a_mail_server_takes()
    {
        var lines = System.Text.Encoding.Latin1.GetString(Letters.Bytes(Letters.Message())).Split('\n');
        Assert.All(lines, line => Assert.True(line.TrimEnd('\r').Length <= 998));
    }
}
