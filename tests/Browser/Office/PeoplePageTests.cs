using FleetWake.Browser.Tests.SignIn;
using FleetWake.Logbook.People;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

public sealed class PeoplePageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    public async ValueTask InitializeAsync() => fleet = await BrowsedFleet.StartAsync(chromium, postgres, "people_page");

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task An_administrator_asks_somebody_in_gives_a_role_and_ends_the_access()
    {
        var page = await (await fleet.SignedInAsync(Role.Administrator)).NewPageAsync();
        await page.GotoAsync("/office/people");
        await Accessible.HoldsAsync(page);

        // What is wrong stands beside its field, and what was typed stays.
        await page.FillAsync("#name", "Ines Gull");
        await page.FillAsync("#person", "not an id");
        await page.SelectOptionAsync("#role", "operator");
        await page.ClickAsync("text=Make the link");
        Assert.Contains("is not an id", await page.InnerTextAsync("#person-wrong"), StringComparison.Ordinal);
        Assert.Equal("Ines Gull", await page.InputValueAsync("#name"));
        Assert.Equal("operator", await page.InputValueAsync("#role"));
        await Accessible.HoldsAsync(page);

        await page.FillAsync("#person", "");
        await page.ClickAsync("text=Make the link");
        var link = await page.InputValueAsync("#address-of-link");
        await Accessible.HoldsAsync(page);
        await LookAsync(page, "people");
        await page.ReloadAsync();
        Assert.Equal(0, await page.Locator("#address-of-link").CountAsync());
        Assert.Contains("operator-1", await page.InnerTextAsync(".people"), StringComparison.Ordinal);

        var invited = await (await fleet.WindowAsync()).NewPageAsync();
        await invited.GotoAsync(link);
        await invited.FillAsync("#password", InvitedPerson.Password);
        await invited.ClickAsync("text=Use a password");
        await invited.WaitForURLAsync("**/office");

        // Another role holds at the next request.
        Assert.Equal(403, (await invited.GotoAsync("/office/people"))!.Status);
        await Accessible.HoldsAsync(invited);
        await page.ClickAsync("text=Change Ines Gull");
        await page.SelectOptionAsync("#role-operator-1", "manager");
        await page.Locator("li", new() { HasText = "Ines Gull" }).GetByText("Give this role").ClickAsync();
        await page.WaitForSelectorAsync("text=Ines Gull is manager now.");
        Assert.Equal(200, (await invited.GotoAsync("/office/people"))!.Status);
        Assert.Equal(0, await invited.Locator("#invite").CountAsync());
        Assert.Equal(0, await invited.Locator("text=Comings and goings").CountAsync());

        // A lost phone: what it could do is gone with one tick, and a new link is there.
        await page.ClickAsync("text=Change Ines Gull");
        await page.CheckAsync("[name=lost]:visible");
        await page.Locator("li", new() { HasText = "Ines Gull" }).GetByText("Make a new link").ClickAsync();
        await page.WaitForSelectorAsync("text=A link for Ines Gull");
        await invited.GotoAsync("/office");
        Assert.Contains("/sign-in", invited.Url, StringComparison.Ordinal);
        Assert.Contains("Invited", await page.Locator("li", new() { HasText = "Ines Gull" }).InnerTextAsync(), StringComparison.Ordinal);

        await page.ClickAsync("text=Change Ines Gull");
        await page.CheckAsync("[name=forget]:visible");
        await page.Locator("li", new() { HasText = "Ines Gull" }).GetByText("End access").ClickAsync();
        await page.WaitForSelectorAsync("text=name and address are erased");
        Assert.Contains("was refused (/office/people)", await page.InnerTextAsync("table"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_only_administrator_cannot_lock_the_fleet_out()
    {
        await fleet.WithPasswordAsync("admin-1", Role.Administrator, "chief@skerry-bay.example");
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync("/sign-in?to=/office/people");
        await page.FillAsync("#name", "chief@skerry-bay.example");
        await page.FillAsync("#password", InvitedPerson.Password);
        await page.ClickAsync("main form button");
        await page.WaitForURLAsync("**/office/people");
        await page.ClickAsync("text=Change Kit Marlow");
        await page.ClickAsync("text=End access");
        Assert.Contains("last administrator", await page.InnerTextAsync("[role=alert]"), StringComparison.Ordinal);
        Assert.Equal(200, (await page.GotoAsync("/office/people"))!.Status);
    }

    [Fact]
    public async Task Somebody_sees_the_own_browsers_ends_one_and_keeps_the_ways_in()
    {
        await fleet.WithPasswordAsync("desk-1", Role.Operator, "kit@skerry-bay.example");
        var (first, second) = (await SignInAsync(), await SignInAsync());
        await first.GotoAsync("/office/me/sign-in");
        await Accessible.HoldsAsync(first);
        await LookAsync(first, "my-sign-in");
        await first.ClickAsync("text=End all others");
        await first.WaitForSelectorAsync("text=Every other browser is signed out.");
        await second.GotoAsync("/office");
        Assert.Contains("/sign-in", second.Url, StringComparison.Ordinal);

        await first.FillAsync("#current", "not this one, sorry");
        await first.FillAsync("#password", "another wet varnish");
        await first.ClickAsync("text=Save");
        Assert.Contains("The password now is wrong", await first.InnerTextAsync("[role=alert]"), StringComparison.Ordinal);
        await first.FillAsync("#current", InvitedPerson.Password);
        await first.FillAsync("#password", "another wet varnish");
        await first.ClickAsync("text=Save");
        await first.WaitForSelectorAsync("text=The password is set.");

        await first.ClickAsync("text=Sign out");
        await first.WaitForURLAsync("**/sign-in");
        await first.GotoAsync("/office");
        Assert.Contains("/sign-in", first.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_passkey_is_added_and_the_last_way_in_stays()
    {
        var named = fleet.Url.Replace("127.0.0.1", "localhost", StringComparison.Ordinal);
        var path = await fleet.InviteAsync("mech-1", Role.Mechanic);
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        var phone = await Authenticator.OnAsync(page);
        await page.GotoAsync(named + path);
        await page.ClickAsync("text=Make a passkey");
        await page.WaitForURLAsync("**/office");
        await page.GotoAsync(named + "/office/me/sign-in");
        await page.ClickAsync("text=Take off");
        Assert.Contains("your only way in", await page.InnerTextAsync("[role=alert]"), StringComparison.Ordinal);

        await page.FillAsync("#password", InvitedPerson.Password);
        await page.ClickAsync("text=Save");
        await page.WaitForSelectorAsync("text=The password is set.");
        await page.ClickAsync("text=Take off");
        await page.WaitForSelectorAsync("text=The passkey is taken off.");
        Assert.Equal(1, await phone.CountAsync());

        // The device still has it; here it opens nothing any more.
        await page.ClickAsync("text=Sign out");
        await page.ClickAsync("text=Sign in with a passkey");
        await page.WaitForSelectorAsync("text=This passkey is not known here");
    }

    private async Task<IPage> SignInAsync()
    {
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync("/sign-in");
        await page.FillAsync("#name", "kit@skerry-bay.example");
        await page.FillAsync("#password", InvitedPerson.Password);
        await page.ClickAsync("main form button");
        await page.WaitForURLAsync("**/office");
        return page;
    }

    /// <summary>Writes a picture into the folder that LOOK_AT names, for looking at.</summary>
    private static async Task LookAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("LOOK_AT") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }
}
