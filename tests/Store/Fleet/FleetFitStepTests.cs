using System.Text.Json;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Fleet;

/// <summary>What a fleet has shown becomes a fact, once, and every finding leans on the newest.</summary>
public sealed class FleetFitStepTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await StoredFleet.OnAsync(await postgres.NewDatabaseAsync("fit", Ct));

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_fit_is_the_first_of_its_fleet_and_every_boat_is_assessed_anew_under_it()
    {
        await Boats(5);
        await fleet.SettledAsync();
        Assert.All(await fleet.Reading.FindingsAsync(StoredFleet.Tenant, Ct), f => Assert.Equal((0, 0), (f.PriorVersion, f.Finding.PriorNumber)));

        var fit = await fleet.FitAsync();
        await fleet.SettledAsync();

        Assert.Equal((FitOutcome.Recorded, 1, 5, 20), (fit.Outcome, fit.Newest!.Number, fit.Newest.Boats, fit.Newest.Trials));
        Assert.Equal(new DateOnly(2026, 5, 4), fit.Newest.Entry.Date());
        var findings = await fleet.Reading.FindingsAsync(StoredFleet.Tenant, Ct);
        Assert.Equal(5, findings.Count);
        Assert.All(findings, f => Assert.Equal((1, 1), (f.PriorVersion, f.Finding.PriorNumber)));
        Assert.All(findings, f => Assert.Contains($"/1/{Assess.Method}", f.Id, StringComparison.Ordinal));
        // Those under number 0 are kept.
        Assert.Equal(5L, await fleet.AskAsync<long>("select count(distinct data ->> 'boat') from fleetwake.mt_doc_finding where (data ->> 'priorVersion')::int = 0"));
    }

    [Fact]
    public async Task A_finding_can_be_made_again_from_the_logs_and_the_fit_of_its_number()
    {
        await Boats(4);
        await fleet.FoldedAsync();
        await fleet.FitAsync();
        await fleet.SettledAsync();
        var stored = await fleet.Reading.FindingAsync(StoredFleet.Tenant, "boat-2", Ct);
        // More records and another fit have come since; the finding of then stays what it was.
        await fleet.WearingAsync("late", 35);
        await fleet.FoldedAsync();
        await fleet.FitAsync(FitWish.Always);

        await using var session = fleet.Database.Store.QuerySession(StoredFleet.Tenant);
        var dossier = await Dossiers.LoadAsync(session, "boat-2", Ct);
        var again = Assess.Boat(dossier, FleetPriors.Of(await fleet.Reading.FittedPriorAsync(StoredFleet.Tenant, stored!.PriorVersion, Ct)));

        Assert.Equal(1, stored.PriorVersion);
        Assert.Equal(JsonSerializer.Serialize(stored.Finding, LogbookJson.Options), JsonSerializer.Serialize(again, LogbookJson.Options));
    }

    [Fact]
    public async Task The_stream_of_the_fleet_is_not_folded_and_a_rebuild_leaves_the_logs_as_they_were()
    {
        await Boats(2);
        await fleet.FoldedAsync();
        await fleet.FitAsync();
        await fleet.FitAsync(FitWish.Always);
        await fleet.FoldedAsync();
        Assert.Equal(0L, await fleet.AskAsync<long>("select count(*) from fleetwake.mt_doc_fact_log where id = 'fleet'"));
        Assert.Equal(2L, await fleet.AskAsync<long>("select version from fleetwake.mt_streams where id = 'fleet'"));
    }

    [Fact]
    public async Task A_fleet_without_a_usable_trial_and_one_in_which_nothing_moved_record_nothing()
    {
        await fleet.WearingAsync("tern", 0, trials: 0);
        await fleet.FoldedAsync();
        Assert.Equal(FitOutcome.NothingToLearn, (await fleet.FitAsync(FitWish.Always)).Outcome);
        Assert.Equal(0, await fleet.RecordedAsync());

        await Boats(4);
        await fleet.FoldedAsync();
        Assert.Equal(FitOutcome.Recorded, (await fleet.FitAsync()).Outcome);
        Assert.Equal(FitOutcome.NotMoved, (await fleet.FitAsync()).Outcome);
        Assert.Equal(1, await fleet.RecordedAsync());

        // What was asked for is recorded all the same, and a month later so is what did not move.
        Assert.Equal(2, (await fleet.FitAsync(FitWish.Always)).Newest!.Number);
        fleet.Time.Set(fleet.Time.GetUtcNow().AddDays(31));
        var month = await fleet.FitAsync();
        Assert.Equal((FitOutcome.Recorded, 3), (month.Outcome, month.Newest!.Number));
    }

    [Fact]
    public async Task Workers_side_by_side_record_one_fit_and_nobody_looks_again_until_records_and_a_night_have_come()
    {
        await Boats(4);
        await fleet.FoldedAsync();
        // The records came before last night by this clock: it need not be quiet.
        fleet.Time.Set(TimeProvider.System.GetUtcNow().AddDays(2));
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => fleet.Step().FitDueAsync(Ct))));
        Assert.Equal(1, await fleet.RecordedAsync());

        fleet.Time.Set(fleet.Time.GetUtcNow().AddDays(40));
        await fleet.Step().FitDueAsync(Ct);
        Assert.Equal(1, await fleet.RecordedAsync());

        await fleet.TakeAsync(fleet.Trial("boat-1", "2026-04-02T10:00:00", 5700, 190));
        await fleet.FoldedAsync();
        await fleet.Step().FitDueAsync(Ct);
        Assert.Equal(2, await fleet.RecordedAsync());
        await fleet.Step().FitDueAsync(Ct);
        Assert.Equal(2, await fleet.RecordedAsync());
    }

    [Fact]
    public async Task Workers_that_are_all_told_to_record_give_each_fit_a_number_of_its_own()
    {
        await Boats(2);
        await fleet.FoldedAsync();
        var fits = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => fleet.FitAsync(FitWish.Always))));
        Assert.Equal([1, 2, 3, 4], fits.Select(f => f.Newest!.Number).Order());
    }

    [Fact]
    public async Task A_boat_that_cannot_be_read_is_left_out_and_the_others_are_fitted()
    {
        await Boats(4);
        await fleet.FoldedAsync();
        await fleet.AskAsync<object>("update fleetwake.mt_doc_fact_log set data = '{\"id\": \"boat/boat-3\", \"facts\": 3}' where id = 'boat/boat-3'");
        var fit = await fleet.FitAsync();
        Assert.Equal((FitOutcome.Recorded, 3), (fit.Outcome, fit.Newest!.Boats));
        Assert.Equal(["boat-3"], fit.LeftOut);
        var (name, look) = Assert.Single(await fleet.Reading.FitLooksAsync(Ct));
        Assert.Equal(StoredFleet.Tenant, name);
        Assert.StartsWith("boat-3 (", look.LeftOut, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fit_that_fails_is_remembered_and_tried_again_after_an_hour()
    {
        await Boats(2);
        await fleet.FoldedAsync();
        fleet.Time.Set(TimeProvider.System.GetUtcNow().AddDays(2));
        await fleet.AskAsync<object>("alter table fleetwake.mt_streams add constraint none check (id <> 'fleet')");
        await fleet.Step().FitDueAsync(Ct);
        Assert.NotNull(Assert.Single(await fleet.Reading.FitLooksAsync(Ct)).Look.FailedAt);
        await fleet.AskAsync<object>("alter table fleetwake.mt_streams drop constraint none");

        await fleet.Step().FitDueAsync(Ct);
        Assert.Equal(0, await fleet.RecordedAsync());
        fleet.Time.Set(fleet.Time.GetUtcNow().AddHours(1));
        await fleet.Step().FitDueAsync(Ct);
        Assert.Equal(1, await fleet.RecordedAsync());
        Assert.Null(Assert.Single(await fleet.Reading.FitLooksAsync(Ct)).Look.FailedAt);
    }

    [Fact]
    public async Task Findings_of_a_past_day_lean_on_the_fit_that_was_the_newest_then_and_before_the_first_on_the_first()
    {
        await Boats(2);
        await fleet.SettledAsync();
        Assert.Equal([0, 0], await NumbersOn("2026-05-04"));
        await fleet.FitAsync();
        fleet.Time.Set(new DateTimeOffset(2026, 6, 10, 23, 0, 0, TimeSpan.Zero)); // the 11th in Auckland
        await fleet.FitAsync(FitWish.Always);
        Assert.Equal([1, 1], await NumbersOn("2026-03-01"));
        Assert.Equal([1, 1], await NumbersOn("2026-05-04"));
        Assert.Equal([1, 1], await NumbersOn("2026-06-10"));
        Assert.Equal([2, 2], await NumbersOn("2026-06-11"));
    }

    private async Task<IEnumerable<int>> NumbersOn(string day) =>
        (await fleet.Reading.FindingsOnAsync(StoredFleet.Tenant, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), Ct)).Select(f => f.PriorNumber);

    private async Task Boats(int count)
    {
        for (var i = 1; i <= count; i++) await fleet.WearingAsync($"boat-{i}", 4 * i);
    }
}
