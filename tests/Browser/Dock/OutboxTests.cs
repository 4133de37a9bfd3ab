using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Nothing that was entered is lost, whatever becomes of the phone, its room, its clock or its pass.</summary>
[Collection(AtOldMole.Name)]
public sealed class OutboxTests(OldMole dock)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Two_phones_record_the_same_boat_without_signal_and_both_count()
    {
        var (one, other) = (await DockPhone.EnrolledAsync(dock), await DockPhone.EnrolledAsync(dock));
        foreach (var phone in new[] { one, other })
        {
            await phone.LoseSignalAsync();
            await phone.StrikeAsync("knot", phone == one ? "rock" : "wood");
        }

        foreach (var phone in new[] { one, other })
        {
            await phone.FindSignalAsync();
            await phone.AllSentAsync();
        }

        var strikes = await dock.Fleet.ExactlyAsync(2, "boats/knot", "strike_reported", Ct);
        Assert.Equal(["rock", "wood"], strikes.Select(s => s["record"]!["object"]!.GetValue<string>()).Order());
    }

    [Fact]
    public async Task What_the_office_refuses_says_why_and_goes_out_mended_as_a_new_entry()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/b/plover/trial");
        await phone.Page.GetByLabel("Speed").First.FillAsync("240");
        await phone.Page.GetByLabel("Heading").First.FillAsync("90");
        await phone.Page.GetByLabel("RPM on the gauge").First.FillAsync("5600");
        await phone.RecordAsync("Trial");
        await phone.ReadsAsync("Refused. It is kept here until you mend it.");
        await phone.ReadsAsync("is faster than any hire boat");
        await phone.ReadsAsync("1 unsent");
        await phone.FollowAsync("Mend and send again");
        await phone.IsAtAsync("Change: Trial");
        await phone.TypeAsync("runs 1 speed", "24");
        await phone.TapAsync("Send");
        await phone.AllSentAsync();
        Assert.Equal(24, (await dock.Fleet.ExactlyAsync(1, "boats/plover", "trial_run", Ct))[0]["record"]!["runs"]![0]!["speed"]!.GetValue<double>());
    }

    [Fact]
    public async Task A_change_after_sending_is_a_record_of_its_own_that_takes_the_place()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.StrikeAsync("ruff", "rock");
        await phone.AllSentAsync();
        await phone.FollowAsync("Change it");
        await phone.PickAsync("how hard", "scuffed");
        await phone.TapAsync("Send the change");
        await phone.AllSentAsync();
        var strikes = await dock.Fleet.ExactlyAsync(2, "boats/ruff", "strike_reported", Ct);
        Assert.Equal("scuffed", Assert.Single(strikes, s => s["counts"]!.GetValue<bool>())["record"]!["severity"]!.GetValue<string>());
    }

    [Fact]
    public async Task On_a_full_phone_photos_go_and_the_entry_stays()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("skua", "rock");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "prop.png", MimeType = "image/png", Buffer = Web.Frame.AssetFiles.Bytes("dock/icon-512.png") });
        await phone.ReadsAsync("1 photo");
        await phone.Page.EvaluateAsync("""
            () => {
              const { add, put, clear } = IDBObjectStore.prototype;
              let full = true;
              const check = store => { if (full && (store.name === 'entries' || store.name === 'photos')) throw new DOMException('full', 'QuotaExceededError'); };
              IDBObjectStore.prototype.add = function (...a) { check(this); return add.apply(this, a); };
              IDBObjectStore.prototype.put = function (...a) { if (this.name === 'photos') check(this); return put.apply(this, a); };
              IDBObjectStore.prototype.clear = function () { if (this.name === 'photos') full = false; return clear.apply(this); };
              navigator.storage.estimate = async () => ({ quota: 1e9, usage: full ? 999e6 : 990e6 });
            }
            """);
        await phone.GoAsync("/dock/outbox");
        await phone.ReadsAsync("This phone is full.");
        await phone.StrikeAsync("skua", "wood");
        await phone.GoAsync("/dock/outbox");
        await phone.ReadsAsync("This phone is nearly full.");
        await phone.ReadsAsync("2 waiting");
        await phone.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Skua: Strike" }).First.ClickAsync();
        await phone.ReadsAsync("A photo had to go");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(2, "boats/skua", "strike_reported", Ct);
    }

    [Fact]
    public async Task Entries_leave_a_phone_as_a_file_and_another_phone_sends_them()
    {
        var broken = await DockPhone.EnrolledAsync(dock);
        await broken.LoseSignalAsync();
        await broken.StrikeAsync("smew", "rock");
        await broken.GoAsync("/dock/phone");
        await broken.ReadsAsync("1 entry is not sent. That goes into a file first.");
        await broken.GoAsync("/dock/outbox");
        var file = await broken.Page.RunAndWaitForDownloadAsync(() => broken.TapAsync("Export"));
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.OpenAsync("/dock/outbox");
        await phone.Page.Locator("input[type=file]").SetInputFilesAsync(await file.PathAsync());
        await phone.ReadsAsync("1 entry taken in.");
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/smew", "strike_reported", Ct);

        // The broken phone comes back to life: the office has it already.
        await broken.FindSignalAsync();
        await broken.AllSentAsync();
        await dock.Fleet.ExactlyAsync(1, "boats/smew", "strike_reported", Ct);
    }

    [Fact]
    public async Task A_clock_that_is_years_slow_costs_nothing()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.Page.AddInitScriptAsync("{ const D = Date, off = 3 * 365 * 86400000; Date = class extends D { constructor(...a) { if (a.length) super(...a); else super(D.now() - off); } static now() { return D.now() - off; } }; }");
        await phone.Page.ReloadAsync();
        await phone.StrikeAsync("whimbrel", "rock");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        await phone.GoAsync("/dock/phone");
        await phone.ReadsAsync("1,095 days slow");
        await phone.GoAsync("/dock/b/whimbrel");
        await phone.ReadsAsync("As the office had it just now.");
        DockFacts.HappenedNow(Assert.Single(await dock.Fleet.ExactlyAsync(1, "boats/whimbrel", "strike_reported", Ct)));
    }

    [Fact]
    public async Task An_entry_in_the_shape_of_an_older_app_is_sent_and_one_of_a_newer_app_is_kept()
    {
        var phone = await DockPhone.EnrolledAsync(dock);
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("linnet", "wood");
        await phone.Page.EvaluateAsync("""
            () => new Promise((done, failed) => {
              const asked = indexedDB.open('fleetwake-dock');
              asked.onsuccess = () => {
                const tx = asked.result.transaction('entries', 'readwrite');
                const store = tx.objectStore('entries');
                store.getAll().onsuccess = e => {
                  const [entry] = e.target.result;
                  const { shape, ...old } = entry;
                  store.put({ ...old, note: { text: 'by the slip', at: 1 } });
                  store.put({ ...entry, id: crypto.randomUUID(), count: entry.count + 1, shape: 99 });
                };
                tx.oncomplete = () => { asked.result.close(); done(); };
                tx.onerror = failed;
              };
            })
            """);
        await phone.ReopenAsync("/dock/outbox");
        await phone.ReadsAsync("made by a newer version: update the app to send it");
        await phone.FindSignalAsync();
        await dock.Fleet.ExactlyAsync(2, "boats/linnet", "strike_reported", Ct);
        await phone.ReadsAsync("1 unsent");
        var note = await phone.Page.EvaluateAsync<string>("async () => (await (await import(document.querySelector('script[type=module]').src.replace('main.js', 'outbox.js'))).entries()).find(e => e.shape === 2).note");
        Assert.Equal("by the slip", note);
    }
}
