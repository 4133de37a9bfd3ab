using System.Net;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Frame;

namespace FleetWake.Journey.Tests.Office;

/// <summary>What the office's pages say is said in words and names, and as the reader reads.</summary>
public sealed class WordsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new(43);
    private RunningFleet fleet = null!;
    private SignInHttp office = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("office_words", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        office = await SignInHttp.AsAsync(fleet, Role.Manager, "office-1");
        await SendAsync([new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "The Old Mole", RunningFleet.Zone, "salt", "rock"), .. dock.Outfit("tern", "Tern")]);
    }

    public async ValueTask DisposeAsync()
    {
        office.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_part_of_the_chart_that_cannot_be_drawn_is_said_to_be_none()
    {
        for (var i = 0; i < 3; i++) await fleet.SendAsync([dock.Trial("tern", $"2026-0{1 + i}-20T10:00:00", 5650, 100 + (25 * i))], Ct);
        await SendAsync([]);
        foreach (var (query, said) in ((string, string)[])[("from=400&to=200", "must be less than the last"), ("from=5000&to=6000", "Nothing lies between those hours"), ("from=soon&to=", "Give hours in figures")])
            Assert.Contains(said, (await office.GetAsync($"/office/boats/tern?at=single&{query}")).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("the whole chart is shown", (await office.GetAsync("/office/boats/tern?at=single&from=110&to=140")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_statement_handed_to_a_customer_names_no_device_and_no_entry()
    {
        var strike = new ReportStrike(dock.At("2026-03-02T16:00:00"), "tern", "single", "rock", "bent");
        await SendAsync([strike]);
        await office.PostAsync("/office/claims?boat=tern", "/office/claims/opened", ("boat", "tern"), ("position", "single"), ("hire", "hire-90"), ("strike", strike.Entry!.Id.ToString()!), ("deadline", "2026-12-24"));
        var claim = (await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct))!.Finding.ClaimsDue.Single().Claim;
        Assert.Equal($"/office/claims/{claim}/statement", (await office.SeeAsync($"/office/claims/{claim}")).Location);
        var text = (await office.GetAsync($"/office/claims/{claim}/statement")).Text;
        var article = text[text.IndexOf("<article", StringComparison.Ordinal)..text.IndexOf("</article>", StringComparison.Ordinal)];
        Assert.Contains("Claim for hire hire-90", article, StringComparison.Ordinal);
        foreach (var machine in (string[])["dock-1", claim.ToString(), "told for"]) Assert.DoesNotContain(machine, article, StringComparison.Ordinal);
        Assert.Contains($"/office/claims/{claim}/statement", (await office.GetAsync("/office/boats/tern")).Text, StringComparison.Ordinal);
        Assert.Contains($"/office/claims/{claim}/statement", (await office.GetAsync("/office/due?when=all")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Records_and_sentences_read_in_words_and_names()
    {
        await SendAsync([
            new RetorqueNut(dock.At("2026-02-02T09:00:00"), "tern", "single", 35, "newton_metre", true), new ReportStrike(dock.At("2026-03-02T16:00:00"), "tern", "single", "rock", "bent"),
            new RegisterBoat(dock.At("2026-01-01T09:00:00"), "wren", "The Wren", "old-mole", RunningFleet.Zone, "salt", ["single"]),
            new FitEngine(dock.At("2026-03-03T09:30:00"), "wren", "single", "e-tern", 120),
        ]);
        var tern = System.Net.WebUtility.HtmlDecode((await office.GetAsync("/office/boats/tern")).Text);
        Assert.Contains("Nut tightened again to 35\u00A0N\u00A0m", tern, StringComparison.Ordinal);
        Assert.Contains("Boat registered: Tern, at home at The Old Mole, salt water", tern, StringComparison.Ordinal);
        Assert.DoesNotContain("torque unit", tern, StringComparison.Ordinal);
        Assert.DoesNotContain("id tern", tern, StringComparison.Ordinal);
        var wren = (await office.GetAsync("/office/boats/wren")).Text;
        Assert.Contains("Engine Skerry 50 (e-tern) was struck (bent) on Tern on", wren, StringComparison.Ordinal);
        Assert.Contains("id wren", wren, StringComparison.Ordinal);
        Assert.Contains("Engine Skerry 50 (e-tern) was struck", (await office.GetAsync("/office")).Text, StringComparison.Ordinal);
        var kinds = (await office.GetAsync("/office/import")).Text;
        Assert.Contains("<option value=\"strike_reported\">Strike</option>", kinds, StringComparison.Ordinal);
        Assert.DoesNotContain(">contradiction_settled<", kinds, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_morning_shows_what_waits_and_what_happened_since_yesterday()
    {
        var now = TimeZoneInfo.ConvertTime(TimeProvider.System.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(RunningFleet.Zone)).AddMinutes(-5);
        await SendAsync([dock.Trial("tern", "2026-02-02T10:00:00", 550, 111), new ReportStrike(dock.At($"{now:yyyy-MM-ddTHH:mm:ss}"), "tern", "single", "rock", "bent")]);
        var fleetPage = (await office.GetAsync("/office")).Text;
        Assert.Matches("Questions<span class=\"menu-count\">1", fleetPage);
        Assert.Contains("Since yesterday", fleetPage, StringComparison.Ordinal);
        Assert.Contains("strike, bent", fleetPage, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentences_read_numbers_and_dates_as_the_reader_does()
    {
        var own = new Measures(new Store.People.PersonPreferences("") { Numbers = Store.People.NumberReading.Comma, Dates = Store.People.DateReading.DayFirst });
        Assert.Equal("Was read at 5\u00A0500 RPM on 1 Feb 2026, band 4\u00A0500 to 5\u00A0500: 0,05 a year", own.Say("Was read at 5500 RPM on 2026-02-01, band 4500 to 5500: 0.05 a year"));
        Assert.Equal("Prop P-2026 of 11.5.1 since 2026", Measures.Usual.Say("Prop P-2026 of 11.5.1 since 2026"));
    }

    private async Task SendAsync(IReadOnlyList<ICommand> records)
    {
        if (records.Count > 0) Assert.DoesNotContain(await fleet.SendAsync(records, Ct), r => (string?)r!["outcome"] == "refused");
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }
}
