using System.Net;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Office;

/// <summary>The analyst's pack of a month, by its address.</summary>
public sealed class AnalystPagesTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_month_has_a_pack_when_its_last_day_is_over_at_the_office_and_until_then_the_page_says_when()
    {
        var time = ShiftedTime.From(new DateTimeOffset(2026, 3, 31, 23, 0, 0, TimeSpan.FromHours(13)));
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("analystpages", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        await fleet.SendAsync(new DockRecords(51).Outfit("tern", "Tern"), Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        using var office = await SignInHttp.AsAsync(fleet, Role.Analyst, "ana-1");
        Assert.Contains("records.csv", (await office.GetAsync("/office/analyst/2026-02")).Text, StringComparison.Ordinal);
        foreach (var (path, from) in new[] { ("2026-03", "2026-04-01"), ("2026-03/records.csv", "2026-04-01"), ("2031-12", "2032-01-01") })
        {
            var (status, text, _) = await office.GetAsync($"/office/analyst/{path}");
            Assert.Equal(HttpStatusCode.NotFound, status);
            Assert.Contains("is not over yet", text, StringComparison.Ordinal);
            Assert.Contains($"from {from} on", text, StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await office.GetAsync("/office/analyst/9999-12")).Status);
        time.Move(TimeSpan.FromMinutes(61));
        Assert.Contains("records.csv", (await office.GetAsync("/office/analyst/2026-03")).Text, StringComparison.Ordinal);
    }
}
