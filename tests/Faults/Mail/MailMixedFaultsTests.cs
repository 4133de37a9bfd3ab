using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// Many messages under mixed faults, by real conversations with a server that misbehaves: each is delivered once, or its fate is written
/// down. 240 messages here; <c>FLEETWAKE_MAIL_MESSAGES=10000</c> runs the full number.
/// </summary>
public sealed class MailMixedFaultsTests(PostgresFixture postgres)
{
    // Of what becomes of them: taken at once, asked to come back five times, full twice, gone for good, and the line cut before and after the server kept a copy.
    private static readonly string[] Words = ["ok", "ok", "ok", "later", "full", "gone", "cutbefore", "cutafter"];

    private static int Messages => int.TryParse(Environment.GetEnvironmentVariable("FLEETWAKE_MAIL_MESSAGES"), out var n) ? n : 240;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public async Task None_is_lost_and_what_comes_twice_is_listed(int workers)
    {
        await using var server = new FaultyServer();
        var addresses = Enumerable.Range(0, Messages).Select(i => $"{Words[i % Words.Length]}-{i}@d{i % Math.Max(12, Messages / 20)}.example").ToList();
        await using var fleet = await SendingFleet.OpenAsync(postgres, addresses, workers: workers, port: server.Port);
        await fleet.SettleAsync();

        var lines = await fleet.LinesAsync();
        var of = await fleet.AddressesAsync();
        Assert.Equal(Messages, lines.Count);
        foreach (var line in lines)
        {
            var address = of[line.Recipient];
            var (word, copies, offers) = (address.Split('-')[0], server.Kept.GetValueOrDefault(address), server.Offers.GetValueOrDefault(address));
            if (word == "gone")
            {
                // 5xx: no retry.
                Assert.Equal((MailState.Refused, 0, 1), (line.State, copies, offers));
                continue;
            }

            Assert.Equal(MailState.Sent, line.State);
            Assert.Equal((word == "cutafter" ? 2 : 1, word is "cutbefore" or "cutafter" ? 1 : 0), (copies, line.Unclear));
            Assert.Equal(word switch { "later" => 6, "full" => 3, "cutbefore" or "cutafter" => 2, _ => 1 }, offers);
        }

        // Whatever may have come twice is listed, and nothing else.
        var listed = (await fleet.LinesAsync(new MailFilter(Unclear: true))).Select(l => of[l.Recipient]).ToHashSet();
        Assert.Equal(addresses.Where(a => a.StartsWith("cut", StringComparison.Ordinal)).ToHashSet(), listed);
        Assert.All(server.Kept.Where(k => k.Value > 1), k => Assert.Contains(k.Key, listed));

        // The address that is gone is marked; the others are not.
        Assert.Equal(addresses.Count(a => a.StartsWith("gone", StringComparison.Ordinal)), await fleet.Operators.NoMailAsync(fleet.Card.Id, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Of_five_readers_of_whom_one_is_refused_the_other_four_receive_once()
    {
        await using var server = new FaultyServer();
        await using var fleet = await SendingFleet.OpenAsync(postgres, ["ok-1@a.example", "ok-2@a.example", "gone-3@a.example", "ok-4@a.example", "ok-5@a.example"], port: server.Port);
        await fleet.SettleAsync();
        Assert.Equal(4, server.Kept.Count);
        Assert.All(server.Kept.Values, copies => Assert.Equal(1, copies));
        Assert.DoesNotContain("gone-3@a.example", server.Kept.Keys);
    }
}
