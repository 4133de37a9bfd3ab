using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Office;
using FleetWake.Settings;
using FleetWake.Store.Devices;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>How a phone comes to a dock, keeps its place there, and loses it.</summary>
public sealed class EnrolmentTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly DateTimeOffset Morning = new(2026, 6, 6, 20, 0, 0, TimeSpan.Zero);
    private readonly ShiftedTime time = ShiftedTime.From(Morning);
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("enrol", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        var dock = new DockRecords();
        await fleet.SendAsync([new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "Old Mole", RunningFleet.Zone, "salt")], Ct);
        await RunningFleet.UntilAsync("the office", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_code_enrols_one_phone_once_and_the_record_says_so()
    {
        var code = await DockPhone.CodeAsync(fleet);
        using var first = DockPhone.New(fleet);
        using var answer = await first.EnrolAsync(code);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Old Mole", first.Enrolled["dockName"]!.GetValue<string>());
        Assert.Equal("Skerry Bay Hire", first.Enrolled["operatorName"]!.GetValue<string>());
        using var today = await first.Http.GetAsync("/dock/api/today", Ct);
        Assert.Equal(HttpStatusCode.OK, today.StatusCode);

        using var second = DockPhone.New(fleet);
        await RefusedAsync(await second.EnrolAsync(code), HttpStatusCode.Gone, "code-used-or-expired");

        var devices = OfficeRecord.Of(await OfficeLogAsync()).Devices;
        Assert.Equal([(first.Device, "old-mole", false)], devices.Select(d => (d.Device, d.Dock, d.Revoked)));
    }

    [Fact]
    public async Task A_phone_that_carries_another_fleets_entries_is_not_enrolled_and_the_code_still_holds()
    {
        var code = await DockPhone.CodeAsync(fleet);
        using var phone = DockPhone.New(fleet);
        await RefusedAsync(await phone.EnrolAsync(code, carries: "far-isle"), HttpStatusCode.Conflict, "carries-another-fleet");
        using var answer = await phone.EnrolAsync(code, carries: RunningFleet.Operator);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task Of_twenty_phones_that_show_one_code_at_once_one_is_enrolled()
    {
        var code = await DockPhone.CodeAsync(fleet);
        var phones = Enumerable.Range(0, 20).Select(_ => DockPhone.New(fleet)).ToList();
        var answers = await Task.WhenAll(phones.Select(p => p.EnrolAsync(code)));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.Single(OfficeRecord.Of(await OfficeLogAsync()).Devices);
        foreach (var phone in phones) phone.Dispose();
    }

    [Fact]
    public async Task A_code_ends_after_ten_minutes()
    {
        var code = await DockPhone.CodeAsync(fleet);
        time.Move(FleetDevices.CodeLife);
        using var phone = DockPhone.New(fleet);
        await RefusedAsync(await phone.EnrolAsync(code), HttpStatusCode.Gone, "code-used-or-expired");
    }

    [Fact]
    public async Task An_address_that_guesses_codes_is_asked_to_wait()
    {
        using var phone = DockPhone.New(fleet);
        HttpResponseMessage answer;
        var tries = 0;
        do
        {
            answer = await phone.EnrolAsync("not-a-code");
            tries++;
        }
        while (answer.StatusCode == HttpStatusCode.Gone && tries < 100);
        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
        Assert.True(answer.Headers.RetryAfter!.Delta > TimeSpan.Zero);
        Assert.Equal(21, tries);
    }

    [Fact]
    public async Task What_is_no_public_key_of_the_curve_is_refused_and_the_code_stays_good()
    {
        var code = await DockPhone.CodeAsync(fleet);
        using var phone = DockPhone.New(fleet);
        foreach (var key in (JsonObject?[])[null, [], new JsonObject { ["kty"] = "EC", ["crv"] = "P-256", ["x"] = "AQ", ["y"] = "AQ" }, new JsonObject { ["kty"] = "EC", ["crv"] = "P-256", ["x"] = new string('A', 43), ["y"] = new string('A', 43) }])
        {
            using var answer = await phone.Http.PostAsJsonAsync("/dock/api/enrol", new JsonObject { ["code"] = code, ["name"] = "x", ["publicKey"] = key }, Ct);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            Assert.Contains("/publicKey", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.OK, (await phone.EnrolAsync(code)).StatusCode);
    }

    [Fact]
    public async Task The_key_gives_the_next_token_and_the_former_one_holds_ten_minutes_more()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        var former = phone.Enrolled["token"]!.GetValue<string>();
        var answer = await phone.AskTokenAsync(time.GetUtcNow());
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var next = (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!;
        Assert.True(DateTimeOffset.Parse(next["rotateAfter"]!.GetValue<string>()) < DateTimeOffset.Parse(next["tokenUntil"]!.GetValue<string>()));

        Assert.Equal(HttpStatusCode.OK, await TodayAsync(phone, former));
        time.Move(FleetDevices.FormerLife);
        await RefusedAsync(await AskTodayAsync(phone, former), HttpStatusCode.Unauthorized, "token-expired");
        Assert.Equal(HttpStatusCode.OK, await TodayAsync(phone, next["token"]!.GetValue<string>()));
    }

    [Fact]
    public async Task A_token_ends_after_ninety_days_and_the_key_still_gives_the_next()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        time.Move(FleetDevices.TokenLife);
        await RefusedAsync(await AskTodayAsync(phone, phone.Enrolled["token"]!.GetValue<string>()), HttpStatusCode.Unauthorized, "token-expired");
        Assert.Equal(HttpStatusCode.OK, (await phone.AskTokenAsync(time.GetUtcNow())).StatusCode);
    }

    [Fact]
    public async Task A_signature_of_another_clock_is_told_the_time_and_one_that_is_sent_twice_gives_nothing()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        using var wrong = await phone.AskTokenAsync(time.GetUtcNow().AddYears(-2));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        var now = DateTimeOffset.Parse((await wrong.Content.ReadFromJsonAsync<JsonObject>(Ct))!["now"]!.GetValue<string>());
        Assert.InRange(now, time.GetUtcNow().AddMinutes(-1), time.GetUtcNow());

        Assert.Equal(HttpStatusCode.OK, (await phone.AskTokenAsync(now)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await phone.AskTokenAsync(now)).StatusCode);
    }

    [Fact]
    public async Task Another_key_gives_nothing_and_nobody_is_told_of_a_device_that_is_none()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        using var thief = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        await RefusedAsync(await phone.AskTokenAsync(time.GetUtcNow(), thief), HttpStatusCode.Unauthorized, "signature-wrong");
        using var nobody = DockPhone.New(fleet);
        await RefusedAsync(await nobody.AskTokenAsync(time.GetUtcNow()), HttpStatusCode.Unauthorized, "device-unknown");
        await RefusedAsync(await AskTodayAsync(nobody, DeviceToken.New(DeviceToken.NewId())), HttpStatusCode.Unauthorized, "device-unknown");
    }

    [Fact]
    public async Task A_key_of_the_API_opens_no_dock_and_a_phone_no_API()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        Assert.Equal(HttpStatusCode.Unauthorized, (await fleet.Http.GetAsync("/dock/api/today", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.Http.GetAsync("/api/boats", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.Http.PostAsJsonAsync("/api/records", new JsonObject(), Ct)).StatusCode);
    }

    [Fact]
    public async Task A_revoked_phone_reads_nothing_from_that_moment()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        Assert.True(await fleet.Service<FleetDevices>().RevokeAsync(RunningFleet.Operator, phone.Device, Ct));
        await RefusedAsync(await phone.Http.GetAsync("/dock/api/today", Ct), HttpStatusCode.Unauthorized, "device-revoked");
        await RefusedAsync(await phone.AskTokenAsync(time.GetUtcNow()), HttpStatusCode.Unauthorized, "device-revoked");
    }

    [Fact]
    public async Task Nobody_revokes_a_phone_of_another_operator()
    {
        using var phone = await DockPhone.EnrolledAsync(fleet);
        Assert.False(await fleet.Service<FleetDevices>().RevokeAsync("somebody-else", phone.Device, Ct));
        Assert.Equal(HttpStatusCode.OK, (await phone.Http.GetAsync("/dock/api/today", Ct)).StatusCode);
    }

    private async Task<Logbook.Entries.FactLog> OfficeLogAsync()
    {
        await RunningFleet.UntilAsync("the office", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        return await fleet.Service<FleetReading>().OfficeLogAsync(RunningFleet.Operator, Ct);
    }

    private static Task<HttpResponseMessage> AskTodayAsync(DockPhone phone, string token)
    {
        phone.Carry(token);
        return phone.Http.GetAsync("/dock/api/today", Ct);
    }

    private static async Task<HttpStatusCode> TodayAsync(DockPhone phone, string token) => (await AskTodayAsync(phone, token)).StatusCode;

    private static async Task RefusedAsync(HttpResponseMessage answer, HttpStatusCode status, string type)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("urn:fleetwake:problem:" + type, (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["type"]!.GetValue<string>());
    }
}
