using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Logbook.People;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using SmtpServer.Protocol;

namespace FleetWake.Journey.Tests.Mail;

/// <summary>What went out, as the office sees it and as a program reads it.</summary>
public sealed class MailPagesTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly Mailbox mailbox = Mailbox.Open();
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("mailpages", Ct), mailbox.Settings, ct: Ct);
        await fleet.SendAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
    }

    public async ValueTask DisposeAsync()
    {
        await fleet.DisposeAsync();
        await mailbox.DisposeAsync();
    }

    [Fact]
    public async Task A_message_that_was_accepted_is_shown_with_its_steps_and_its_text_and_goes_again_on_request()
    {
        await fleet.SubscribeAsync("boss@bay.example", Ct);
        var first = await mailbox.NextAsync(Ct);
        var key = await SettledAsync(MailState.Sent);
        using var boss = await SignInHttp.AsAsync(fleet, Role.Manager, "boss-1");
        var list = await boss.GetAsync("/office/mail");
        Assert.Contains("boss@bay.example", list.Text, StringComparison.Ordinal);
        Assert.Contains("Accepted", list.Text, StringComparison.Ordinal);
        var page = $"/office/mail/message?message={key}";
        var one = await boss.GetAsync(page);
        foreach (var told in (string[])["Planned", "Written; its SHA-256", "(attempt 1)", "Skerry Bay Hire", "Send it again"]) Assert.Contains(told, one.Text, StringComparison.Ordinal);

        var sent = await boss.PostAsync(page, page);
        Assert.EndsWith("done=another", sent.Location, StringComparison.Ordinal);
        var second = await mailbox.NextAsync(Ct);
        Assert.NotEqual(first.MessageId, second.MessageId);
        Assert.Equal(first.TextBody, second.TextBody);
        Assert.Contains("by Some Manager", (await boss.GetAsync(page)).Text, StringComparison.Ordinal);
        Assert.Contains("sent again on request", (await boss.GetAsync("/office/mail")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_was_refused_is_told_to_the_manager_and_let_go_by_a_button()
    {
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such person"));
        await fleet.SubscribeAsync("gone@bay.example", Ct);
        await SettledAsync(MailState.Refused);
        using var boss = await SignInHttp.AsAsync(fleet, Role.Manager, "boss-1");
        Assert.Contains("Mail does not reach 1 address", (await boss.GetAsync("/office")).Text, StringComparison.Ordinal);
        Assert.Contains("550 no such person", (await boss.GetAsync("/office/mail")).Text, StringComparison.Ordinal);

        using var analyst = await SignInHttp.AsAsync(fleet, Role.Analyst, "ana-1");
        var read = await analyst.GetAsync("/office/mail");
        Assert.DoesNotContain("gone@bay.example", read.Text, StringComparison.Ordinal);
        Assert.Contains("g…@bay.example", WebUtility.HtmlDecode(read.Text), StringComparison.Ordinal);
        Assert.DoesNotContain("Mail does not reach", (await analyst.GetAsync("/office")).Text, StringComparison.Ordinal);

        var recipient = (await fleet.Service<FleetOperators>().AllRecipientsAsync(RunningFleet.Operator, Ct)).Single();
        await boss.PostAsync("/office/mail", "/office/mail/try-again", ("recipient", recipient.Id));
        Assert.DoesNotContain("Mail does not reach", (await boss.GetAsync("/office")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_all_mail_is_kept_in_nothing_is_issued_and_the_page_says_so()
    {
        var holds = fleet.Service<MailHolds>();
        await holds.HoldAsync(Ct);
        await fleet.SubscribeAsync("boss@bay.example", Ct);
        using var boss = await SignInHttp.AsAsync(fleet, Role.Manager, "boss-1");
        Assert.Contains("All mail is kept in since", (await boss.GetAsync("/office/mail")).Text, StringComparison.Ordinal);
        await Task.Delay(TimeSpan.FromSeconds(4), Ct); // several ticks
        Assert.Equal(0, mailbox.Offered);
        Assert.Empty(await fleet.Service<MailReading>().ListAsync(RunningFleet.Operator, new MailFilter(), null, 10, Ct));
        Assert.True(await holds.ReleaseAsync(Ct));
        await mailbox.NextAsync(Ct);
        Assert.DoesNotContain("All mail is kept in since", (await boss.GetAsync("/office/mail")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_cannot_ask_an_address_says_why_and_keeps_what_was_typed()
    {
        using var boss = await SignInHttp.AsAsync(fleet, Role.Administrator, "admin-1");
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<Store.Histories.FleetReading>().UpToDateAsync(Ct), Ct);
        var page = (await boss.GetAsync("/office/mail")).Text;
        Assert.Contains("fleetwake operator subscribe --operator skerry-bay --digest weekly-wear name@example.org", page, StringComparison.Ordinal);
        Assert.Contains("analyst-pack; old-mole", page, StringComparison.Ordinal); // the dock that its boat names, though nobody opened it
        Assert.DoesNotContain("action=\"/office/mail/subscribe\"", page, StringComparison.Ordinal);
        var (status, text, _) = await boss.PostAsync("/office/rules", "/office/mail/subscribe", ("address", "mech@bay.example"), ("digest", "due-list"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("FLEETWAKE_PUBLIC_URL", text, StringComparison.Ordinal);
        Assert.Contains("mech@bay.example", text, StringComparison.Ordinal);
        Assert.Contains("--digest due-list mech@bay.example", text, StringComparison.Ordinal);
        var (_, odd, _) = await boss.PostAsync("/office/rules", "/office/mail/subscribe", ("address", "$(reboot)@bay.example"), ("digest", "due-list"));
        Assert.Contains("--digest due-list name@example.org", odd, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_reads_what_went_out_without_addresses_and_hands_in_what_came_back()
    {
        await fleet.SubscribeAsync("boss@bay.example", Ct);
        var message = await mailbox.NextAsync(Ct);
        var key = await SettledAsync(MailState.Sent);
        var one = (await fleet.Http.GetFromJsonAsync<JsonObject>("/api/mail?state=sent", Ct))!["items"]![0]!;
        Assert.Equal((key, "b…@bay.example", "weekly-wear"), ((string)one["message"]!, (string)one["to"]!, (string)one["digest"]!));
        Assert.Null(one["steps"]);
        var steps = (await fleet.Http.GetFromJsonAsync<JsonObject>($"/api/mail?message={key}", Ct))!["items"]![0]!["steps"]!.AsArray();
        Assert.Equal(["mail_planned", "mail_composed", "mail_attempted", "mail_sent"], steps.Select(s => (string)s!["fact"]!));

        Assert.Equal("{\"taken\":0,\"unknown\":1}", await BounceAsync("somebody-else@fleet.example"));
        Assert.Equal("{\"taken\":1,\"unknown\":0}", await BounceAsync(message.MessageId!));
        Assert.Equal("{\"taken\":1,\"unknown\":0}", await BounceAsync(message.MessageId!)); // told twice, known once
        Assert.Equal("bounced", (string)(await fleet.Http.GetFromJsonAsync<JsonObject>($"/api/mail?message={key}", Ct))!["items"]![0]!["state"]!);
        Assert.Empty(await fleet.Service<FleetOperators>().RecipientsAsync(RunningFleet.Operator, "weekly-wear", Ct));
    }

    private async Task<string> BounceAsync(string messageId)
    {
        var report = $"""
            Content-Type: multipart/report; report-type=delivery-status; boundary="b1"

            --b1
            Content-Type: message/delivery-status

            Reporting-MTA: dns; mx.example

            Final-Recipient: rfc822;boss@bay.example
            Action: failed
            Status: 5.1.1

            --b1
            Content-Type: text/rfc822-headers

            Message-ID: <{messageId}>

            --b1--
            """;
        using var content = new ByteArrayContent(Encoding.ASCII.GetBytes(report));
        content.Headers.TryAddWithoutValidation("Content-Type", "message/rfc822");
        using var answer = await fleet.Http.PostAsync("/api/mail/bounces", content, Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsStringAsync(Ct);
    }

    private async Task<string> SettledAsync(string state)
    {
        MailLine? line = null;
        await RunningFleet.UntilAsync($"a message that is {state}", async () =>
            (line = (await fleet.Service<MailReading>().ListAsync(RunningFleet.Operator, new MailFilter(state), null, 1, Ct)).FirstOrDefault()) is not null, Ct);
        return line!.Message;
    }
}
