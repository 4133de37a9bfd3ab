using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>What was entered is kept once, whatever taps, tabs and full disks do; and what keeps a boat ashore does so until it is settled.</summary>
[Collection(AtOldMole.Name)]
public sealed class KeptTests(OldMole dock)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_double_tap_records_one_strike_and_answers_one_question()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/diver/strike");
        await phone.ReadsAsync("What did it hit?");
        await phone.Page.EvaluateAsync("() => { const key = [...document.querySelectorAll('.choose button')].find(b => b.textContent.startsWith('rock')); key.click(); document.querySelector('.choose button').click(); }");
        await phone.ReadsAsync("How hard, by the look of it?");
        await phone.Page.WaitForFunctionAsync("() => !document.querySelector('.choose button').disabled");
        await phone.Page.EvaluateAsync("() => { const key = [...document.querySelectorAll('.choose button')].find(b => b.textContent.startsWith('chipped')); key.click(); key.click(); }");
        await phone.IsAtAsync("Recorded: Strike");
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/diver", "strike_reported", Ct);
    }

    [Fact]
    public async Task What_is_kept_is_said_to_be_kept_and_its_draft_goes_with_it()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/gadwall/hours");
        await phone.TypeAsync("Hour meter", "140");
        await Task.Delay(400, Ct);
        await phone.Page.EvaluateAsync("""
            () => {
              const { add, getAll, delete: remove } = IDBObjectStore.prototype;
              const { count } = IDBIndex.prototype;
              let kept = false, once = true;
              IDBObjectStore.prototype.add = function (...a) { kept = true; return add.apply(this, a); };
              const fail = () => { if (kept && once) { once = false; throw new Error('counting fails'); } };
              IDBObjectStore.prototype.getAll = function (...a) { fail(); return getAll.apply(this, a); };
              IDBIndex.prototype.count = function (...a) { fail(); return count.apply(this, a); };
            }
            """);
        await phone.RecordAsync("Hours");
        Assert.DoesNotContain("\"values\"", await phone.StoreAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_draft_that_finds_no_room_throws_no_photo_away()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("garganey", "rock");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "prop.png", MimeType = "image/png", Buffer = Web.Frame.AssetFiles.Bytes("dock/icon-512.png") });
        await phone.ReadsAsync("1 photo");
        await phone.Page.EvaluateAsync("() => { const { put } = IDBObjectStore.prototype; IDBObjectStore.prototype.put = function (...a) { if (this.name === 'drafts') throw new DOMException('full', 'QuotaExceededError'); return put.apply(this, a); }; }");
        await phone.GoAsync("/dock/b/garganey/hours");
        await phone.TypeAsync("Hour meter", "140");
        await Task.Delay(600, Ct);
        Assert.Equal(1, await phone.AsksAsync<int>("db", "(await m.all('photos')).filter(p => p.blob).length"));
    }

    [Fact]
    public async Task What_the_office_refused_keeps_the_boat_until_somebody_takes_it_back()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.AnswerAsync("records", 200, """{"results":[{"outcome":"refused","refusals":[{"field":"/severity","reason":"x","message":"not like that"}]}]}""", "application/json");
        await phone.StrikeAsync("grebe", "rock");
        await phone.ReadsAsync("Refused. It is kept here until you mend it.");
        await phone.GoAsync("/dock/b/grebe");
        await phone.ReadsAsync("Out of hire");
        await phone.GoAsync("/dock/outbox");
        await phone.FollowAsync("Grebe: Strike");
        await phone.TapAsync("Take it back");
        await phone.GoAsync("/dock/b/grebe");
        await phone.ReadsAsync("In hire");
    }

    [Fact]
    public async Task Its_own_strike_keeps_the_boat_until_a_card_counts_it_however_long_ago_it_was_sent()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.Window.RouteAsync("**/dock/api/today", async route =>
        {
            var answer = await route.FetchAsync(new RouteFetchOptions { Headers = route.Request.Headers.Where(h => h.Key != "if-none-match").ToDictionary(h => h.Key, h => h.Value) });
            var today = System.Text.Json.Nodes.JsonNode.Parse(await answer.TextAsync())!;
            var heron = today["boats"]!.AsArray().Single(b => b!["boat"]!.GetValue<string>() == "heron")!;
            (heron["upToDate"], heron["hire"]!["word"], heron["hire"]!["reasons"]) = (false, "in_hire", new System.Text.Json.Nodes.JsonArray());
            await route.FulfillAsync(new RouteFulfillOptions { Response = answer, Body = today.ToJsonString() });
        });
        await phone.AsksAsync<bool>("today", "(await m.refresh(), true)");
        await phone.ReopenAsync("/dock/b/heron");
        await phone.ReadsAsync("The office has records of this boat that are not in this card yet.");
        await phone.StrikeAsync("heron", "rock");
        await phone.AllSentAsync();
        await phone.AsksAsync<bool>("outbox", "(await m.changeAll((await m.entries()).map(e => e.id), e => { e.answeredAt -= 600000; e.countedAfter -= 600000; }), true)");
        await phone.ReopenAsync("/dock/b/heron");
        await phone.ReadsAsync("Out of hire");
        await phone.ReadsAsync("Strike recorded on this phone: rock, chipped");
    }

    [Fact]
    public async Task A_number_that_may_be_two_is_asked_about()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.OpenAsync("/dock/b/avocet/hours");
        await phone.TypeAsync("Hour meter", "1,234");
        await phone.TapAsync("Record");
        await phone.ReadsAsync("That may be 1234 or 1.234: write it without the comma, or with a point.");
    }

    [Fact]
    public async Task Two_tabs_know_of_each_other_and_a_wiped_phone_is_wiped_in_both()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        var other = await phone.Window.NewPageAsync();
        await other.GotoAsync("/dock/");
        await Assertions.Expect(other.Locator("#bar")).ToContainTextAsync("Ana");
        await phone.OpenAsync("/dock/who");
        await phone.TapAsync("Bo");
        await phone.TapAsync("Go on without a PIN");
        await Assertions.Expect(other.Locator("#bar")).ToContainTextAsync("Bo");
        await phone.GoAsync("/dock/phone");
        await phone.TapAsync("Wipe this phone");
        await phone.TapAsync("Yes, wipe it");
        await phone.ReadsAsync("This phone belongs to no dock.");
        await Assertions.Expect(other.Locator("main")).ToContainTextAsync("This phone belongs to no dock.");
    }

    [Fact]
    public async Task The_list_reads_the_outbox_once_however_many_boats_there_are()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.Page.EvaluateAsync("() => { window.reads = 0; const { getAll } = IDBObjectStore.prototype; IDBObjectStore.prototype.getAll = function (...a) { if (this.name === 'entries') reads++; return getAll.apply(this, a); }; }");
        await phone.GoAsync("/dock/outbox");
        await phone.IsAtAsync("Unsent");
        await phone.Page.EvaluateAsync("() => { reads = 0; }");
        await phone.GoAsync("/dock/");
        await phone.IsAtAsync("Boats");
        Assert.InRange(await phone.Page.EvaluateAsync<int>("reads"), 0, 2);
    }

    [Fact]
    public async Task A_boat_without_a_dock_and_a_part_without_a_count_are_said_in_words()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.Window.RouteAsync("**/dock/api/today", async route =>
        {
            var answer = await route.FetchAsync(new RouteFetchOptions { Headers = route.Request.Headers.Where(h => h.Key != "if-none-match").ToDictionary(h => h.Key, h => h.Value) });
            var today = System.Text.Json.Nodes.JsonNode.Parse(await answer.TextAsync())!;
            today["others"]!.AsArray().Add(new System.Text.Json.Nodes.JsonObject { ["boat"] = "zander", ["name"] = "Zander" });
            today["parts"]!.AsArray().Add(new System.Text.Json.Nodes.JsonObject { ["part"] = "seal-9", ["kind"] = "seal", ["name"] = "Seal" });
            await route.FulfillAsync(new RouteFulfillOptions { Response = answer, Body = today.ToJsonString() });
        });
        await phone.AsksAsync<bool>("today", "(await m.refresh(), true)");
        await phone.ReopenAsync();
        await phone.Page.GetByLabel("Find a boat").FillAsync("zan");
        await phone.ReadsAsync("not registered yet");
        await phone.GoAsync("/dock/b/avocet/duty?rule=six-monthly&position=single");
        await phone.IsAtAsync("See to it");
        Assert.DoesNotContain("undefined", await phone.Page.Locator("main").InnerHTMLAsync(), StringComparison.Ordinal);
    }
}
