using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Devices;
using FleetWake.Store.Histories;
using FleetWake.Store.Quarantine;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Dock;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>What a phone sends: taken as a fact, refused where only the office speaks, and kept back once the phone was revoked.</summary>
public sealed class QuarantineTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly DateTimeOffset Morning = new(2026, 6, 6, 20, 0, 0, TimeSpan.Zero);
    private readonly ShiftedTime time = ShiftedTime.From(Morning);
    private readonly DockRecords dock = new();
    private RunningFleet fleet = null!;
    private DockPhone phone = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private QuarantineBook Quarantine => fleet.Service<QuarantineBook>();

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("quarantine", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        await fleet.SendAsync(dock.Outfit("tern", "Tern"), Ct);
        phone = await DockPhone.EnrolledAsync(fleet);
    }

    public async ValueTask DisposeAsync()
    {
        phone.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_phone_records_as_anybody_does_and_the_record_names_it()
    {
        var strike = Strike();
        Assert.Equal("recorded", Outcome(await phone.SendAsync([strike])));
        Assert.True((await phone.SendAsync([strike]))[0]!["repeat"]!.GetValue<bool>());
        Assert.Equal("conflict", Outcome(await phone.SendAsync([strike with { Severity = "broken" }])));
        Assert.Equal([phone.Device], (await StrikesAsync()).Select(s => s.Entry.Device));
    }

    [Fact]
    public async Task It_sends_under_its_own_name_only()
    {
        using var answer = await phone.PostAsync([BatchJson.Write(Strike())], device: "another");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("/device", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_office_decides_is_refused_from_a_phone_and_the_rest_of_the_batch_is_taken()
    {
        foreach (var kind in RecordKind.All)
        {
            using var answer = await phone.PostAsync([BatchJson.Write(kind.Example), BatchJson.Write(Strike())]);
            var results = (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["results"]!.AsArray();
            var officeOnly = results[0]!["refusals"]!.AsArray().Any(r => r!["reason"]!.GetValue<string>() == "office_only");
            Assert.True(officeOnly == DockKinds.OfTheOffice.Contains(kind.Name), kind.Name);
            Assert.Equal("recorded", results[1]!["outcome"]!.GetValue<string>());
        }

        var back = new Retract(dock.At("2026-06-06T09:00:00"), Guid.Parse("0196d7c1-0000-7000-8000-000000000001"), "typed_wrong", Office: true);
        Assert.Equal("office_only", (await phone.SendAsync([back]))[0]!["refusals"]![0]!["reason"]!.GetValue<string>());
        Assert.Empty(OfficeRecord.Of(await OfficeLogAsync()).Prices);
    }

    [Fact]
    public async Task Revoked_midway_its_entries_are_kept_back_and_count_when_somebody_lets_them_through()
    {
        ICommand[] outbox = [.. Enumerable.Range(1, 6).Select(i => Strike() with { Severity = i % 2 == 0 ? "scuffed" : "bent" })];
        Assert.All(await phone.SendAsync(outbox[..3]), r => Assert.Equal("recorded", r!["outcome"]!.GetValue<string>()));
        await RevokeAsync();
        time.Move(TimeSpan.FromDays(2));

        // The answer to the first three was lost on the way: they come again, and are what they were.
        var answers = await phone.SendAsync(outbox);
        Assert.Equal(["recorded", "recorded", "recorded", "kept_back", "kept_back", "kept_back"], answers.Select(a => a!["outcome"]!.GetValue<string>()));
        Assert.Equal(3, (await StrikesAsync()).Count);
        Assert.Equal(3, await Quarantine.WaitingAsync(RunningFleet.Operator, Ct));

        // Twice is harmless, and an id with other content is none of the kept ones.
        Assert.True((await phone.SendAsync(outbox[3..4]))[0]!["repeat"]!.GetValue<bool>());
        Assert.Equal("conflict", Outcome(await phone.SendAsync([Strike() with { Entry = outbox[3].Entry, Severity = "broken" }])));

        time.Move(TimeSpan.FromDays(3));
        var released = outbox[3].Entry!.Id!.Value;
        Assert.All(await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => ReleaseAsync(released))), a => Assert.Equal(Store.Records.Outcome.Recorded, a!.Outcome));
        var strikes = await StrikesAsync();
        Assert.Equal(4, strikes.Count);

        // It counts as it came: by the phone, and with the day on which it was received.
        var late = strikes.Single(s => s.Entry.Id == released).Entry;
        Assert.Equal((phone.Device, 8), (late.Device, late.ReceivedAt.Day));
        Assert.Equal([released], OfficeRecord.Of(await OfficeLogAsync()).Released);
        Assert.Equal("recorded", Outcome(await phone.SendAsync(outbox[3..4])));

        Assert.True(await Quarantine.LeaveOutAsync(RunningFleet.Operator, outbox[4].Entry!.Id!.Value, "boss", Ct));
        Assert.False(await Quarantine.LeaveOutAsync(RunningFleet.Operator, released, "boss", Ct));

        // Enrolled anew, the phone asks what became of them, and sends none again: from it they would pass.
        using var anew = await DockPhone.EnrolledAsync(fleet);
        using var fates = await anew.Http.PostAsJsonAsync("/dock/api/entries/fates", new JsonObject { ["entries"] = new JsonArray([.. outbox.Select(o => (JsonNode)o.Entry!.Id!.Value.ToString())]) }, Ct);
        Assert.Equal(["released", "left_out", "waiting"], (await fates.Content.ReadFromJsonAsync<JsonObject>(Ct))!["fates"]!.AsArray().Select(f => f!["state"]!.GetValue<string>()));
        var kept = await Quarantine.OfAsync(RunningFleet.Operator, 10, Ct);
        Assert.Equal([KeptState.LeftOut, KeptState.Released, KeptState.Waiting], kept.Select(k => k.State).Order().Reverse());
    }

    [Fact]
    public async Task One_that_no_rule_lets_through_says_why_and_stays()
    {
        await RevokeAsync();
        var wrong = Strike() with { Severity = "very_hard" };
        Assert.Equal("kept_back", Outcome(await phone.SendAsync([wrong])));
        var answer = await ReleaseAsync(wrong.Entry!.Id!.Value);
        Assert.Equal(Store.Records.Outcome.Refused, answer!.Outcome);
        var kept = Assert.Single(await Quarantine.OfAsync(RunningFleet.Operator, 10, Ct));
        Assert.Equal(KeptState.Waiting, kept.State);
        Assert.Contains("severity: ", kept.Refusal, StringComparison.Ordinal);
        Assert.Empty(OfficeRecord.Of(await OfficeLogAsync()).Released);
    }

    [Fact]
    public async Task A_revoked_phone_still_cannot_speak_for_the_office_nor_send_what_nobody_could_find_again()
    {
        await RevokeAsync();
        Assert.Equal("refused", Outcome(await phone.SendAsync([new SetPrice(dock.At("2026-06-06T09:00:00"), "prop", 1, "NOK")])));
        Assert.Equal("refused", Outcome(await phone.SendAsync([Strike() with { Entry = dock.At("2026-06-06T09:00:00") with { Id = null } }])));
        Assert.Equal(0, await Quarantine.WaitingAsync(RunningFleet.Operator, Ct));
    }

    [Theory]
    [InlineData(-2 * 365)]
    [InlineData(365)]
    public async Task A_clock_that_is_years_wrong_is_measured_and_the_day_comes_out_right(int days)
    {
        var phonesNow = time.GetUtcNow().AddDays(days);
        var local = TimeZoneInfo.ConvertTime(phonesNow.AddHours(-1), TimeZoneInfo.FindSystemTimeZoneById(RunningFleet.Zone));
        var strike = Strike() with { Entry = dock.At(local.ToString("yyyy-MM-ddTHH:mm:sszzz")) };
        Assert.Equal("recorded", Outcome(await phone.SendAsync([strike], phonesNow)));
        var kept = Assert.Single(await StrikesAsync()).Entry;
        Assert.InRange((kept.Happened() - time.GetUtcNow().AddHours(-1)).Duration(), TimeSpan.Zero, TimeSpan.FromMinutes(5));
    }

    private ReportStrike Strike() => new(dock.At("2026-06-06T10:00:00"), "tern", "single", "rock", "bent");

    private Task<bool> RevokeAsync() => fleet.Service<FleetDevices>().RevokeAsync(RunningFleet.Operator, phone.Device, Ct);

    private Task<Answer?> ReleaseAsync(Guid entry) => Quarantine.ReleaseAsync(RunningFleet.Operator, entry, new Stamp(null, "boss", "2026-06-11T09:00:00", RunningFleet.Zone), Ct);

    private static string Outcome(JsonArray results) => Assert.Single(results)!["outcome"]!.GetValue<string>();

    private async Task<IReadOnlyList<StrikeReported>> StrikesAsync()
    {
        await RunningFleet.UntilAsync("the log", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        return [.. (await fleet.Service<FleetReading>().LogAsync(RunningFleet.Operator, "tern", Ct))!.Facts.OfType<StrikeReported>()];
    }

    private async Task<FactLog> OfficeLogAsync()
    {
        await RunningFleet.UntilAsync("the office", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        return await fleet.Service<FleetReading>().OfficeLogAsync(RunningFleet.Operator, Ct);
    }
}
