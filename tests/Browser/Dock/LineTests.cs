using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Attribution;
using FleetWake.Store.Devices;
using FleetWake.Store.Operators;
using FleetWake.Store.Photos;
using FleetWake.Store.Quarantine;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>What stands between a phone and its office: portals, full stores, another fleet, a decision that is still to come.</summary>
[Collection(AtOldMole.Name)]
public sealed class LineTests(OldMole dock)
{
    private const string Refusal = """{"type":"urn:fleetwake:problem:TYPE","title":"x","status":STATUS,"detail":"DETAIL"}""";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(404, "jaeger")]
    [InlineData(400, "pintail")]
    [InlineData(405, "pochard")]
    public async Task What_a_network_answers_in_the_offices_place_refuses_nothing(int status, string boat)
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.AnswerAsync("records", status, "<html>Welcome to Harbour Wi-Fi</html>");
        await phone.StrikeAsync(boat, "rock");
        await phone.ReadsAsync("No signal: entries are kept here");
        await phone.ReadsAsync("Kept on this phone, not sent yet.");
        await phone.AnswerNoMoreAsync("records");
        await phone.GoAsync("/dock/outbox");
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/" + boat, "strike_reported", Ct);
    }

    [Theory]
    [InlineData(404, "rail")]
    [InlineData(422, "scaup")]
    public async Task A_pass_that_cannot_be_renewed_refuses_no_entry(int status, string boat)
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.AnswerAsync("records", 401, Said(401, "token-expired", "over"), "application/problem+json");
        await phone.AnswerAsync("token", status, Said(status, "clock-wrong", "not now"), "application/problem+json");
        await phone.StrikeAsync(boat, "rock");
        await phone.AsksAsync<bool>("sending", "(await m.send(), true)");
        await phone.ReadsAsync("Kept on this phone, not sent yet.");
        await phone.AnswerNoMoreAsync("records");
        await phone.AnswerNoMoreAsync("token");
        await phone.GoAsync("/dock/outbox");
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/" + boat, "strike_reported", Ct);
    }

    [Fact]
    public async Task A_phone_that_carries_another_fleets_entries_joins_when_it_was_wiped()
    {
        const string Other = "far-isle";
        await dock.Fleet.Fleet.Service<FleetOperators>().OpenAsync(Other, "Far Isle Boats", RunningFleet.Zone, Ct);
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("snipe", "rock");
        await phone.AnswerAsync("records", 401, Said(401, "device-unknown", "gone"), "application/problem+json");
        await phone.FindSignalAsync();
        await phone.ReadsAsync("The office does not know this phone any more");
        var code = (await dock.Fleet.Fleet.Service<FleetDevices>().MakeCodeAsync(Other, "north", "phone", "boss", Ct)).Code;
        await phone.OpenAsync("/dock/enrol#" + code);
        await phone.TypeAsync("What shall the office call this phone?", "Blue phone");
        await phone.TapAsync("Join");
        await phone.ReadsAsync("This phone carries entries of another fleet.");
        await phone.GoAsync("/dock/phone");
        await phone.ReadsAsync("1 entry is not sent. That goes into a file first.");
        await phone.Page.RunAndWaitForDownloadAsync(() => phone.TapAsync("Export them, then wipe"));
        await phone.TapAsync("Yes, wipe it");
        await phone.ReadsAsync("This phone belongs to no dock.");
        await phone.AnswerNoMoreAsync("records");
        await phone.OpenAsync("/dock/enrol#" + code);
        await phone.TypeAsync("What shall the office call this phone?", "Blue phone");
        await phone.TapAsync("Join");
        await phone.IsAtAsync("Who holds the phone?");
        Assert.Equal("far-isle", await phone.AsksAsync<string>("state", "m.state.device.operator"));
        Assert.Empty(await dock.Fleet.FactsAsync("boats/snipe", "strike_reported", Ct));
    }

    [Fact]
    public async Task A_full_store_of_photos_is_told_and_the_phone_says_what_wiping_would_lose()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        var asked = 0;
        await phone.Window.RouteAsync("**/photos/*", route =>
        {
            Interlocked.Increment(ref asked);
            return route.FulfillAsync(new RouteFulfillOptions { Status = 507, Body = Said(507, "photos-full", "full"), ContentType = "application/problem+json" });
        });
        await phone.StrikeAsync("stint", "rock");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "prop.png", MimeType = "image/png", Buffer = Web.Frame.AssetFiles.Bytes("dock/icon-192.png") });
        await phone.ReadsAsync("1 photo or note unsent");
        await RunningFleet.UntilAsync("the office asked", () => Task.FromResult(asked > 0), Ct);
        await phone.GoAsync("/dock/outbox");
        await phone.ReadsAsync("The office has no room for photos just now.");
        await phone.AsksAsync<bool>("sending", "(await m.send(), true)");
        Assert.Equal(1, asked);
        await phone.GoAsync("/dock/phone");
        await phone.ReadsAsync("1 photo or note is not sent. That goes into a file first.");
    }

    [Fact]
    public async Task Words_that_the_office_does_not_take_stay_unsent_and_say_why()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.AnswerAsync("entries/*/note", 409, Said(409, "of-another-phone", "Another phone put the note of this entry: it stays as it is."), "application/problem+json");
        await phone.StrikeAsync("teal", "rock");
        await phone.TypeAsync("In your words", "by the slip");
        await phone.TapAsync("Keep the words");
        await phone.GoAsync("/dock/outbox");
        await phone.ReadsAsync("words unsent");
        await phone.ReadsAsync("Another phone put the note of this entry");
    }

    [Fact]
    public async Task What_was_kept_back_is_asked_about_when_the_phone_is_enrolled_again_and_its_words_follow()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("turnstone", "rock");
        await phone.TypeAsync("In your words", "by the slip");
        await phone.TapAsync("Keep the words");
        var entry = Guid.Parse(await phone.AsksAsync<string>("outbox", "(await m.entries())[0].id"));
        await dock.Fleet.Fleet.Service<FleetDevices>().RevokeAsync(RunningFleet.Operator, await phone.AsksAsync<string>("state", "m.state.device.device"), Ct);
        await phone.FindSignalAsync();
        await phone.ReadsAsync("With the office, kept back for a person to decide.");
        await phone.GoAsync("/dock/b/turnstone");
        await phone.ReadsAsync("Out of hire");
        await dock.Fleet.Fleet.Service<QuarantineBook>().ReleaseAsync(RunningFleet.Operator, entry, new Stamp(null, "boss", "2026-11-21T09:00:00", RunningFleet.Zone), Ct);
        await phone.EnrolAsync(await dock.CodeAsync(OldMole.North));
        await phone.AllSentAsync();
        await RunningFleet.UntilAsync("the words", async () => (await dock.Fleet.Fleet.Service<EntryNotes>().OfAsync(RunningFleet.Operator, [entry], Ct)).GetValueOrDefault(entry) == "by the slip", Ct);
        await phone.OpenAsync("/dock/entry/" + entry);
        await phone.ReadsAsync("Sent.");
    }

    [Fact]
    public async Task A_PIN_that_was_forgotten_is_replaced_at_the_phone_and_stands_nowhere_on_it()
    {
        const string Person = "mech-3";
        var pins = dock.Fleet.Fleet.Service<DockPins>();
        await pins.SetAsync(RunningFleet.Operator, Person, await pins.MakeStartCodeAsync(RunningFleet.Operator, Person, Ct), "902817", Ct);
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/who");
        await phone.ReopenAsync("/dock/who");
        await phone.TapAsync("Cy");
        await phone.TypeAsync("Your PIN, six digits", "111222");
        await Task.Delay(400, Ct);
        Assert.DoesNotContain("111222", await phone.StoreAsync(), StringComparison.Ordinal);
        await phone.TapAsync("Set or replace the PIN");
        var code = await pins.MakeStartCodeAsync(RunningFleet.Operator, Person, Ct);
        await phone.TypeAsync("A PIN of your own", "314159");
        await phone.TypeAsync("The same PIN again", "314159");

        // As the office shows it, and first as nobody showed it.
        await phone.TypeAsync("Start code of the office", "0000 0000");
        await phone.TapAsync("Go on");
        await phone.ReadsAsync("That is not the start code.");
        await phone.TypeAsync("Start code of the office", code[..4] + " " + code[4..]);
        await Task.Delay(400, Ct);
        await phone.TapAsync("Go on");
        await phone.IsAtAsync("Boats");
        var store = await phone.StoreAsync();
        foreach (var secret in new[] { "314159", "111222", code }) Assert.DoesNotContain(secret, store, StringComparison.Ordinal);
        Assert.Equal(PinOutcome.Right, (await pins.CheckAsync(RunningFleet.Operator, Person, "314159", Ct)).Outcome);
    }

    private static string Said(int status, string type, string detail) => Refusal.Replace("TYPE", type, StringComparison.Ordinal).Replace("STATUS", status.ToString(), StringComparison.Ordinal).Replace("DETAIL", detail, StringComparison.Ordinal);
}
