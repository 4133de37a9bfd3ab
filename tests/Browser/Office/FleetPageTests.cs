using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;

namespace FleetWake.Browser.Tests.Office;

public sealed class FleetPageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    public async ValueTask InitializeAsync() => fleet = await BrowsedFleet.StartAsync(chromium, postgres, "fleet_page");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_manager_sees_the_fleet_and_the_page_is_accessible()
    {
        var window = await fleet.SignedInAsync(Role.Manager);
        var page = await window.NewPageAsync();
        await page.GotoAsync("/office");
        Assert.Equal("Fleet", await page.InnerTextAsync("h1"));
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task Nobody_sees_it_without_signing_in()
    {
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync("/office");
        Assert.Contains("/sign-in", page.Url, StringComparison.Ordinal);
    }
}
