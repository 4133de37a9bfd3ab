using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;

namespace FleetWake.Browser.Tests.SignIn;

public sealed class InvitationTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    public async ValueTask InitializeAsync() => fleet = await BrowsedFleet.StartAsync(chromium, postgres, "invitation");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_passkey_is_made_by_the_link_and_signs_in_from_then_on()
    {
        var path = await fleet.InviteAsync("mech-1", Role.Mechanic);
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        var phone = await Authenticator.OnAsync(page);
        await page.GotoAsync(Named(path));
        Assert.Equal("Welcome, Kit Marlow", await page.InnerTextAsync("h1"));
        await Accessible.HoldsAsync(page);
        await page.FillAsync("#called", "my phone");
        await page.ClickAsync("text=Make a passkey");
        await page.WaitForURLAsync("**/office");
        Assert.Equal(1, await phone.CountAsync());

        await page.Context.ClearCookiesAsync();
        await page.GotoAsync(Named("/office?dock=old-mole"));
        Assert.Contains("/sign-in?to=", page.Url, StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await page.ClickAsync("text=Sign in with a passkey");
        await page.WaitForURLAsync("**/office?dock=old-mole");

        // The link is used up, for this browser and any other.
        Assert.Equal(404, (await page.GotoAsync(Named(path)))!.Status);
        Assert.Equal("This link does not work", await page.InnerTextAsync("h1"));
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task A_finger_that_is_not_known_says_so_and_the_password_is_still_there()
    {
        await fleet.WithPasswordAsync("desk-1", Role.Operator, "kit@skerry-bay.example");
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        var phone = await Authenticator.OnAsync(page);
        await page.GotoAsync(Named("/sign-in"));
        await phone.RefuseAsync();
        await page.ClickAsync("text=Sign in with a passkey");
        await page.WaitForSelectorAsync("text=No passkey was used");
        await page.FillAsync("#name", "Kit@Skerry-Bay.example");
        await page.FillAsync("#password", InvitedPerson.Password);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/office");
    }

    [Fact]
    public async Task A_password_that_will_not_do_is_said_beside_the_field_and_uses_up_nothing()
    {
        var path = await fleet.InviteAsync("mgr-1", Role.Manager, "boss@skerry-bay.example");
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync(path);
        await page.FillAsync("#password", "Kit Marlow 26");
        await page.ClickAsync("text=Use a password");
        Assert.Contains("somebody would try that first", await page.InnerTextAsync("#wrong"), StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await page.FillAsync("#password", InvitedPerson.Password);
        await page.ClickAsync("text=Use a password");
        await page.WaitForURLAsync("**/office");
    }

    [Fact]
    public async Task A_link_that_signs_in_does_so_once()
    {
        var path = await fleet.InviteAsync("admin-1", Role.Administrator, signsIn: true);
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync(path);
        await page.ClickAsync("main button");
        await page.WaitForURLAsync("**/office");
        Assert.Equal(404, (await page.GotoAsync(path))!.Status);
    }

    /// <summary>The same by a name: a passkey belongs to one, never to a bare address.</summary>
    private string Named(string path) => fleet.Url.Replace("127.0.0.1", "localhost", StringComparison.Ordinal) + path;
}
