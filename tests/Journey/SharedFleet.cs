using FleetWake.Settings;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests;

/// <summary>
/// A running program that the tests of a class share, with a boat called Tern: to start one takes longer than most tests. Only for
/// tests that need neither an empty record nor a clock of their own.
/// </summary>
public sealed class SharedFleet(PostgresFixture postgres) : IAsyncLifetime
{
    public RunningFleet Fleet { get; private set; } = null!;

    /// <summary>The one dock that all of them write as: no two entries get one id.</summary>
    public DockRecords Dock { get; } = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        Fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("shared", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        await Fleet.SendAsync(Dock.Outfit("tern", "Tern"), Ct);
    }

    public ValueTask DisposeAsync() => Fleet.DisposeAsync();
}
