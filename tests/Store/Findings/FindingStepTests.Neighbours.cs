using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Store.Tests.Findings;

/// <content>Boats that share an engine or a prop: what is told of one reaches the other.</content>
public sealed partial class FindingStepTests
{
    [Fact]
    public async Task A_meter_read_late_on_the_boat_an_engine_came_from_reaches_the_boat_that_has_it_now()
    {
        await Outfit("xena", "E-11", "P-11");
        await Take(new RegisterBoat(At("2026-01-01T09:00:00"), "yolo", "yolo", "north", "Pacific/Auckland", "salt", ["single"]));
        await Take(new FitEngine(At("2026-03-01T09:00:00"), "yolo", "single", "E-11"));
        await Settle();
        await Take(Trial("xena", "2026-02-01T10:00:00", 5600, 140));
        await Settle();
        Assert.Equal(140, (await reading.FindingAsync(Tenant, "yolo", Ct))!.Finding.Positions[0].EngineHours);
    }

    [Fact]
    public async Task An_engine_that_went_to_a_third_boat_late_ends_the_question_on_the_boat_that_has_the_prop_now()
    {
        await Outfit("weka", "E-14", "P-14");
        await Outfit("rail", "E-15", "P-15");
        await Take(new RegisterBoat(At("2026-01-01T09:00:00"), "moho", "moho", "north", "Pacific/Auckland", "salt", ["single"]));
        await Take(new MountProp(At("2026-04-10T09:00:00"), "rail", "single", "P-14"));
        await Settle();
        Assert.Contains((await reading.FindingAsync(Tenant, "rail", Ct))!.Finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
        await Take(new FitEngine(At("2026-04-01T09:00:00"), "moho", "single", "E-14"));
        await Settle();
        Assert.DoesNotContain((await reading.FindingAsync(Tenant, "rail", Ct))!.Finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
    }

    [Fact]
    public async Task A_late_mounting_on_one_boat_ends_the_question_on_the_other()
    {
        await Outfit("nene", "E-12", "P-12");
        await Outfit("ibis", "E-13", "P-13");
        await Take(new MountProp(At("2026-04-10T09:00:00"), "ibis", "single", "P-12"));
        await Settle();
        Assert.Contains((await reading.FindingAsync(Tenant, "ibis", Ct))!.Finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
        await Take(new RemoveProp(At("2026-04-01T09:00:00"), "nene", "single", "other_size"));
        await Settle();
        Assert.DoesNotContain((await reading.FindingAsync(Tenant, "ibis", Ct))!.Finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
    }
}
