using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>A new version comes whole or not at all, and never costs an entry.</summary>
[Collection(AtOldMole.Name)]
public sealed class RenewalTests(OldMole dock)
{
    private const string Update = "navigator.serviceWorker.ready.then(r => r.update()).then(r => new Promise(done => { const look = () => r.installing ? setTimeout(look, 20) : done(!!r.waiting); look(); }), () => false)";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_version_that_comes_half_is_not_taken_and_the_whole_one_is_with_entries_unsent()
    {
        using var office = Renewal.Of(dock.Fleet.Url);
        var phone = await DockPhone.NewAsync(dock);
        await phone.EnrolAsync(await dock.CodeAsync(OldMole.North), office.Url);
        await phone.IsKeptAsync();
        await phone.ReopenAsync(office.Url + "/dock/");
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("osprey", "rock");
        await phone.Window.RouteAsync("**/dock/api/records", route => route.AbortAsync());
        await phone.FindSignalAsync();

        // The worker comes of the next version, and the page not yet.
        office.WorkerIsNext = true;
        Assert.False(await phone.Page.EvaluateAsync<bool>(Update));
        await phone.LoseSignalAsync();
        await phone.ReopenAsync(office.Url + "/dock/");
        await phone.ReadsAsync("1 unsent");
        await phone.FindSignalAsync();

        office.PageIsNext = true;
        Assert.True(await phone.Page.EvaluateAsync<bool>(Update));
        await phone.TapAsync("A new version is ready");
        await phone.Page.WaitForFunctionAsync($"() => document.body.dataset.version === '{Renewal.Next}' && !!document.body.dataset.drawn");
        await phone.LoseSignalAsync();
        await phone.ReopenAsync(office.Url + "/dock/");
        await phone.ReadsAsync("1 unsent");
        await phone.Window.UnrouteAsync("**/dock/api/records");
        await phone.FindSignalAsync();
        await phone.GoAsync("/dock/outbox");
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/osprey", "strike_reported", Ct);
    }
}
