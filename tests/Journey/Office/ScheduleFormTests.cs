using System.Net;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Schedules;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Office;

/// <summary>When digests go out, by the form of the office.</summary>
public sealed class ScheduleFormTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_line_that_never_comes_is_refused_by_form_and_record_and_a_dock_that_nobody_opened_can_be_chosen_with_its_own_clock()
    {
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("scheduleforms", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        var dock = new DockRecords(71);
        var boat = Logbook.Boats.RegisterBoat.Example with { Entry = dock.At("2026-01-01T09:00:00"), Boat = "tern", Dock = "vagar", DockZone = "Atlantic/Faroe" };
        await fleet.SendAsync([boat], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct) is not null, Ct);
        using var office = await SignInHttp.AsAsync(fleet, Role.Manager, "boss-1");

        var (status, text, _) = await office.PostAsync("/office/rules", "/office/rules/schedule", ("digest", "due_list"), ("rhythm", "cron"), ("cron", "0 30 6 30 2 ?"), ("holidays", "next_day"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("ames no day within 8 years from now", text, StringComparison.Ordinal);
        Assert.Contains("value=\"0 30 6 30 2 ?\"", text, StringComparison.Ordinal);
        Assert.Contains("<option value=\"vagar\"", text, StringComparison.Ordinal);
        Assert.Contains("by the clock of each dock; for readers of the whole fleet by that of Pacific/Auckland", text, StringComparison.Ordinal);

        var record = await fleet.SendAsync([TimeDigest.Example with { Entry = dock.At("2026-05-01T09:00:00"), Rhythm = "cron", Weekdays = null, LocalTime = null, SeasonFrom = null, SeasonUntil = null, Cron = "0 30 6 30 2 ?" }], Ct, "office");
        Assert.Contains("names no day within 8 years", record.ToJsonString(), StringComparison.Ordinal);

        await office.PostAsync("/office/rules", "/office/rules/schedule", ("digest", "due_list"), ("rhythm", "daily"), ("localTime", "06:45"), ("dock", "vagar"), ("holidays", "next_day"));
        await RunningFleet.UntilAsync("the schedule", async () => (await fleet.Service<FleetReading>().OfficeAsync(RunningFleet.Operator, Ct)).Schedules.Set.Count == 1, Ct);
        Assert.Contains("Every day at 06:45 (Atlantic/Faroe)", (await office.GetAsync("/office/rules")).Text, StringComparison.Ordinal);
    }
}
