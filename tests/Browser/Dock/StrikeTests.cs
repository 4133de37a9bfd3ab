using FleetWake.Tests.Kit;

namespace FleetWake.Browser.Tests.Dock;

public sealed class StrikeTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private OldMole dock = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => dock = await OldMole.OpenAsync(chromium, postgres, "dock_strike");

    public ValueTask DisposeAsync() => dock.DisposeAsync();

    [Fact]
    public async Task A_strike_in_three_taps_without_signal_is_sent_once_when_there_is_some()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
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
        await dock.Fleet.ExactlyAsync(1, "boats/tern", "strike_reported", Ct);
    }
}
