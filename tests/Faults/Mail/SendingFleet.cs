using FleetWake.Logbook.Mail;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>A ledger with many messages, the senders of one or more workers, and a clock that runs ahead when all wait.</summary>
internal sealed class SendingFleet : IAsyncDisposable
{
    private readonly FleetDatabase database;
    private readonly List<MailSender> senders = [];

    private SendingFleet(FleetDatabase database) => this.database = database;

    public ShiftedTime Time { get; } = ShiftedTime.From(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));

    public MailReading Reading => new(database.Store, database.Source);

    public FleetOperators Operators => new(database.Store, Time);

    public OperatorCard Card { get; private set; } = null!;

    private MailLedger Ledger => new(database.Store, database.Source, Time);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>One message to each address, queued.</summary>
    public static async Task<SendingFleet> OpenAsync(PostgresFixture postgres, IReadOnlyCollection<string> addresses, string? name = null, int workers = 1, int port = 0, TimeSpan? timeout = null)
    {
        var fleet = new SendingFleet(await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("sending", Ct), Ct));
        fleet.Card = await fleet.Operators.OpenAsync(RunningFleet.Operator, "Skerry Bay Hire", "Pacific/Auckland", Ct);
        if (name is not null) fleet.Card = fleet.Card with { Name = name };
        await using (var session = fleet.database.Store.LightweightSession(fleet.Card.Id))
        {
            foreach (var (i, address) in addresses.Index()) session.Store(new Recipient($"r-{i:00000}", address, DigestNames.WeeklyWear, $"token-{i}", true));
            await session.SaveChangesAsync(Ct);
        }

        var digest = new RenderedDigest("Nothing to decide", "<p>Nothing to decide</p>", "Nothing to decide\n", [], UsedFallback: false);
        var sender = new Sender("digest@fleet.example", new Uri("https://fleet.example/"));
        var mails = new List<NewMail>();
        foreach (var recipient in await fleet.Operators.RecipientsAsync(fleet.Card.Id, DigestNames.WeeklyWear, Ct))
        {
            var message = MailComposer.Compose(digest, sender.To(fleet.Card, recipient, DigestNames.WeeklyWear, "2026-W49", fleet.Time.GetUtcNow()));
            mails.Add(Outgoing.Of(message, $"weekly-wear-2026-W49-{recipient.Id}", recipient));
        }

        Assert.True(await fleet.Ledger.IssueAsync(fleet.Card, DigestNames.WeeklyWear, "2026-W49", mails, [], Ct));
        for (var i = 0; i < workers; i++)
        {
            var post = new SmtpPost(new SmtpSettings("127.0.0.1", port, SmtpSecurity.None, null, null, timeout ?? TimeSpan.FromSeconds(20)));
            fleet.senders.Add(new MailSender(fleet.Ledger, post, fleet.Time, NullLogger<MailSender>.Instance));
        }

        return fleet;
    }

    /// <summary>Sends until everything is settled: when nothing is due, the clock runs ahead to what is.</summary>
    public async Task SettleAsync(int sideBySide = 4)
    {
        for (var round = 0; round < 400; round++)
        {
            await Task.WhenAll(senders.SelectMany(s => Enumerable.Range(0, sideBySide).Select(async _ =>
            {
                while (await s.SendOneAsync(Ct))
                {
                }
            })));
            var counts = await Ledger.CountsAsync(Ct);
            if (counts.Keys.All(s => s is MailState.Sent or MailState.Refused or MailState.GivenUp)) return;
            Time.Move(TimeSpan.FromMinutes(11)); // beyond a lease, and the longest pause of a host
        }

        Assert.Fail("not everything was settled");
    }

    /// <summary>Starts the senders as the program does.</summary>
    public async Task StartAsync()
    {
        foreach (var sender in senders) await sender.StartAsync(Ct);
    }

    public Task<IReadOnlyList<MailLine>> LinesAsync(MailFilter? filter = null) => Reading.ListAsync(Card.Id, filter ?? new MailFilter(), null, 100_000, Ct);

    public async Task<string> AddressAsync(MailLine line) => (await Operators.AllRecipientsAsync(Card.Id, Ct)).Single(r => r.Id == line.Recipient).Address;

    public async Task<IReadOnlyDictionary<string, string>> AddressesAsync() => (await Operators.AllRecipientsAsync(Card.Id, Ct)).ToDictionary(r => r.Id, r => r.Address);

    public async ValueTask DisposeAsync()
    {
        foreach (var sender in senders)
        {
            await sender.StopAsync(CancellationToken.None);
            sender.Dispose();
        }

        await database.DisposeAsync();
    }
}
