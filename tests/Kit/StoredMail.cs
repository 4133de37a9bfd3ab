using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using Microsoft.Extensions.Time.Testing;

namespace FleetWake.Tests.Kit;

/// <summary>A ledger on a database of its own, by a clock that is set, with whom it writes to.</summary>
public sealed class StoredMail : IAsyncDisposable
{
    private StoredMail(FleetDatabase database)
    {
        Database = database;
        Ledger = new MailLedger(database.Store, database.Source, Time);
        Operators = new FleetOperators(database.Store, Time);
        Reading = new MailReading(database.Store, database.Source);
        Resends = new MailResends(database.Store, database.Source, Time);
    }

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));

    public FleetDatabase Database { get; }

    public MailLedger Ledger { get; }

    public FleetOperators Operators { get; }

    public MailReading Reading { get; }

    public MailResends Resends { get; }

    public OperatorCard Card { get; private set; } = null!;

    public static async Task<StoredMail> OpenAsync(PostgresFixture postgres) => await OnAsync(await postgres.NewDatabaseAsync("mail"));

    public static async Task<StoredMail> OnAsync(string database)
    {
        var mail = new StoredMail(await FleetDatabase.OnAsync(database));
        mail.Card = await mail.Operators.OpenAsync("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland", default);
        return mail;
    }

    public async Task<Recipient> ReaderAsync(string address, string digest = DigestNames.WeeklyWear, string? dock = null)
    {
        await Operators.SubscribeAsync(Card, address, digest, default, dock);
        return (await Operators.AllRecipientsAsync(Card.Id, default)).Single(r => r.Address == address && r.Digest == digest && r.Dock == dock);
    }

    /// <summary>Issues one message of a period; returns its key.</summary>
    public async Task<string> IssueAsync(Recipient to, string period = "2026-W48", string host = "bay.example")
    {
        var key = $"{to.Digest}-{period}-{to.Id}";
        if (!await Ledger.IssueAsync(Card, to.Digest, period, [new NewMail(key, to.Id, $"{key}@fleet.example", "Subject: hello\r\n\r\nhello"u8.ToArray()) { Host = host, Subject = "hello", Dock = to.Dock }], [], default)) throw new InvalidOperationException("issued before");
        return key;
    }

    public async Task<ClaimedMail> ClaimAsync() => await Ledger.ClaimAsync(default) ?? throw new InvalidOperationException("nothing is due");

    public async Task<MailLine> LineAsync(string key) => (await Reading.FindAsync(Card.Id, key, default))!;

    public async Task<string> StepsAsync(string key) => string.Join(' ', (await Reading.HistoryAsync(Card.Id, key, default)).Select(s => s.Fact.Replace("mail_", "", StringComparison.Ordinal)));

    /// <summary>What the operator's own log tells of recipients.</summary>
    public async Task<IReadOnlyList<IFact>> ToldAsync()
    {
        await using var session = Database.Store.QuerySession(Card.Id);
        return [.. (await session.Events.FetchStreamAsync(StreamName.Operator, token: default)).Select(e => e.Data).OfType<IFact>()];
    }

    public ValueTask DisposeAsync() => Database.DisposeAsync();
}
