using FleetWake.Logbook;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Digests.Samples;
using FleetWake.Settings;
using FleetWake.Reports.Mail;
using FleetWake.Store.Findings;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;
using MimeKit;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>The digests of a thousand boats through the whole program: from findings in the database to one message a reader at a mail server.</summary>
public sealed class ThousandBoatsTests(PostgresFixture postgres)
{
    private const int Boats = 1000;
    private const int EachGroup = 4;
    private static readonly string?[] Docks = [null, "old-mole", "kittiwake-quay", "sallow-mere"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_reader_of_the_fleet_and_of_each_dock_receives_one_message_and_every_boat_is_counted_in_it()
    {
        await using var server = new FaultyServer();
        var smtp = new SmtpSettings("127.0.0.1", server.Port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(20));
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("thousand", Ct), new MailSettings("digest@fleet.example", "unused", smtp), ct: Ct);
        var findings = Findings();
        await StoreAsync(fleet, findings);
        var operators = fleet.Service<FleetOperators>();
        var card = (await operators.FindAsync(RunningFleet.Operator, Ct))!;
        foreach (var (n, dock) in Docks.Index())
            for (var i = 0; i < EachGroup; i++) await operators.SubscribeAsync(card, $"ok-{n}-{i}@d{i}.example", DigestNames.WeeklyWear, Ct, dock);

        var expected = Docks.Length * EachGroup;
        var reading = fleet.Service<MailReading>();
        IReadOnlyList<MailLine> lines = [];
        await RunningFleet.UntilAsync(
            "every message to be sent",
            async () => (lines = await reading.ListAsync(card.Id, new MailFilter(), null, 1000, Ct)).Count(l => l.State == MailState.Sent) >= expected,
            Ct, TimeSpan.FromMinutes(3));

        Assert.Equal(expected, lines.Count);
        Assert.All(lines, l => Assert.Equal((MailState.Sent, 1, 0), (l.State, l.Attempts, l.Unclear)));
        Assert.Equal(expected, server.Kept.Count);
        Assert.All(server.Kept.Values, copies => Assert.Equal(1, copies));
        foreach (var group in lines.GroupBy(l => l.Dock))
        {
            Assert.Equal(EachGroup, group.Count());
            var here = findings.Where(f => group.Key is null || f.Registered?.Dock == group.Key).ToList();
            using var mime = new MemoryStream(await reading.MimeAsync(card.Id, group.First().Message, Ct));
            var message = await MimeMessage.LoadAsync(mime, Ct);
            var stay = here.Count(f => f.Retired is null && !f.IsLaidUp() && HireStates.Of(f, null).Word != HireWord.InHire);
            Assert.InRange(stay, 2, here.Count);
            Assert.Contains($"{stay} boats stay until released", message.TextBody, StringComparison.Ordinal);
            Assert.InRange(message.HtmlBody!.Length, 1, 100_000);
            Assert.Contains(message.BodyParts.OfType<MimePart>(), p => p.ContentType.IsMimeType("image", "png"));
        }
    }

    /// <summary>The dozen boats of the sample over and over, each with a name of its own.</summary>
    private static List<BoatFinding> Findings() =>
    [
        .. Enumerable.Range(0, Boats).Select(i => (Number: i, Finding: SampleFleet.Findings[i % SampleFleet.Findings.Count]))
            .Select(x => x.Finding with { Boat = $"{x.Finding.Boat}-{x.Number:0000}", Registered = x.Finding.Registered! with { Name = $"{x.Finding.Registered.Name} {x.Number:0000}" } }),
    ];

    // As the finding step stores them; a thousand boats' records would take minutes here, and are another test's business.
    private static async Task StoreAsync(RunningFleet fleet, List<BoatFinding> findings)
    {
        var store = fleet.Service<IDocumentStore>();
        var at = TimeProvider.System.GetUtcNow();
        await store.BulkInsertAsync(RunningFleet.Operator, [.. findings.Select(f => new StoredFinding($"{f.Boat}/x/0/{f.Method}", f.Boat, "x", 0, f.Method, 0, at, f))], cancellation: Ct);
        await store.BulkInsertAsync(RunningFleet.Operator, [.. findings.Select(f => new CurrentFinding(f.Boat, $"{f.Boat}/x/0/{f.Method}"))], cancellation: Ct);
    }
}
