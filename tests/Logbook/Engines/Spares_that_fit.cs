using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Engines;

public class Spares_that_fit
{
    private static readonly StateEngineFit Engine = new(Dock.At("2026-01-02T08:00", "engine fit"), "e1", null, 13, "hub-21", "washer-4", "right", 13.5);
    private static readonly StatePropFit Prop = new(Dock.At("2026-01-02T08:01", "prop fit"), "p1", null, 13, "hub-21", "washer-4");
    private static readonly StoreProp Stored = new(Dock.At("2026-01-06T08:00", "stored"), "p1", "jetty");

    [Fact]
    public void One_that_agrees_in_everything_fits()
    {
        var spare = Only(Now());
        Assert.Equal(("p1", "jetty", FitAnswer.Fits, 13, PropMaterial.Aluminium), (spare.Prop, spare.Dock, spare.Answer, spare.PitchInches, spare.Material));
        Assert.Empty(spare.Points);
    }

    [Fact]
    public void One_thing_that_keeps_it_is_told()
    {
        NearMiss("it turns left, the engine's prop turns right", Now(prop: Dock.Prop() with { Rotation = "left" }));
        NearMiss("it is 13.25 in across, 13 in is the most that turns free", Now(Engine with { LargestDiameterInches = 13 }));
        NearMiss("it wants thrust washer washer-5, the engine takes washer-4", Now(fit: Prop with { ThrustWasher = "washer-5" }));
        NearMiss("its spline has 15 teeth, the shaft's has 13", Now(Engine with { HubKit = null }, Prop with { SplineTeeth = 15 }));
        NearMiss("its spline is b, the shaft's is a", Now(Engine with { HubKit = null, Spline = "a" }, Prop with { Spline = "b" }));
    }

    [Fact]
    public void A_largest_diameter_that_is_just_reached_fits() =>
        Assert.Equal(FitAnswer.Fits, Only(Now(Engine with { LargestDiameterInches = 13.25 })).Answer);

    [Fact]
    public void Two_things_that_keep_it_leave_it_out()
    {
        var fits = Now(Engine with { LargestDiameterInches = 13, Rotation = "left" });
        Assert.Empty(fits.Spares);
        Assert.Equal(1, fits.Others);
    }

    [Fact]
    public void What_nobody_stated_is_not_taken_to_fit()
    {
        var spare = Only(Now(Engine with { Rotation = null }));
        Assert.Equal(FitAnswer.NotStated, spare.Answer);
        Assert.Equal(["rotation of the engine is not stated"], spare.Points.Select(p => p.Sentence));
        Assert.Equal(["spline or hub kit of the prop is not stated"], Only(Now(fit: Prop with { HubKit = null, SplineTeeth = null })).Points.Select(p => p.Sentence));
        Assert.Equal(4, Only(FitsNow.Of(null, null, [Fleet(Prop, Dock.Prop(), Stored).Life()], [])).Points.Count);
    }

    [Fact]
    public void Another_hub_kit_fits_it_when_one_lies_at_its_dock()
    {
        var other = Prop with { HubKit = "hub-9" };
        var here = Only(Now(fit: other, kits: [("jetty", 2)]));
        Assert.Equal((FitAnswer.FitsWithPart, "with hub kit hub-21, of which 2 lie there", "hub-21"), (here.Answer, here.Points[0].Sentence, here.Points[0].Part));
        NearMiss("it wants hub kit hub-21, of which none is on record there; 3 at bay", Now(fit: other, kits: [("bay", 3), ("jetty", 0)]));
        NearMiss("it wants hub kit hub-21, of which none is on record there", Now(fit: other));
    }

    [Fact]
    public void One_at_the_shop_is_a_near_miss_with_its_date() =>
        NearMiss("it is at bay-props, due back on 2026-02-20", Now(also: new SendPropToShop(Dock.At("2026-02-02T08:00", "sent"), "p1", "bay-props", "polish", null, "2026-02-20")));

    [Fact]
    public void One_that_came_off_struck_is_not_fitted_again_as_it_is()
    {
        var fleet = Dock.OneBoat().With(Engine, Prop, Dock.Removed("2026-03-01T09:00") with { Why = "hub_slip" });
        NearMiss("it came off with a slipping hub on 2026-03-01 and was not mended since", Held(fleet));
        Assert.True(Only(Held(fleet)).DockAssumed);
    }

    [Fact]
    public void One_that_is_mounted_or_gone_is_no_spare()
    {
        Assert.Empty(Held(Dock.OneBoat().With(Engine, Prop)).Spares);
        Assert.Equal(0, Now(also: new RetireProp(Dock.At("2026-02-02T08:00", "end"), "p1", "lost")).Others);
        Assert.Empty(Now(also: new RetireProp(Dock.At("2026-02-02T08:00", "end"), "p1", "lost")).Spares);
    }

    [Fact]
    public void They_are_told_by_dock_and_the_best_first()
    {
        var fleet = new Fleet().With(Engine);
        foreach (var (prop, dock, rotation) in new[] { ("p1", "jetty", "left"), ("p2", "jetty", "right"), ("p3", "bay", "right"), ("p4", null, "right") })
        {
            fleet = fleet.With(Dock.Prop(prop: prop) with { Rotation = rotation }, Prop with { Entry = Dock.At("2026-01-02T08:01", "fit " + prop), Prop = prop });
            if (dock is not null) fleet = fleet.With(new StoreProp(Dock.At("2026-01-06T08:00", "stored " + prop), prop, dock));
        }

        Assert.Equal(["p3", "p2", "p1", "p4"], Held(fleet, "p1", "p2", "p3", "p4").Spares.Select(s => s.Prop));
    }

    private static Fleet Fleet(params ICommand[] records) => new Fleet().With(records);

    private static FitsNow Now(
        StateEngineFit? engine = null, StatePropFit? fit = null, RegisterProp? prop = null, ICommand? also = null, (string Dock, int Quantity)[]? kits = null)
    {
        var fleet = Fleet(engine ?? Engine, prop ?? Dock.Prop(), fit ?? Prop, Stored);
        foreach (var (dock, quantity) in kits ?? [])
            fleet = fleet.With(new CountPart(Dock.At("2026-01-03T08:00", "kits " + dock), "hub-21", dock, quantity));
        return Held(also is null ? fleet : fleet.With(also));
    }

    private static FitsNow Held(Fleet fleet, params string[] props) => FitsNow.Of(
        fleet.Log("engine/e1").Facts.OfType<EngineFitStated>().Single(),
        new EngineCard("e1", null, null, null, null, null, null, null),
        (props.Length == 0 ? ["p1"] : props).Select(fleet.Life),
        [PartStock.Of(fleet.Log("part/hub-21"))]);

    private static SpareFit Only(FitsNow fits) => Assert.Single(fits.Spares);

    private static void NearMiss(string sentence, FitsNow fits)
    {
        Assert.Equal(FitAnswer.NearMiss, Only(fits).Answer);
        Assert.Equal([sentence], Only(fits).Points.Select(p => p.Sentence));
    }
}
