using System.Text.Json.Nodes;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Each act as a person does it: without signal, the phone shut and opened again, back to where there is signal, and each record once at the office.</summary>
[Collection(AtOldMole.Name)]
public sealed class FlowTests(OldMole dock)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_strike_in_three_taps_keeps_the_boat_at_once_and_is_sent_once()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.Page.GetByLabel("Find a boat").FillAsync("au");
        await phone.FollowAsync("Auk");
        await phone.ReadsAsync("In hire");
        await phone.FollowAsync("Strike");
        await phone.TapAsync("rock");
        await phone.TapAsync("chipped");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.ReadsAsync("1 unsent");

        await phone.ReopenAsync("/dock/b/auk");
        await phone.ReadsAsync("Out of hire");
        await phone.ReadsAsync("Strike recorded on this phone: rock, chipped");

        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        var strike = Record(Assert.Single(await dock.Fleet.ExactlyAsync(1, "boats/auk", "strike_reported", Ct)));
        Assert.Equal(("rock", "chipped"), (strike["object"]!.GetValue<string>(), strike["severity"]!.GetValue<string>()));
    }

    [Fact]
    public async Task On_a_twin_the_third_tap_says_which_engine_and_undo_takes_it_back()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/b/gannet/strike");
        await phone.TapAsync("wood");
        await phone.TapAsync("bent");
        await phone.TapAsync("starboard");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.AllSentAsync();
        await phone.TapAsync("Undo");
        await phone.ReadsAsync("Taken back or replaced by a later entry.");
        await phone.AllSentAsync();
        Assert.False((await dock.Fleet.ExactlyAsync(1, "boats/gannet", "strike_reported", Ct))[0]["counts"]!.GetValue<bool>());
        await dock.Fleet.ExactlyAsync(1, "boats/gannet", "retracted", Ct);

        // What never left the phone leaves no trace at the office.
        await phone.LoseSignalAsync();
        await phone.GoAsync("/dock/b/gannet/strike");
        await phone.TapAsync("line");
        await phone.TapAsync("no mark");
        await phone.TapAsync("port");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.TapAsync("Undo");
        await phone.ReadsAsync("Taken back before it was sent");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/gannet", "strike_reported", Ct);
    }

    [Fact]
    public async Task A_mounting_sheet_takes_one_prop_off_and_fits_another_in_one_go()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.FollowAsync("Tern");
        await phone.FollowAsync("Fit or take off a prop");
        await phone.PickAsync("Why it comes off", "worn");
        await phone.Page.GetByLabel("Which prop goes on?").SelectOptionAsync("spare-12");
        foreach (var step in new[] { "It cannot turn", "Seal and shaft clear", "Shaft greased", "Thrust washer and hardware" }) await phone.Page.GetByLabel(step).CheckAsync();
        await phone.ReadsAsync("Tighten on to the next slot. Never back off.");
        await phone.ReadsAsync("Not beyond 30 lbf·ft.");
        await phone.TypeAsync("Torque reached", "26");
        await phone.ReadsAsync("That is 35.3 N·m.");
        await phone.TypeAsync("Slots tightened on", "1");
        foreach (var step in new[] { "Nut at its torque", "New cotter pin in" }) await phone.Page.GetByLabel(step).CheckAsync();
        await phone.ReadsAsync("1 step is not ticked");

        // A call, an empty battery: what was typed stands there again.
        await RunningFleet.UntilAsync("the draft", async () => (await phone.StoreAsync()).Contains("\"pin\":true", StringComparison.Ordinal), Ct);
        await phone.ReopenAsync("/dock/b/tern/mounting");
        await phone.ReadsAsync("You began this before");
        Assert.Equal("26", await phone.Page.GetByLabel("Torque reached").InputValueAsync());
        await phone.Page.GetByLabel("Turns free").CheckAsync();
        await phone.ReadsAsync("Every step is ticked.");
        await phone.TypeAsync("Hour meter", "201,5");
        await phone.Page.GetByLabel("Small part used").SelectOptionAsync("pin-3");
        await phone.RecordAsync("Prop taken off");

        await phone.ReopenAsync("/dock/b/tern");
        await phone.ReadsAsync("spare-12 (this phone, not yet the office's)");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        Assert.Equal("worn", Record((await dock.Fleet.ExactlyAsync(1, "boats/tern", "prop_removed", Ct))[0])["why"]!.GetValue<string>());
        var mounted = Record((await dock.Fleet.ExactlyAsync(2, "boats/tern", "prop_mounted", Ct))[1]);
        Assert.Equal("spare-12", mounted["prop"]!.GetValue<string>());
        Assert.Equal((26, "pound_force_foot", 1, true, 201.5), (mounted["torque"]!.GetValue<double>(), mounted["torqueUnit"]!.GetValue<string>(), mounted["slotsAdvanced"]!.GetValue<int>(), mounted["newCotterPin"]!.GetValue<bool>(), mounted["hours"]!.GetValue<double>()));
    }

    [Fact]
    public async Task Short_acts_without_signal_arrive_each_once()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.GoAsync("/dock/b/dunlin/inspection");
        await phone.PickAsync("What was in hand", "prop");
        await phone.PickAsync("What did you find?", "worn edge");
        await phone.PickAsync("Verdict", "take off");
        await phone.RecordAsync("Inspection");
        await phone.GoAsync("/dock/b/dunlin/retorque");
        await phone.TypeAsync("Torque reached", "27");
        await phone.Page.GetByLabel("A new cotter pin is in").CheckAsync();
        await phone.RecordAsync("Re-torque");
        await phone.GoAsync("/dock/b/dunlin/hours");
        await phone.TypeAsync("Hour meter", "140");
        await phone.RecordAsync("Hours");
        await phone.GoAsync("/dock/b/dunlin/look");
        await phone.PickAsync("What do you see?", "nothing new");
        await phone.RecordAsync("Short look");
        await phone.GoAsync("/dock/b/dunlin/work");
        await phone.Page.GetByLabel("Hull cleaned").CheckAsync();
        await phone.Page.GetByLabel("Prop cleaned").CheckAsync();
        await phone.PickAsync("Engine serviced", "gear oil");
        await phone.RecordAsync("Hull cleaned");
        await phone.GoAsync("/dock/b/dunlin/hire");
        await phone.PickAsync("What do you record?", "out of hire");
        await phone.PickAsync("Why?", "damage");
        await phone.RecordAsync("Out of hire");
        await phone.ReopenAsync("/dock/b/dunlin");
        await phone.ReadsAsync("Inspection recorded on this phone: take off.");

        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        foreach (var kind in new[] { "inspected", "nut_retorqued", "looked_over", "hull_cleaned", "prop_cleaned", "out_of_hire" }) await dock.Fleet.ExactlyAsync(1, "boats/dunlin", kind, Ct);
        foreach (var kind in new[] { "hours_read", "engine_serviced" }) await dock.Fleet.ExactlyAsync(1, "engines/e-dunlin", kind, Ct);
    }

    [Fact]
    public async Task Damage_found_after_a_hire_is_a_strike_with_its_claim_and_photo()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/b/eider/look");
        await phone.PickAsync("When?", "after a hire");
        await phone.PickAsync("What do you see?", "damage");
        await phone.PickAsync("How hard", "bent");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("A claim needs the hire reference.");
        await phone.TypeAsync("Hire reference", "h-2026-118");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "prop.png", MimeType = "image/png", Buffer = Web.Frame.AssetFiles.Bytes("dock/icon-192.png") });
        await phone.ReadsAsync("1 taken");
        await phone.RecordAsync("Short look");
        await phone.TypeAsync("In your words", "Skeg chipped as well.");
        await phone.TapAsync("Keep the words");
        await RunningFleet.UntilAsync("photo and words at the office", async () => await phone.Page.EvaluateAsync<bool>("async () => { const db = await import(document.querySelector('script[type=module]').src.replace('main.js', 'db.js')); return (await db.all('photos')).every(p => p.sent && !p.told && !p.blob) && (await db.all('entries')).some(e => e.noteSent); }"), Ct);
        var look = Record((await dock.Fleet.ExactlyAsync(1, "boats/eider", "looked_over", Ct))[0]);
        Assert.Equal(64, look["photo"]!.GetValue<string>().Length);
        var strike = Record((await dock.Fleet.ExactlyAsync(1, "boats/eider", "strike_reported", Ct))[0]);
        var claim = Record((await dock.Fleet.ExactlyAsync(1, "boats/eider", "claim_opened", Ct))[0]);
        Assert.Equal(("h-2026-118", strike["entry"]!["id"]!.GetValue<string>()), (claim["hire"]!.GetValue<string>(), claim["strike"]!.GetValue<string>()));
    }

    [Fact]
    public async Task Yesterdays_mounting_is_entered_short()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/b/fulmar/mounting");
        await phone.UnfoldAsync("Done earlier?");
        await phone.TypeAsync("Date and time at the dock", "2026-11-20T15:30");
        await phone.ReadsAsync("Done earlier: the short sheet");
        Assert.Equal(0, await phone.Page.GetByLabel("Shaft greased").CountAsync());
        await phone.PickAsync("Why it comes off", "service");
        await phone.Page.GetByLabel("Which prop goes on?").SelectOptionAsync("p-fulmar");
        await phone.RecordAsync("Prop taken off");
        var mounted = Record((await dock.Fleet.ExactlyAsync(2, "boats/fulmar", "prop_mounted", Ct))[1]);
        Assert.StartsWith("2026-11-20T15:30:00", mounted["entry"]!["happenedAt"]!.ToString(), StringComparison.Ordinal);
        Assert.Null(mounted["shaftGreased"]);
    }

    [Fact]
    public async Task A_guided_trial_measures_speed_and_says_at_once_how_good_it_is()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.Page.AddInitScriptAsync("""
            Geolocation.prototype.watchPosition = ok => { let i = 0; const began = Date.now(); return setInterval(() => ok({ timestamp: began + 1000 * i, coords: { speed: window.speedNow + 0.05 * Math.sin(i++), heading: window.headingNow, latitude: 0, longitude: 0, accuracy: 3 } }), 15); };
            Geolocation.prototype.clearWatch = id => clearInterval(id);
            window.speedNow = 13; window.headingNow = 84;
            """);
        await phone.OpenAsync("/dock/b/godwit/trial");
        Assert.False(await phone.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Measure with this phone" }).First.IsVisibleAsync());
        await phone.PickAsync("Does anything shake", "yes");
        await phone.ReadsAsync("No guided run at wide open throttle: something shakes.");
        await phone.PickAsync("Does anything shake", "no");
        await RunAsync(0, "5650");
        await phone.Page.EvaluateAsync("() => { speedNow = 14; headingNow = 258; }");
        await phone.ReadsAsync("steer about 264°");
        await RunAsync(1, "5680");
        await phone.TypeAsync("Air temperature", "18");
        await phone.TypeAsync("Air pressure", "1009");
        await phone.TypeAsync("Humidity", "70");
        await phone.ReadsAsync("Doubtful: RPM split 30, more than the gauge's 10");
        await phone.Page.GetByLabel("RPM on the gauge").Nth(1).FillAsync("5660");
        await phone.ReadsAsync("Good. Headings 174 degrees apart, RPM split 10 within the gauge's 10.");
        await phone.ReadsAsync("below its top");
        await phone.Page.GetByLabel("RPM on the gauge").Nth(1).FillAsync("6040");
        await phone.Page.GetByLabel("RPM on the gauge").Nth(0).FillAsync("6010");
        await phone.ReadsAsync("Over by 25 RPM");
        await phone.ReadsAsync("over stays over");
        await phone.TypeAsync("Hour meter", "150");
        await phone.RecordAsync("Trial");
        var trial = Record((await dock.Fleet.ExactlyAsync(1, "boats/godwit", "trial_run", Ct))[0]);
        Assert.Equal(2, trial["runs"]!.AsArray().Count);
        Assert.InRange(trial["runs"]![0]!["speed"]!.GetValue<double>(), 25, 25.6);

        async Task RunAsync(int n, string rpm)
        {
            await phone.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Measure with this phone" }).Nth(n).ClickAsync();
            await phone.ReadsAsync("Steady for");
            await phone.TapAsync("Take this");
            await phone.Page.GetByLabel("RPM on the gauge").Nth(n).FillAsync(rpm);
        }
    }

    private static JsonNode Record(JsonObject item) => item["record"]!;
}
