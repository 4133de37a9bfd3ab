using FleetWake.Store.Mail;

namespace FleetWake.Store.Tests.Mail;

/// <summary>When a message that failed is tried next. Waits and their spread: common practice, no source.</summary>
public class MailWaitTests
{
    private static readonly DateTimeOffset Monday = new(2026, 11, 30, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Waits_double_from_half_a_minute_to_four_hours_give_or_take_a_fifth()
    {
        for (var attempt = 1; attempt < 40; attempt++)
        {
            var middle = Math.Min(30 * Math.Pow(2, attempt - 1), 4 * 3600);
            Assert.InRange(MailState.Wait("m", attempt).TotalSeconds, 0.8 * middle - 0.001, 1.2 * middle + 0.001);
        }
    }

    [Fact]
    public void A_thousand_messages_that_failed_together_do_not_come_back_together_and_each_comes_when_it_can_be_reckoned()
    {
        var waits = Enumerable.Range(0, 1000).Select(i => MailState.Wait($"m-{i}", 5).TotalSeconds).ToList();
        Assert.True(waits.Distinct().Count() > 990);

        // Even over its span: a tenth of it holds about a tenth of them (binomial, three standard deviations).
        var (low, high) = (0.8 * 480, 1.2 * 480);
        var tenths = waits.GroupBy(w => (int)Math.Min(9, (w - low) / (high - low) * 10)).Select(g => g.Count()).ToList();
        Assert.Equal(10, tenths.Count);
        Assert.All(tenths, n => Assert.InRange(n, 100 - 29, 100 + 29));
        Assert.Equal(waits, Enumerable.Range(0, 1000).Select(i => MailState.Wait($"m-{i}", 5).TotalSeconds));
    }

    [Fact]
    public void A_message_is_tried_for_48_hours_and_the_last_time_at_their_end()
    {
        foreach (var message in Enumerable.Range(0, 50).Select(i => $"m-{i}"))
        {
            var (now, until, attempts) = (Monday, Monday + MailState.TriedFor, 1);
            while (MailState.Next(message, attempts, now, until) is { } next)
            {
                Assert.True(next > now && next <= until);
                now = next;
                attempts++;
            }

            Assert.Equal(Monday.AddHours(48), now);
            Assert.InRange(attempts, 18, 28);
        }
    }
}
