using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>Prop states travel with the prop, engine and hull states stay with the boat. Invented readings of two boats alike.</summary>
public class A_swap_with_a_sister_boat
{
    [Fact]
    public void A_weak_engine_stays_with_its_boat()
    {
        var (x, v) = Tern.Effect(Cause.EnginePower, 0.08);
        var before = Diagnosis.Of(Tern.Case([.. Tern.Runs("tern", "P1", x, v), .. Tern.Runs("gull", "P2", 0, 0)]));
        Assert.Null(before.Named);
        var after = Diagnosis.Of(Tern.Case(
            [.. Tern.Runs("tern", "P1", x, v), .. Tern.Runs("gull", "P2", 0, 0), .. Tern.Runs("tern", "P2", x, v), .. Tern.Runs("gull", "P1", 0, 0)]));
        Assert.Equal((Cause.EnginePower, "tern"), (after.Named!.Cause, after.Named.Where));
    }

    [Fact]
    public void Rough_blades_go_with_the_prop()
    {
        var (x, v) = Tern.Effect(Cause.BladeRoughness, 0.08);
        var after = Diagnosis.Of(Tern.Case(
            [.. Tern.Runs("tern", "P1", x, v), .. Tern.Runs("gull", "P2", 0, 0), .. Tern.Runs("tern", "P2", 0, 0), .. Tern.Runs("gull", "P1", x, v)]));
        Assert.Equal((Cause.BladeRoughness, "P1"), (after.Named!.Cause, after.Named.Where));
    }

    [Fact]
    public void Swapping_is_offered_where_it_parts_the_tied()
    {
        Assert.True(SeparatingTests.Parts(SeparatingTest.SwapTheProp, Cause.EnginePower, Cause.BladeRoughness, airUnread: false));
        Assert.False(SeparatingTests.Parts(SeparatingTest.SwapTheProp, Cause.PitchOrCupLoss, Cause.HubSlip, airUnread: false));
    }

    /// <summary>Two props of one stamp differ by 1.5 % in pitch each (judgement), so by 1.1 % of RPM: no wear follows from that.</summary>
    [Fact]
    public void A_prop_of_the_same_stamp_that_turns_a_little_faster_is_no_worn_prop()
    {
        var (x, v) = Tern.Effect(Cause.PitchOrCupLoss, 0.025);
        var sister = Diagnosis.Of(Tern.Case([.. Tern.Runs("tern", "P2", x, v, 20)]));
        Assert.Null(sister.Named);
        Assert.Contains(Cause.None, sister.Tied.Select(s => s.Cause));
        var own = Diagnosis.Of(Tern.Case([.. Tern.Runs("tern", "P1", x, v, 20)]));
        Assert.DoesNotContain(Cause.None, own.Tied.Select(s => s.Cause));
    }
}
