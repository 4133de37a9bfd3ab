using FleetWake.Store.Attribution;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>What a form owes to somebody in a hurry: a question where one is due, the place of a mistake, and nothing typed lost.</summary>
[Collection(AtOldMole.Name)]
public sealed class PickyTests(OldMole dock)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_boat_is_put_back_in_hire_by_a_PIN_with_every_open_thing_ticked_and_its_card_says_so()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/bittern/hire");
        await phone.PickAsync("What do you record?", "back in hire");
        await phone.ReadsAsync("Putting a boat back in hire needs your name and PIN");
        await phone.TapAsync("Record");
        await phone.IsAtAsync("Out of hire, back");
        var pins = dock.Fleet.Fleet.Service<DockPins>();
        await pins.SetAsync(RunningFleet.Operator, "mech-1", await pins.MakeStartCodeAsync(RunningFleet.Operator, "mech-1", Ct), "902817", Ct);
        await phone.FollowAsync("Sign with a PIN");
        await phone.TapAsync("Ana");
        await phone.TypeAsync("Your PIN, six digits", "902817");
        await phone.TapAsync("Go on");
        await phone.IsAtAsync("Out of hire, back");
        await phone.PickAsync("What do you record?", "back in hire");
        await phone.PickAsync("On what grounds?", "looked at the dock");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("Tick each of them.");
        await phone.Page.GetByLabel("Strike on rock (bent)").CheckAsync();
        foreach (var box in await phone.Page.Locator(".wide input").AllAsync()) await box.CheckAsync();
        await phone.RecordAsync("Back in hire");
        await phone.AllSentAsync();
        await RunningFleet.UntilAsync("the card", async () => await phone.AsksAsync<bool>("today", "(await m.refresh(), !!(await m.cardOf('bittern')).card.hire.liftedOn)"), Ct);
        await phone.GoAsync("/dock/b/bittern");
        await phone.ReadsAsync("Lifted by hand on");
    }

    [Fact]
    public async Task A_photo_keeps_the_words_that_are_typed_beside_it()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.StrikeAsync("dotterel", "rock");
        await phone.TypeAsync("In your words", "by the slip");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "prop.png", MimeType = "image/png", Buffer = Web.Frame.AssetFiles.Bytes("dock/icon-192.png") });
        await phone.ReadsAsync("1 photo");
        Assert.Equal("by the slip", await phone.Page.GetByLabel("In your words").InputValueAsync());
    }

    [Fact]
    public async Task Damage_after_a_hire_asks_how_hard_or_that_no_strike_is_made_of_it()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/dipper/look");
        await phone.PickAsync("When?", "after a hire");
        await phone.PickAsync("What do you see?", "damage");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("Choose one.");
        await phone.PickAsync("How hard", "leave without a strike");
        await phone.RecordAsync("Short look");
        await phone.AllSentAsync();
        Assert.Empty(await dock.Fleet.FactsAsync("boats/dipper", "strike_reported", Ct));
    }

    [Fact]
    public async Task A_mounting_marks_each_mistake_where_it_is_and_leads_to_the_first()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/egret/mounting");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("Say why p-egret comes off.");
        await phone.ReadsAsync("Say which prop goes on.");
        Assert.True(await phone.Page.EvaluateAsync<bool>("document.activeElement.closest('fieldset')?.textContent.includes('Why it comes off')"));
        await phone.Page.GetByLabel("Which prop goes on?").SelectOptionAsync("p-egret");
        await phone.ReadsNoMoreAsync("Say which prop goes on.");
    }

    [Fact]
    public async Task An_odd_reading_is_asked_about_and_taken_as_read()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/gull/hours");
        await phone.TypeAsync("Hour meter", "1");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("is 1 right?");
        await phone.TapAsync("Yes, as read");
        await phone.IsAtAsync("Recorded: Hours");
        await phone.OpenAsync("/dock/b/gull/retorque");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("Give the torque, or tick the new pin");
        await phone.TypeAsync("Torque reached", "90");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("is 90 right?");
        await phone.OpenAsync("/dock/b/gull/inspection");
        await phone.PickAsync("What did you find?", "crack");
        await phone.PickAsync("Verdict", "fit");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("Is the verdict \"fit\" right?");
    }

    [Fact]
    public async Task One_moment_without_a_position_does_not_end_the_measurement()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.Page.AddInitScriptAsync("""
            Geolocation.prototype.watchPosition = (ok, failed) => { let i = 0; const began = Date.now(); return setInterval(() => { if (++i === 5) failed({ code: 2 }); else ok({ timestamp: began + 1000 * i, coords: { speed: 13, heading: 84, latitude: 0, longitude: 0, accuracy: 3 } }); }, 15); };
            Geolocation.prototype.clearWatch = id => clearInterval(id);
            """);
        await phone.OpenAsync("/dock/b/kite/trial");
        await phone.PickAsync("Does anything shake", "no");
        await phone.TapAsync("Measure with this phone");
        await phone.ReadsAsync("Steady for");
        await phone.Page.GetByLabel("RPM on the gauge").First.FillAsync("5.650");
        await phone.Page.GetByLabel("Heading").First.FocusAsync();
        await phone.ReadsAsync("Between 300 and 12000 RPM, please.");
    }

    [Fact]
    public async Task A_strike_has_a_way_back_and_takes_no_year_of_a_hundred_years_ago()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/lapwing/strike");
        await phone.TapAsync("rock");
        await phone.TapAsync("Back");
        await phone.TapAsync("wood");
        await phone.UnfoldAsync("Happened earlier?");
        await phone.TypeAsync("Date and time at the dock", "1926-11-20T15:30");
        await phone.TapAsync("chipped");
        await phone.ReadsAsync("That is more than two years ago.");
        await phone.TypeAsync("Date and time at the dock", "2026-11-20T15:30");
        await phone.TapAsync("chipped");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.TapAsync("Undo");
        await phone.ReadsNoMoreAsync("Recorded: Strike");
    }

    [Fact]
    public async Task A_strike_that_was_sent_stands_on_the_card_once()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.StrikeAsync("noddy", "rock");
        await phone.AllSentAsync();
        await RunningFleet.UntilAsync("the card", async () => await phone.AsksAsync<bool>("today", "(await m.refresh(), (await m.cardOf('noddy')).card.positions[0].openStrikes.length === 1)"), Ct);
        await phone.GoAsync("/dock/b/noddy");
        await phone.IsAtAsync("Noddy");
        await phone.ReadsAsync("rock, chipped");
        await phone.ReadsNoMoreAsync("this phone, not yet the office's");
    }

    [Fact]
    public async Task Nothing_scrolls_sideways_on_a_phone_at_twice_its_size()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: "old-mole");
        await phone.Page.SetViewportSizeAsync(195, 422);
        foreach (var path in new[] { "/dock/", "/dock/b/tern", "/dock/b/gannet", "/dock/b/gannet/strike", "/dock/b/tern/look", "/dock/b/tern/hours", "/dock/b/gannet/inspection", "/dock/outbox", "/dock/phone" })
        {
            await phone.GoAsync(path);
            await phone.Page.WaitForFunctionAsync("path => document.body.dataset.drawn === path", path);
            var over = await phone.Page.EvaluateAsync<string>("""
                () => { const most = document.documentElement.clientWidth; return document.documentElement.scrollWidth <= most ? '' : [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > most + 1).map(e => `${e.tagName}.${e.className} ${Math.round(e.getBoundingClientRect().right)} ${e.textContent.slice(0, 30)}`).slice(0, 6).join('; '); }
                """);
            Assert.True(over.Length == 0, $"{path}: {over}");
        }
    }

    [Fact]
    public async Task A_bad_code_of_a_link_can_be_typed_anew()
    {
        var phone = await DockPhone.NewAsync(dock);
        await phone.OpenAsync("/dock/enrol#not-a-code");
        await phone.TypeAsync("What shall the office call this phone?", "Blue phone");
        await phone.TapAsync("Join");
        await phone.ReadsAsync("This code was used already");
        Assert.True(await phone.Page.GetByLabel("Code of the office").IsVisibleAsync());
    }
}
