using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>A record says when something happened, whatever the phone's clock shows, whenever it was set, and whichever phone sends.</summary>
[Collection(AtOldMole.Name)]
public sealed class ClockTests(OldMole dock)
{
    private const int Years = 3 * 365;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_file_of_a_phone_that_is_years_slow_is_sent_by_another_with_the_right_times()
    {
        var slow = await SlowAsync();
        await slow.LoseSignalAsync();
        await slow.StrikeAsync("avocet", "rock");
        await slow.GoAsync("/dock/outbox");
        var file = await slow.Page.RunAndWaitForDownloadAsync(() => slow.TapAsync("Export"));
        await slow.ReadsAsync("In the file: 1 entry with its words, 0 photos.");
        var right = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await right.OpenAsync("/dock/outbox");
        await right.Page.Locator("input[type=file]").SetInputFilesAsync(await file.PathAsync());
        await right.ReadsAsync("1 entry taken in.");
        await right.SendNowAsync();
        await right.AllSentAsync();
        DockFacts.HappenedNow(Assert.Single(await dock.Fleet.ExactlyAsync(1, "boats/avocet", "strike_reported", Ct)));
    }

    [Fact]
    public async Task A_clock_that_is_set_right_before_the_entry_is_sent_moves_nothing()
    {
        var phone = await SlowAsync();
        await phone.LoseSignalAsync();
        await phone.StrikeAsync("brant", "rock");
        await phone.Page.EvaluateAsync("() => { localStorage.off = '0'; }");
        await phone.ReopenAsync("/dock/outbox");
        await phone.FindSignalAsync();
        await phone.AllSentAsync();
        DockFacts.HappenedNow(Assert.Single(await dock.Fleet.ExactlyAsync(1, "boats/brant", "strike_reported", Ct)));
    }

    [Fact]
    public async Task A_time_that_somebody_types_is_that_of_the_dock_and_not_of_the_phone()
    {
        var phone = await SlowAsync();
        var local = TimeZoneInfo.ConvertTime(TimeProvider.System.GetUtcNow().AddHours(-5), TimeZoneInfo.FindSystemTimeZoneById(RunningFleet.Zone));
        await phone.OpenAsync("/dock/b/crake/hours");
        await phone.TypeAsync("Hour meter", "140");
        await phone.UnfoldAsync("Done earlier?");
        await phone.TypeAsync("Date and time at the dock", local.ToString("yyyy-MM-ddTHH:mm"));
        await phone.RecordAsync("Hours");
        await phone.AllSentAsync();
        var read = (await dock.Fleet.ExactlyAsync(1, "engines/e-crake", "hours_read", Ct))[0];
        Assert.InRange((read.Happened() - local).Duration(), TimeSpan.Zero, TimeSpan.FromMinutes(2));
    }

    [Fact]
    public async Task A_change_of_the_time_never_stands_on_the_phone_with_another_time()
    {
        var phone = await DockPhone.EnrolledAsync(dock, at: OldMole.North);
        await phone.StrikeAsync("curlew", "rock");
        await phone.AllSentAsync();
        await phone.FollowAsync("Change it");
        await phone.Page.EvaluateAsync("() => { window.added = []; const { add } = IDBObjectStore.prototype; IDBObjectStore.prototype.add = function (v) { if (this.name === 'entries') added.push(v.happenedAt.slice(0, 16)); return add.call(this, v); }; }");
        await phone.TypeAsync("Date and time at the dock", "2026-11-20T15:30");
        await phone.TapAsync("Send the change");
        await phone.IsAtAsync("Strike");
        Assert.Equal(["2026-11-20T15:30"], await phone.Page.EvaluateAsync<string[]>("added"));
        await phone.AllSentAsync();
        Assert.Single(await dock.Fleet.ExactlyAsync(2, "boats/curlew", "strike_reported", Ct), s => s["counts"]!.GetValue<bool>() && s["record"]!["entry"]!["happenedAt"]!.ToString().StartsWith("2026-11-20T15:30", StringComparison.Ordinal));
    }

    /// <summary>A phone of the dock whose clock has been three years slow all the time.</summary>
    private async Task<DockPhone> SlowAsync()
    {
        var phone = await DockPhone.NewAsync(dock);
        await phone.SetClockAsync(Years);
        await phone.EnrolAsync(await dock.CodeAsync(OldMole.North));
        await phone.IsKeptAsync();

        // The script belongs to this page alone; the next page of the phone gets its own.
        await phone.Window.AddInitScriptAsync("{ const D = Date; const off = () => Number(localStorage.off ?? 0) * 86400000; if (Date.now === D.now && !D.shifted) { Date = class extends D { constructor(...a) { if (a.length) super(...a); else super(D.now() - off()); } static now() { return D.now() - off(); } static shifted = true; }; } }");
        await phone.ReopenAsync();
        return phone;
    }
}
