using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Reports.Mail;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Mail;

/// <summary>Shows what went out and who receives, and does what is asked there.</summary>
internal sealed class MailDesk(FleetOperators operators, FleetReading reading, FleetPeople people, MailReading mail, MailAgain again, ConfirmationMail asking, MailHolds holds)
{
    private const int OnAPage = 50;

    public const string Path = "/office/mail";

    public async Task<IResult> ListAsync(HttpContext http, FormState state)
    {
        var (scene, ct, query) = (await Scene.OfAsync(http, operators), http.RequestAborted, http.Request.Query);
        var filter = new MailFilter(Known(query["state"], MailState.All), Known(query["digest"], [.. DigestNames.All, DigestNames.Confirmation]), null, null, query["unclear"] == "yes");
        var lines = await mail.ListAsync(scene.Operator.Id, filter, MailView.PlaceOf(query["after"]), OnAPage + 1, ct);
        var docks = await DocksAsync(scene.Operator.Id, ct);
        var view = new MailView(
            [.. lines.Take(OnAPage)], lines.Count > OnAPage ? MailView.Place(lines[OnAPage - 1]) : null, filter, await operators.AllRecipientsAsync(scene.Operator.Id, ct),
            [.. docks.Select(d => (d.Dock, d.Name))], asking.CanAsk);
        return PageAnswer.Of<MailPage>(http, new { Scene = scene, View = view, MayDecide = http.User.May(Verb.Decide, Matter.Reports), MayKeys = http.User.May(Verb.Read, Matter.Keys), HeldSince = await holds.SinceAsync(ct), State = state }, state.Status);
    }

    public async Task<IResult> MessageAsync(HttpContext http, Resend? refused)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        var key = http.Request.Query["message"].ToString();
        if (await mail.FindAsync(scene.Operator.Id, key, ct) is not { } line)
            return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["mail.unknown"] }, StatusCodes.Status404NotFound);
        var may = http.User.May(Verb.Decide, Matter.Reports);
        var address = (await operators.AllRecipientsAsync(scene.Operator.Id, ct)).FirstOrDefault(r => r.Id == line.Recipient)?.Address;
        return PageAnswer.Of<MessagePage>(
            http,
            new
            {
                Scene = scene,
                Line = line,
                Steps = await mail.HistoryAsync(scene.Operator.Id, key, ct),
                Preview = MailPreview.Of(line, await mail.MimeAsync(scene.Operator.Id, key, ct)),
                Address = address is null || may ? address : MailView.Masked(address),
                MayDecide = may,
                Names = await people.NamesAsync(scene.Operator.Id, ct),
                Refused = refused,
            },
            refused is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    public async Task<IResult> ResendAsync(HttpContext http)
    {
        var key = http.Request.Query["message"].ToString();
        var card = (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!;
        return await again.SendAsync(card, key, http.User.PersonOf(), http.RequestAborted) switch
        {
            Resend.Queued => Results.LocalRedirect($"{Path}/message?message={Uri.EscapeDataString(key)}&done=again"),
            Resend.AsAnother => Results.LocalRedirect($"{Path}/message?message={Uri.EscapeDataString(key)}&done=another"),
            var why => await MessageAsync(http, why),
        };
    }

    public async Task<IResult> AskAsync(HttpContext http, IFormCollection form)
    {
        var card = (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!;
        var (digest, dock) = (form["digest"].ToString(), form["dock"].ToString() is { Length: > 0 } one ? one : null);
        if (!DigestNames.All.Contains(digest)) return await NotTaken("/digest", "mail.which");
        if (dock is not null && (await DocksAsync(card.Id, http.RequestAborted)).All(d => d.Dock != dock)) return await NotTaken("/dock", "mail.which-dock");
        if (!asking.CanAsk) return await NotTaken("", "mail.cannot-ask");
        return await asking.AskAsync(card, form["address"].ToString(), digest, dock, http.User.PersonOf(), http.RequestAborted) switch
        {
            Asked.Now => Results.LocalRedirect($"{Path}?done=asked"),
            Asked.AskedLately => await NotTaken("/address", "mail.asked-lately"),
            Asked.ReceivesIt => await NotTaken("/address", "mail.receives"),
            Asked.TakesNoMail => await NotTaken("/address", "mail.takes-none"),
            _ => await NotTaken("/address", "mail.no-address"),
        };

        Task<IResult> NotTaken(string field, string why) => ListAsync(http, FormState.Of("subscribe", form, [new Refusal(field, "not_taken", PageTexts.English[why])]));
    }

    public Task<IResult> TryAgainAsync(HttpContext http, IFormCollection form) => OfRecipientAsync(http, form, "tried", (card, recipient) =>
        operators.TryAgainAsync(card, recipient.Address, http.User.PersonOf(), http.RequestAborted));

    public Task<IResult> StopAsync(HttpContext http, IFormCollection form) => OfRecipientAsync(http, form, "stopped", (_, recipient) =>
        operators.UnsubscribeAsync(recipient.Token, http.RequestAborted));

    private async Task<IResult> OfRecipientAsync(HttpContext http, IFormCollection form, string done, Func<OperatorCard, Recipient, Task<bool>> act)
    {
        var card = (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!;
        if ((await operators.AllRecipientsAsync(card.Id, http.RequestAborted)).FirstOrDefault(r => r.Id == form["recipient"].ToString()) is { } recipient) await act(card, recipient);
        return Results.LocalRedirect($"{Path}?done={done}");
    }

    /// <summary>Docks that were opened, and those that boats name: a fleet may never have opened one.</summary>
    private async Task<IReadOnlyList<FleetDock>> DocksAsync(string @operator, CancellationToken ct) =>
        FleetDocks.Of(await reading.OfficeAsync(@operator, ct), (await reading.FindingsAsync(@operator, ct)).Select(f => f.Finding));

    private static string? Known(string? text, IReadOnlyList<string> words) => text is not null && words.Contains(text) ? text : null;
}
