using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Propulsion;

namespace FleetWake.Logbook.Tests;

/// <summary>What every dock knows and no source states, and what is exact.</summary>
public class Trade_facts
{
    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void The_first_number_on_a_prop_is_its_diameter_and_the_second_its_pitch()
    {
        var stamped = new RegisterProp(Dock.At("2026-01-05T08:00", "13 1/4 x 17"), "p1", 13.25, 17, 3, "aluminium", "right");
        var fact = (PropRegistered)Fleet.Accepted(stamped)[0].Fact;
        Assert.Equal((13.25, 17), (fact.DiameterInches, fact.PitchInches));
        var shape = typeof(PropRegistered).GetConstructors().Single().GetParameters().Select(p => p.Name).ToList();
        Assert.True(shape.IndexOf("DiameterInches") < shape.IndexOf("PitchInches"));
    }

    /// <summary>Common practice, no source: an outboard of the 50 hp class is rated 5,000 to 6,000 RPM at wide-open throttle.</summary>
    [Fact]
    public void A_fifty_horsepower_outboard_is_rated_5000_to_6000()
    {
        var engine = (EngineRegistered)Fleet.Accepted(Dock.Engine())[0].Fact;
        Assert.Equal((50, PowerUnit.Hp, 5000, 6000), (engine.RatedPower, engine.RatedPowerUnit, engine.BandLowRpm, engine.BandHighRpm));
    }

    /// <summary>
    /// 25 lbf.ft on a prop nut: common practice, no source. The factor is exact: foot and pound by the international
    /// yard and pound agreement of 1959, standard gravity by the 3rd CGPM of 1901: 0.3048 x 0.45359237 x 9.80665.
    /// </summary>
    [Fact]
    public void Twenty_five_pound_force_feet_are_33_895_newton_metres_and_stand_in_the_record_as_read()
    {
        Assert.Equal(33.895, Torque.FromPoundForceFeet(25).NewtonMetres, 0.0005);
        Assert.Equal(25 * 0.3048 * 0.45359237 * 9.80665, Torque.FromPoundForceFeet(25).NewtonMetres, 1e-12);
        var sheet = (PropMounted)Fleet.Accepted(Dock.Mounted())[0].Fact;
        Assert.Equal((25, TorqueUnit.PoundForceFoot), (sheet.Torque, sheet.TorqueUnit));
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void Six_months_lie_between_two_inspections() => Assert.Equal(6, Outlook.InspectionMonths);

    /// <summary>Common practice, no source: a touch without a mark never blocks, else nobody reports.</summary>
    [Fact]
    public void A_touch_without_a_mark_needs_nobody() =>
        Assert.Empty(Attentions.Of(Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "no_mark")).Finding()));
}
