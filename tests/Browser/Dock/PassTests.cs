using System.Text.Json;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Attribution;
using FleetWake.Store.Devices;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Whose phone it is, who holds it, and what becomes of it.</summary>
[Collection(AtOldMole.Name)]
public sealed class PassTests(OldMole dock)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_a_phone_that_was_revoked_midway_brings_is_kept_back_and_it_says_what_to_do()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("scoter", "rock");
        var device = await phone.Page.EvaluateAsync<string>("async () => (await import(document.querySelector('script[type=module]').src.replace('main.js', 'state.js'))).state.device.device");
        Assert.True(await dock.Fleet.Fleet.Service<FleetDevices>().RevokeAsync(RunningFleet.Operator, device, Ct));
        await phone.FindSignalAsync();
        await phone.ReadsAsync("The office has taken this phone off the dock");
        await phone.GoAsync("/dock/phone");
        await phone.ReadsAsync("Nothing is lost.");
        await phone.GoAsync("/dock/outbox");
        await phone.ReadsAsync("kept back for a person to decide");
        Assert.Empty(await dock.Fleet.FactsAsync("boats/scoter", "strike_reported", Ct));
    }

    [Fact]
    public async Task A_name_that_was_claimed_without_signal_is_confirmed_by_a_PIN_later()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/who");
        await phone.TapAsync("Bo");
        await phone.TapAsync("Go on without a PIN");
        await phone.IsAtAsync("Boats");
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("sanderling", "rock");
        await phone.ReadsAsync("name not confirmed by PIN");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        var code = await dock.Fleet.Fleet.Service<DockPins>().MakeStartCodeAsync(RunningFleet.Operator, "mech-2", Ct);
        await phone.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "1 entry waits for a PIN" }).ClickAsync();
        await phone.TapAsync("Bo");
        await phone.ReadsAsync("Your PIN also confirms an entry made in your name.");
        await phone.TypeAsync("Start code of the office", code);
        await phone.TypeAsync("A PIN of your own", "27182");
        await phone.TapAsync("Go on");
        await phone.ReadsAsync("Six digits, please.");
        await phone.TypeAsync("A PIN of your own", "271828");
        await phone.TypeAsync("The same PIN again", "271828");
        await phone.TapAsync("Go on");
        await phone.IsAtAsync("Boats");

        // One entry before the PIN, one behind it: both are known to be Bo's, and the PIN stands nowhere on the phone.
        await phone.StrikeAsync("sanderling", "wood");
        await phone.AllSentAsync();
        var strikes = await dock.Fleet.ExactlyAsync(2, "boats/sanderling", "strike_reported", Ct);
        foreach (var strike in strikes)
        {
            var entry = strike["record"]!["entry"]!.Deserialize<Entry>(LogbookJson.Options)!;
            Assert.NotNull((await dock.Fleet.Fleet.Service<DockSignatures>().AttributionsAsync(RunningFleet.Operator, [entry], Ct))[entry.Id].ConfirmedAt);
        }
    }

    [Fact]
    public async Task A_pass_whose_time_has_come_is_renewed_by_the_phones_key_and_the_phone_can_be_wiped()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        const string Token = "async () => (await import(document.querySelector('script[type=module]').src.replace('main.js', 'state.js'))).state.device?.token ?? ''";
        var before = await phone.Page.EvaluateAsync<string>(Token);
        Assert.False(await phone.Page.EvaluateAsync<bool>("async () => (await import(document.querySelector('script[type=module]').src.replace('main.js', 'state.js'))).state.device.key.privateKey.extractable"));
        await phone.Page.EvaluateAsync("async () => { const m = await import(document.querySelector('script[type=module]').src.replace('main.js', 'state.js')); await m.keep('device', { ...m.state.device, rotateAfter: '2020-01-01T00:00:00Z' }); }");
        await phone.ReopenAsync();
        await RunningFleet.UntilAsync("another token", async () => await phone.Page.EvaluateAsync<string>(Token) is { Length: > 0 } now && now != before, Ct);
        await phone.GoAsync("/dock/phone");
        await phone.TapAsync("Wipe this phone");
        await phone.TapAsync("Yes, wipe it");
        await phone.ReadsAsync("This phone belongs to no dock.");
    }
}
