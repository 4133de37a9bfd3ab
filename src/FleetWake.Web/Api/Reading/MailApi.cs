using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Web.Office.Mail;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>What went out by mail.</summary>
internal static class MailApi
{
    private static readonly QueryField<string> State = Query.OneOf("state", "Only messages in this state.", [.. MailState.All]);
    private static readonly QueryField<string> Digest = Query.OneOf("digest", "Only messages of this digest.", [.. DigestNames.All, DigestNames.Confirmation]);
    private static readonly QueryField<string> Dock = Query.Id("dock", "Only messages of this dock.");
    private static readonly QueryField<string> Recipient = Text("recipient", "Only messages to this recipient.");
    private static readonly QueryField<string> Message = Text("message", "Only this message, with each of its steps.");
    private static readonly QueryField<bool?> Unclear = Query.Flag("unclear", "With true, only messages of which an attempt ended without a clear answer: more than one copy may have arrived.");

    // Newest first: the longer ago, the larger.
    private static readonly Paged<MailItem> List = new("mail", m => [(long.MaxValue - m.IssuedAt.UtcTicks).ToString("D19", CultureInfo.InvariantCulture), m.Message]);

    public static void MapMail(this IEndpointRouteBuilder read) =>
        read.MapGet("mail", MailAsync).Lists(List, State, Digest, Dock, Recipient, Message, Unclear)
            .Is("mail", "Messages that were queued, newest first: what, to whom, when, with which result.", "/api/mail", "/api/mail?state=unclear&limit=20", "/api/mail?digest=weekly-wear&unclear=true");

    private static async Task<IResult> MailAsync(HttpContext http, MailReading reading, FleetOperators operators)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var addresses = (await operators.AllRecipientsAsync(tenant, ct)).ToDictionary(r => r.Id, r => MailView.Masked(r.Address), StringComparer.Ordinal);
        if (Message.In(http) is { } message)
        {
            var one = await reading.FindAsync(tenant, message, ct);
            return List.Answer(http, one is null ? [] : [MailItem.Of(one, addresses, await reading.HistoryAsync(tenant, message, ct))]);
        }

        var filter = new MailFilter(State.In(http), Digest.In(http), Dock.In(http), Recipient.In(http), Unclear.In(http) == true);
        var lines = await reading.ListAsync(tenant, filter, After(http), (List.Limit.In(http) ?? Paged<MailItem>.Usual) + 1, ct);
        return List.Answer(http, lines.Select(l => MailItem.Of(l, addresses, null)));
    }

    private static (DateTimeOffset IssuedAt, string Message)? After(HttpContext http) =>
        List.After.In(http) is [var place, var message] && long.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks) && long.MaxValue - ticks <= DateTimeOffset.MaxValue.UtcTicks
            ? (new DateTimeOffset(long.MaxValue - ticks, TimeSpan.Zero), message)
            : null;

    private static QueryField<string> Text(string name, string meaning) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 200 }, text => text.Length <= 200 && !text.Any(char.IsControl)
            ? (text, null)
            : (null, new Refusal(name, "too_long", $"give the {name} as the list has it")));
}

/// <summary>A message that was queued.</summary>
/// <param name="Message">Its key within the operator.</param>
/// <param name="Digest">What it is, e.g. <c>weekly-wear</c>; absent for one of an earlier version.</param>
/// <param name="Period">Of which period, e.g. <c>2026-W47</c>.</param>
/// <param name="Dock">Of which dock; absent for every dock.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Recipient">Pseudonymous id of its one recipient.</param>
/// <param name="To">The recipient's address, all but its first letter and its domain left out; absent when it was forgotten.</param>
/// <param name="State">queued, sending, deferred, unclear, sent, refused, given_up, bounced or unsubscribed.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="Unclear">How many of these ended without a clear answer: as many more copies may have arrived.</param>
/// <param name="IssuedAt">When it was queued.</param>
/// <param name="NextAt">When it is tried next, while it waits.</param>
/// <param name="SettledAt">When it was settled.</param>
/// <param name="Why">What a server said last, when it did not take it.</param>
/// <param name="MessageId">Its Message-ID.</param>
/// <param name="AgainOf">The message that it repeats because a person asked for it.</param>
/// <param name="Steps">Each thing that became of it, in order; only when one message is asked for.</param>
public sealed record MailItem(
    string Message, string? Digest, string? Period, string? Dock, string? Subject, string Recipient, string? To, string State, int Attempts, int Unclear,
    DateTimeOffset IssuedAt, DateTimeOffset? NextAt, DateTimeOffset? SettledAt, string? Why, string? MessageId, string? AgainOf, IReadOnlyList<MailStep>? Steps)
{
    internal static MailItem Of(MailLine m, IReadOnlyDictionary<string, string> addresses, IReadOnlyList<MailStep>? steps) => new(
        m.Message, m.Digest, m.Period, m.Dock, m.Subject, m.Recipient, addresses.GetValueOrDefault(m.Recipient), m.State, m.Attempts, m.Unclear,
        m.IssuedAt, m.NextAt, m.SettledAt, m.Why, m.MessageId, m.AgainOf, steps);
}
