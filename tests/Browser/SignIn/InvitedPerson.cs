using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.SignIn;

/// <summary>People who were asked to come in.</summary>
internal static class InvitedPerson
{
    public const string Password = "wet varnish, dry rope";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Invites somebody and returns the path of the link.</summary>
    public static async Task<string> InviteAsync(this BrowsedFleet fleet, string person, Role role, string? address = null, bool signsIn = false)
    {
        var card = (await fleet.Fleet.Service<FleetOperators>().FindAsync(RunningFleet.Operator, Ct))!;
        var answer = await fleet.Fleet.Service<FleetPeople>().InviteAsync(card, person, "Kit Marlow", address, role, Hand.CommandLine, Ct);
        Assert.Empty(answer.Refusals);
        return FleetInvitations.PathOf(await fleet.Fleet.Service<FleetInvitations>().MakeAsync(answer.Person!, signsIn, Ct));
    }

    /// <summary>Invites somebody who then chooses the password.</summary>
    public static async Task WithPasswordAsync(this BrowsedFleet fleet, string person, Role role, string address)
    {
        var path = await fleet.InviteAsync(person, role, address);
        var page = await (await fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync(path);
        await page.FillAsync("#password", Password);
        await page.ClickAsync("text=Use a password");
        await page.WaitForURLAsync("**/office");
    }
}
