using FleetWake.Reports.Mail;
using Microsoft.Extensions.Time.Testing;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>A receiving host that is slow, or asks to be left alone, keeps its own mail waiting and nobody else's. Common practice, no source.</summary>
public class HostGatesTests
{
    private static readonly Delivery HostWaits = new Delivery.Deferred("421 later", Waits.Host);
    private static readonly Delivery Sent = new Delivery.Sent();
    private readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));

    [Fact]
    public void No_more_than_two_messages_are_under_way_to_a_host_and_others_are_open()
    {
        var gates = Gates();
        gates.Enter("slow.example");
        Assert.Empty(gates.Closed());
        gates.Enter("slow.example");
        gates.Enter("quick.example");
        Assert.Equal(["slow.example"], gates.Closed());
        gates.Leave("slow.example", Sent);
        Assert.Empty(gates.Closed());
    }

    [Fact]
    public void A_host_that_asks_for_it_is_left_alone_longer_each_time_then_asked_by_one_message_and_open_again_when_it_takes_one()
    {
        var gates = Gates();
        foreach (var pause in (int[])[5, 10, 20])
        {
            gates.Enter("slow.example");
            gates.Leave("slow.example", HostWaits);
            time.Advance(TimeSpan.FromSeconds(pause - 1));
            Assert.Equal(["slow.example"], gates.Closed());
            time.Advance(TimeSpan.FromSeconds(1));
            Assert.Empty(gates.Closed());
        }

        gates.Enter("slow.example");
        Assert.Equal(["slow.example"], gates.Closed());
        gates.Leave("slow.example", Sent);
        gates.Enter("slow.example");
        Assert.Empty(gates.Closed());
    }

    [Fact]
    public void No_pause_is_longer_than_five_minutes()
    {
        var gates = Gates();
        for (var i = 0; i < 20; i++)
        {
            gates.Enter("slow.example");
            gates.Leave("slow.example", HostWaits);
            time.Advance(TimeSpan.FromMinutes(5));
            Assert.Empty(gates.Closed());
        }
    }

    [Fact]
    public void When_our_own_server_cannot_be_used_all_mail_waits_a_little()
    {
        var gates = Gates();
        gates.Enter("bay.example");
        gates.Leave("bay.example", new Delivery.Deferred("no connection", Waits.Everything));
        Assert.True(gates.AllClosed);
        time.Advance(TimeSpan.FromSeconds(5));
        Assert.False(gates.AllClosed);
        Assert.Empty(gates.Closed());
    }

    [Fact]
    public void No_more_messages_a_minute_are_begun_than_is_allowed()
    {
        var gates = Gates(SendingSettings.Usual with { PerMinute = 3 });
        for (var i = 0; i < 3; i++)
        {
            Assert.Empty(gates.Closed());
            gates.Enter("bay.example");
            gates.Leave("bay.example", Sent);
            time.Advance(TimeSpan.FromSeconds(10));
        }

        Assert.Equal(["bay.example"], gates.Closed());
        time.Advance(TimeSpan.FromSeconds(30));
        Assert.Empty(gates.Closed());
    }

    [Fact]
    public void A_message_refused_for_now_by_itself_closes_nothing()
    {
        var gates = Gates();
        gates.Enter("bay.example");
        gates.Leave("bay.example", new Delivery.Deferred("452 mailbox full"));
        Assert.Empty(gates.Closed());
        Assert.False(gates.AllClosed);
    }

    private HostGates Gates(SendingSettings? settings = null) => new(settings ?? SendingSettings.Usual, time);
}
