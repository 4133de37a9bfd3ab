using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using Marten;
using Marten.Services;

namespace FleetWake.Store.Mail;

/// <summary>Addresses that take no mail: marked when a server says so for good, and let go by a person.</summary>
internal static class AddressMarks
{
    /// <summary>Marks every subscription of the address of a recipient, in a session that the caller saves.</summary>
    public static async Task MarkAsync(IDocumentSession session, string recipient, string message, string why, DateTimeOffset now, CancellationToken ct)
    {
        if (await session.LoadAsync<Recipient>(recipient, ct) is not { } told) return;
        foreach (var same in (await session.Query<Recipient>().Where(r => r.Address == told.Address).ToListAsync(ct)).Where(r => r.NoMailSince is null))
        {
            session.Store(same with { NoMailSince = now, NoMailWhy = why });
            session.Events.Append(StreamName.Operator, new RecipientTakesNoMail(ProgramEntry.At(now, "UTC"), same.Id, message, why));
        }
    }

    /// <summary>The options for an operator's session.</summary>
    public static SessionOptions For(this SessionOptions options, string @operator)
    {
        options.TenantId = @operator;
        return options;
    }
}
