using System.Net;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Office;

/// <summary>What a record got wrong is put right where the question about it stands.</summary>
public sealed class MendingTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new(41);
    private RunningFleet fleet = null!;
    private SignInHttp office = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("mending", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        office = await SignInHttp.AsAsync(fleet, Role.Operator, "office-1");
        await SendAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 5500, 110)]);
    }

    public async ValueTask DisposeAsync()
    {
        office.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_misread_hour_meter_is_put_right_beside_its_question_and_is_not_asked_about_again()
    {
        var wrong = new ReadHours(dock.At("2026-02-03T09:00:00"), "e-tern", 1120);
        await SendAsync([wrong, new ReadHours(dock.At("2026-02-05T09:00:00"), "e-tern", 116)]);
        var page = (await office.GetAsync("/office/questions")).Text;
        var path = $"/office/mend/engine/e-tern/{wrong.Entry!.Id}";
        Assert.Contains($"action=\"{path}/correct\"", page, StringComparison.Ordinal);
        Assert.Contains("The meter did show that", page, StringComparison.Ordinal);

        var refused = await office.PostAsync("/office/questions", path + "/correct", ("hours", "a hundred"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("value=\"a hundred\"", refused.Text, StringComparison.Ordinal);

        var sent = await office.PostAsync("/office/questions", path + "/correct", ("hours", "112"), ("to", "/office/questions"));
        Assert.Equal("/office/questions?done=corrected", sent.Location);
        var after = (await office.GetAsync(sent.Location!)).Text;
        Assert.Contains("No question is open", after, StringComparison.Ordinal);
        Assert.Contains("the correction counts in its place", after, StringComparison.Ordinal);
        var facts = (await fleet.Service<FleetReading>().SettledLogAsync(RunningFleet.Operator, StreamName.Engine("e-tern"), Ct))!.Value.Counting.Facts.OfType<HoursRead>();
        Assert.Equal([112, 116], facts.Select(f => f.Hours));
    }

    [Fact]
    public async Task A_misread_tachometer_is_put_right_and_everything_else_of_the_trial_stays()
    {
        var wrong = dock.Trial("tern", "2026-02-02T10:00:00", 550, 111);
        await SendAsync([wrong]);
        var page = (await office.GetAsync("/office/questions?boat=tern")).Text;
        Assert.Contains("name=\"runs-0-tachometers-0-rpm\"", page, StringComparison.Ordinal);
        Assert.Contains("Leave the trial out", page, StringComparison.Ordinal);
        await office.PostAsync("/office/questions", $"/office/mend/boat/tern/{wrong.Entry!.Id}/correct", ("runs-0-tachometers-0-rpm", "5500"), ("runs-1-tachometers-0-rpm", "5510"));
        var trial = (await fleet.Service<FleetReading>().SettledLogAsync(RunningFleet.Operator, StreamName.Boat("tern"), Ct))!.Value.Counting.Facts.OfType<Logbook.Trials.TrialRun>().Last();
        Assert.Equal([5500, 5510], trial.Runs.Select(r => r.Tachometers[0].Rpm));
        Assert.Equal((2, 111, 270), (trial.People, trial.Meters[0].Hours, trial.Runs[1].HeadingDegrees));
        Assert.Equal(wrong.Entry.Id, trial.Entry.Amends);
        Assert.Equal(new DateTime(2026, 2, 2, 10, 0, 0), trial.Entry.HappenedAt.DateTime);
    }

    [Fact]
    public async Task Where_a_prop_is_is_answered_by_a_boat_and_the_other_record_is_taken_back()
    {
        var other = new MountProp(dock.At("2026-03-01T10:00:00"), "wren", "single", "p-tern", 91);
        await SendAsync([.. dock.Outfit("wren", "Wren").Where(r => r is not MountProp), other]);
        var page = (await office.GetAsync("/office/questions")).Text;
        Assert.Contains("It is on Tern", page, StringComparison.Ordinal);
        Assert.Contains("It is on Wren", page, StringComparison.Ordinal);
        var sent = await office.PostAsync("/office/questions", $"/office/mend/boat/wren/{other.Entry!.Id}/take-back", ("why", "wrong_subject"), ("to", "/office/questions"));
        Assert.Equal("/office/questions?done=taken-back", sent.Location);
        Assert.DoesNotContain("is on record", (await office.GetAsync("/office/questions")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_strike_told_of_the_wrong_boat_is_taken_back_from_the_boats_own_page()
    {
        var strike = new ReportStrike(dock.At("2026-03-02T16:00:00"), "tern", "single", "rock", "bent");
        await SendAsync([strike]);
        var path = $"/office/mend/boat/tern/{strike.Entry!.Id}";
        Assert.Contains($"href=\"{path}\"", (await office.GetAsync("/office/boats/tern")).Text, StringComparison.Ordinal);
        Assert.Contains("Take it back", (await office.GetAsync(path)).Text, StringComparison.Ordinal);
        var sent = await office.PostAsync(path, path + "/take-back", ("why", "wrong_subject"), ("to", "https://elsewhere.example/"));
        Assert.Equal("/office/boats/tern?done=taken-back", sent.Location);
        var after = (await office.GetAsync(sent.Location!)).Text;
        Assert.Contains("<del><bdi>Strike on rock", after, StringComparison.Ordinal);
        Assert.DoesNotContain($"href=\"{path}\"", after, StringComparison.Ordinal);
        Assert.Contains("counts no more", (await office.GetAsync(path)).Text, StringComparison.Ordinal);

        // Whoever may not record such a thing is not offered to put it right.
        using var analyst = await SignInHttp.AsAsync(fleet, Role.Analyst, "analyst-1");
        Assert.DoesNotContain("/office/mend/", (await analyst.GetAsync("/office/boats/tern")).Text, StringComparison.Ordinal);
    }

    private async Task SendAsync(IReadOnlyList<ICommand> records)
    {
        Assert.DoesNotContain(await fleet.SendAsync(records, Ct), r => (string?)r!["outcome"] == "refused");
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }
}
