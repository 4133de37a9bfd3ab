using System.Net;
using System.Text;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Office;
using Ical.Net;
using Ical.Net.CalendarComponents;

namespace FleetWake.Journey.Tests.Api;

/// <summary>The calendar of due dates, as a calendar program reads it.</summary>
public sealed class DueCalendarTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private RunningFleet fleet = null!;
    private HttpClient anybody = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("calendar", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ReadingFleet.Autumn(), ct: Ct);
        anybody = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        await fleet.SendAsync(
        [
            .. dock.Outfit("tern", "Tern; the first, of the line"), .. dock.Outfit("skua", "Skua"),
            new Inspect(dock.At("2026-08-31T16:00:00"), "skua", "single", "fit"),
            new ReportStrike(dock.At("2026-03-02T10:00:00"), "tern", "single", "rock", "bent"),
            new SetInspectionRule(dock.At("2026-03-03T10:00:00"), "grease", "grease the shaft", "interval", "duty_done", 60),
        ], Ct);
    }

    public async ValueTask DisposeAsync()
    {
        anybody.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_calendar_program_reads_each_duty_on_its_day_and_keeps_it_by_its_id()
    {
        var path = await PathAsync(KeyScope.Calendar);
        await RunningFleet.UntilAsync("the duties of both boats", async () => (await EventsAsync(path)).Count == 6, Ct);
        var events = await EventsAsync(path);
        var skua = events.Single(e => e.Summary!.EndsWith("Skua: six-monthly inspection", StringComparison.Ordinal));
        Assert.Equal(new DateOnly(2027, 2, 28), skua.Start!.Date); // six months after 31 August
        Assert.True(skua.IsAllDay);
        Assert.All(events, e => Assert.NotNull(e.DtStamp));
        var strike = events.Single(e => e.Summary == "Overdue since 2026-03-02: Tern; the first, of the line: inspection after a strike");
        Assert.Equal(new DateOnly(2026, 9, 30), strike.Start!.Date); // what is overdue lies on today
        Assert.Single(events, e => e.Summary!.Contains("re-torque", StringComparison.OrdinalIgnoreCase)); // a strike is a sign that Tern was out
        Assert.Equal(2, events.Count(e => e.Summary!.EndsWith("grease the shaft", StringComparison.Ordinal)));
        Assert.Equal(events.Select(e => e.Uid).Order(), (await EventsAsync(path)).Select(e => e.Uid).Distinct().Order());
        Assert.Empty(await EventsAsync(path + "?dock=nowhere"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await anybody.GetAsync(path + "?dok=nowhere", Ct)).StatusCode);
    }

    [Fact]
    public async Task The_text_is_as_the_standard_asks()
    {
        var path = await PathAsync(KeyScope.Calendar);
        using var response = await anybody.GetAsync(path, Ct);
        Assert.Equal("text/calendar", response.Content.Headers.ContentType!.MediaType);
        var text = await response.Content.ReadAsStringAsync(Ct);
        Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
        Assert.All(text.Split("\r\n"), line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75, line));
        Assert.StartsWith("BEGIN:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.Contains("BEGIN:VTIMEZONE\r\nTZID:Pacific/Auckland\r\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_of_another_kind_opens_no_calendar_and_a_calendar_key_opens_nothing_else()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await anybody.GetAsync(await PathAsync(KeyScope.Read), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await anybody.GetAsync(DueCalendar.PathOf("fw_nobody"), Ct)).StatusCode);
        var key = await fleet.Service<FleetOperators>().MakeKeyAsync(RunningFleet.Operator, "calendar", [KeyScope.Calendar], Ct);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/boats") { Headers = { { "Authorization", $"Bearer {key}" } } };
        Assert.Equal(HttpStatusCode.Forbidden, (await anybody.SendAsync(request, Ct)).StatusCode);
    }

    [Fact]
    public async Task A_revoked_key_closes_the_calendar()
    {
        var path = await PathAsync(KeyScope.Calendar);
        Assert.Equal(HttpStatusCode.OK, (await anybody.GetAsync(path, Ct)).StatusCode);
        await fleet.Service<FleetOperators>().RevokeKeyAsync(KeySecret.IdOf(path.Split('/')[2])!, Ct);
        Assert.Equal(HttpStatusCode.NotFound, (await anybody.GetAsync(path, Ct)).StatusCode);
    }

    private async Task<string> PathAsync(KeyScope scope) =>
        DueCalendar.PathOf(await fleet.Service<FleetOperators>().MakeKeyAsync(RunningFleet.Operator, "calendar", [scope], Ct));

    private async Task<List<CalendarEvent>> EventsAsync(string path) => [.. Calendar.Load(await anybody.GetStringAsync(path, Ct))!.Events];
}
