using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Every page is held against the rules of accessibility; with LOOK_AT=folder each is also written there as a picture, for looking at.</summary>
[Collection(AtOldMole.Name)]
public sealed class PagesTests(OldMole dock)
{
    private DockPhone phone = null!;

    [Fact]
    public async Task Every_page_is_accessible_in_light_and_dark_and_at_320_pixels()
    {
        phone = await DockPhone.NewAsync(dock);
        await SeeAsync("/dock/enrol");
        await SeeAsync("/dock/phone", "phone-without-dock");
        await phone.EnrolAsync(await dock.CodeAsync());
        foreach (var path in new[]
        {
            "/dock/", "/dock/who", "/dock/outbox", "/dock/phone", "/dock/p/spare-12", "/dock/b/tern", "/dock/b/gannet", "/dock/b/linnet", "/dock/b/no-such-boat",
            "/dock/b/gannet/strike", "/dock/b/tern/look", "/dock/b/gannet/inspection", "/dock/b/tern/mounting", "/dock/b/gannet/mounting", "/dock/b/tern/take-off", "/dock/b/tern/found", "/dock/b/gannet/retorque",
            "/dock/b/tern/trial", "/dock/b/gannet/hours", "/dock/b/gannet/work", "/dock/b/tern/hire",
        }) await SeeAsync(path);

        await phone.OpenAsync("/dock/b/gannet/strike");
        await phone.TapAsync("wood");
        await SeeHereAsync("strike-how-hard");
        await phone.TapAsync("bent");
        await SeeHereAsync("strike-where");
        await phone.IsKeptAsync();
        await phone.LoseSignalAsync();
        await phone.TapAsync("port");
        await phone.IsAtAsync("Recorded: Strike");
        await SeeHereAsync("strike-recorded");
        await phone.FollowAsync("Change it");
        await phone.IsAtAsync("Change: Strike");
        await SeeHereAsync("strike-change");
        await phone.GoAsync("/dock/outbox");
        await phone.IsAtAsync("Unsent");
        await SeeHereAsync("outbox-waiting");
        await phone.GoAsync("/dock/b/gannet");
        await phone.IsAtAsync("Gannet");
        await SeeHereAsync("gannet-struck");

        // Nothing of this reaches the office: other tests use the boat.
        await phone.Window.CloseAsync();
    }

    private async Task SeeAsync(string path, string? name = null)
    {
        if (phone.Page.Url == "about:blank") await phone.OpenAsync(path);
        else await phone.GoAsync(path);

        // A tag may lead on, e.g. to the boat that has the prop.
        await phone.Page.WaitForFunctionAsync("() => document.body.dataset.drawn === location.pathname");
        await SeeHereAsync(name ?? path.Trim('/').Replace('/', '-'));
    }

    private async Task SeeHereAsync(string name)
    {
        await Looks.AtAsync(phone.Page, name);
        await Accessible.HoldsAsync(phone.Page);
    }
}
