using System.Net;
using FleetWake.Logbook.Mail;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;

namespace FleetWake.Journey.Tests.Mail;

/// <summary>Saying yes to a digest and leaving it, by the links of its messages (RFC 8058): only a POST acts.</summary>
public sealed class MailLinksTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly Mailbox mailbox = Mailbox.Open();
    private readonly ShiftedTime time = new();
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private FleetOperators Operators => fleet.Service<FleetOperators>();

    public async ValueTask InitializeAsync() => fleet = await RunningFleet.StartAsync(
        await postgres.NewDatabaseAsync("maillinks", Ct), mailbox.Settings, time, publicUrl: new Uri("https://fleet.example/"), ct: Ct);

    public async ValueTask DisposeAsync()
    {
        await fleet.DisposeAsync();
        await mailbox.DisposeAsync();
    }

    [Fact]
    public async Task An_address_that_was_entered_gets_one_question_and_nothing_else_until_somebody_there_presses_the_button()
    {
        Assert.Equal(Asked.Now, await AskAsync("mech@bay.example"));
        Assert.Equal(Asked.AskedLately, await AskAsync("mech@bay.example"));
        var question = await mailbox.NextAsync(Ct);
        Assert.Empty(await ReceivingAsync());

        var link = LinkIn(question);
        for (var i = 0; i < 2; i++)
        {
            // A scanner follows links: that must say yes for nobody.
            var page = await GetAsync(link);
            Assert.Contains("<button>Yes, send it to me</button>", page, StringComparison.Ordinal);
            Assert.Empty(await ReceivingAsync());
        }

        Assert.Equal(HttpStatusCode.OK, await PostAsync(link));
        Assert.Equal("mech@bay.example", Assert.Single(await ReceivingAsync()).Address);
        Assert.Equal(HttpStatusCode.OK, await PostAsync(link)); // pressed twice
        Assert.Equal(Asked.ReceivesIt, await AskAsync("mech@bay.example"));
        Assert.Equal(1, mailbox.Offered);
    }

    [Fact]
    public async Task A_link_that_is_too_old_or_was_replaced_or_made_up_says_yes_for_nobody()
    {
        await AskAsync("mech@bay.example");
        var first = LinkIn(await mailbox.NextAsync(Ct));
        time.Move(TimeSpan.FromHours(25));
        Assert.Equal(Asked.Now, await AskAsync("mech@bay.example"));
        var second = LinkIn(await mailbox.NextAsync(Ct));
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync(first));
        time.Move(TimeSpan.FromDays(8));
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync(second));
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync("/confirm/made-up"));
        Assert.Empty(await ReceivingAsync());
    }

    [Fact]
    public async Task One_click_leaves_by_POST_without_cookie_or_token_and_a_GET_changes_nothing()
    {
        await AskAsync("mech@bay.example");
        var question = await mailbox.NextAsync(Ct);
        await PostAsync(LinkIn(question));
        Assert.Equal("List-Unsubscribe=One-Click", question.Headers["List-Unsubscribe-Post"]);
        var leave = new Uri(question.Headers["List-Unsubscribe"]!.Trim('<', '>')).AbsolutePath;
        Assert.Contains("<button>Stop sending it to me</button>", await GetAsync(leave), StringComparison.Ordinal);
        Assert.Single(await ReceivingAsync());
        var card = (await Operators.FindAsync(RunningFleet.Operator, Ct))!;
        await Operators.SubscribeAsync(card, "Mech@bay.example", DigestNames.WeeklyWear, Ct, "old-mole");

        // RFC 8058, 3.1: the mail program posts this body, from nowhere that we know.
        Assert.Equal(HttpStatusCode.OK, await PostAsync(leave, ("List-Unsubscribe", "One-Click")));
        Assert.Empty(await ReceivingAsync());
        Assert.Equal(HttpStatusCode.OK, await PostAsync(leave, ("List-Unsubscribe", "One-Click")));

        // What ended, what stays, and the way back; a GET takes nobody back either.
        var left = await GetAsync(leave);
        Assert.Contains("This address does not receive it any more: Due list, from Skerry Bay Hire.", left, StringComparison.Ordinal);
        Assert.Contains("This stays as it is, and has links of its own: Weekly wear digest of old-mole.", left, StringComparison.Ordinal);
        Assert.Contains($"action=\"{leave}/back\"><button>Send it to me again</button>", left, StringComparison.Ordinal);
        Assert.Empty(await ReceivingAsync());
        Assert.Equal(HttpStatusCode.OK, await PostAsync($"{leave}/back"));
        Assert.Single(await ReceivingAsync());
        Assert.Contains("The button ends this: Due list, from Skerry Bay Hire, to this address.", await GetAsync(leave), StringComparison.Ordinal);

        // Nobody comes back by a link whom the office took off.
        await Operators.UnsubscribeAddressAsync(card, "mech@bay.example", forget: false, Ct);
        Assert.DoesNotContain("Send it to me again", await GetAsync(leave), StringComparison.Ordinal);
        await PostAsync($"{leave}/back");
        Assert.Empty(await ReceivingAsync());
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync("/unsubscribe/made-up", ("List-Unsubscribe", "One-Click")));
    }

    [Fact]
    public async Task Who_was_only_asked_may_say_no_by_the_other_link_and_the_first_says_yes_for_nobody_then()
    {
        await AskAsync("mech@bay.example");
        var question = await mailbox.NextAsync(Ct);
        var leave = new Uri(question.Headers["List-Unsubscribe"]!.Trim('<', '>')).AbsolutePath;
        var page = await GetAsync(leave);
        Assert.Contains("Skerry Bay Hire has asked whether this address wants: Due list.", page, StringComparison.Ordinal);
        Assert.Contains("<button>No, I do not want it</button>", page, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.OK, await PostAsync(leave));
        Assert.Equal(HttpStatusCode.NotFound, await PostAsync(LinkIn(question)));
        Assert.Empty(await ReceivingAsync());
        Assert.DoesNotContain("I do not want it", await GetAsync(leave), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_comes_back_with_an_address_that_takes_no_mail_is_told_that_nothing_comes()
    {
        await AskAsync("mech@bay.example");
        var question = await mailbox.NextAsync(Ct);
        await PostAsync(LinkIn(question));
        var leave = new Uri(question.Headers["List-Unsubscribe"]!.Trim('<', '>')).AbsolutePath;
        await PostAsync(leave);
        await fleet.Service<MailBounces>().TakeAsync(RunningFleet.Operator, new BounceReport(question.MessageId, "mech@bay.example", true, "5.1.1", "no such user"), Ct);

        using var http = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        using var answer = await http.PostAsync($"{leave}/back", null, Ct);
        var page = await answer.Content.ReadAsStringAsync(Ct);
        Assert.Contains("This address is on the list again: Due list, from Skerry Bay Hire. But a mail server said that the address takes no mail", page, StringComparison.Ordinal);
        Assert.DoesNotContain("it comes again", page, StringComparison.Ordinal);
        Assert.Empty(await ReceivingAsync());
    }

    private Task<Asked?> AskAsync(string address) => AskAsync(address, DigestNames.DueList);

    private async Task<Asked?> AskAsync(string address, string digest)
    {
        var card = (await Operators.FindAsync(RunningFleet.Operator, Ct))!;
        return await fleet.App.Services.GetRequiredService<ConfirmationMail>().AskAsync(card, address, digest, null, "admin-1", Ct);
    }

    private Task<IReadOnlyList<Recipient>> ReceivingAsync() => Operators.RecipientsAsync(RunningFleet.Operator, DigestNames.DueList, Ct);

    private static string LinkIn(MimeMessage question) => new Uri(question.TextBody!.Split('\n').Select(l => l.Trim()).Single(l => l.StartsWith("https://fleet.example/confirm/", StringComparison.Ordinal))).AbsolutePath;

    private async Task<string> GetAsync(string path)
    {
        using var http = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        return await http.GetStringAsync(path, Ct);
    }

    private async Task<HttpStatusCode> PostAsync(string path, params (string Name, string Value)[] fields)
    {
        using var http = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        using var content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        using var answer = await http.PostAsync(path, content, Ct);
        return answer.StatusCode;
    }
}
