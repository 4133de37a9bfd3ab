using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.Dock;

public sealed class StrikeTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;
    private StubOffice office = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await BrowsedFleet.StartAsync(chromium, postgres, "dock_strike");
        office = new StubOffice(fleet.Fleet);
        var dock = new DockRecords();
        await fleet.Fleet.SendAsync([.. dock.Outfit("tern", "Tern"), .. dock.Outfit("gannet", "Gannet")], Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_strike_in_three_taps_without_signal_is_sent_once_when_there_is_some()
    {
        var phone = await DockPhone.EnrolledAsync(fleet, office);
        await phone.IsKeptAsync();
        await phone.LoseSignalAsync();
        await phone.FollowAsync("Tern");
        await phone.ReadsAsync("In hire");
        await phone.FollowAsync("Strike");
        await phone.TapAsync("rock");
        await phone.TapAsync("chipped");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.ReadsAsync("1 unsent");

        await phone.ReopenAsync("/dock/b/tern");
        await phone.ReadsAsync("Out of hire");
        await phone.ReadsAsync("Strike recorded on this phone");

        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        await fleet.ExactlyAsync(1, "boats/tern", "strike_reported", Ct);
    }
}
