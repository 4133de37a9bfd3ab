using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Histories;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Findings;

/// <content>Which findings are older than their record, when the daemon runs and when it does not.</content>
public sealed partial class FindingStepTests
{
    [Fact]
    public async Task A_finding_is_not_up_to_date_while_the_daemon_has_not_reached_the_record()
    {
        await Outfit("dunlin", "E-14", "P-14");
        await Outfit("turnstone", "E-15", "P-15");
        await Settle();
        Assert.True(await reading.IsUpToDateAsync(Tenant, "dunlin", Ct));
        Assert.Empty(await reading.StaleBoatsAsync(Tenant, Ct));

        await daemon.StopAllAsync();
        await Take(new ReportStrike(At("2026-03-02T10:00:00"), "dunlin", "single", "rock", "bent"));
        Assert.False(await reading.IsUpToDateAsync(Tenant, "dunlin", Ct));
        Assert.Equal(["dunlin"], await reading.StaleBoatsAsync(Tenant, Ct));
        await Take(new RepitchProp(At("2026-03-01T09:00:00"), "P-15", 14.5));
        Assert.Equal(["dunlin", "turnstone"], await reading.StaleBoatsAsync(Tenant, Ct));
        Assert.True(await reading.IsUpToDateAsync("another", "dunlin", Ct));

        await daemon.StartAllAsync();
        await Settle();
        Assert.True(await reading.IsUpToDateAsync(Tenant, "dunlin", Ct));
        Assert.Empty(await reading.StaleBoatsAsync(Tenant, Ct));
    }

    [Fact]
    public async Task Nothing_is_up_to_date_where_no_daemon_ever_ran()
    {
        await using var bare = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("bare", Ct), Ct);
        var record = new RegisterBoat(At("2026-01-01T09:00:00"), "tern", "Tern", "north", "Pacific/Auckland", "salt", ["single"]);
        await new Recorder(bare.Store).TakeAsync(Tenant, RecordKind.Find("boat_registered")!, record, new Arrival("dock-1", Now, null), Ct);
        var there = new FleetReading(bare.Store, bare.Source);
        Assert.False(await there.IsUpToDateAsync(Tenant, "tern", Ct));
        Assert.Equal(["tern"], await there.StaleBoatsAsync(Tenant, Ct));
    }
}
