namespace FleetWake.Propulsion.Causes;

/// <summary>What would tell tied causes apart, the cheapest first.</summary>
public enum SeparatingTest
{
    /// <summary>Read barometer, temperature and humidity at the next trial.</summary>
    ReadTheAir,

    /// <summary>Write down people, fuel and gear, and run with the baseline's load.</summary>
    RecordTheLoad,

    /// <summary>Draw a line across hub and barrel and look after a hard run whether it still meets.</summary>
    HubMark,

    /// <summary>Look at the bottom, at the blades' faces and at their edges.</summary>
    LookAtBottomAndBlades,

    /// <summary>Trim in, or set the engine a hole lower, and run again.</summary>
    TrimIn,

    /// <summary>Read the speed at two lower RPM on plane.</summary>
    LowerRpmOnPlane,

    /// <summary>Measure the diameter with a rule and the pitch with a gauge.</summary>
    Gauge,

    /// <summary>Read fuel flow or the engine's own load figure at wide-open throttle.</summary>
    FuelFlow,

    /// <summary>Swap the prop with a sister boat and run both.</summary>
    SwapTheProp,

    /// <summary>Repeat the trial: more of the same readings.</summary>
    Repeat,
}

/// <summary>Which test parts which causes, and how it is told.</summary>
public static class SeparatingTests
{
    /// <summary>What comes before a hand goes near a prop.</summary>
    private const string MadeSafe = "engine off, key out, lanyard off, then";

    /// <summary>Whether a test parts two causes. Judged from the physics of each; common practice where it is a look, no source.</summary>
    /// <param name="test">The test.</param>
    /// <param name="one">A cause.</param>
    /// <param name="other">Another.</param>
    /// <param name="airUnread">Whether the air of some trial was not read.</param>
    public static bool Parts(SeparatingTest test, Cause one, Cause other, bool airUnread) => one != other && test switch
    {
        SeparatingTest.ReadTheAir => airUnread && OneOf(one, other, Cause.EnginePower),
        SeparatingTest.RecordTheLoad => OneOf(one, other, Cause.LighterLoad, Cause.HullOrLoad),
        SeparatingTest.HubMark => OneOf(one, other, Cause.HubSlip),
        SeparatingTest.LookAtBottomAndBlades => OneOf(one, other, Cause.BladeRoughness) || OneOf(one, other, Cause.HullOrLoad),
        SeparatingTest.TrimIn => OneOf(one, other, Cause.Ventilation),
        SeparatingTest.LowerRpmOnPlane => OneOf(one, other, Cause.HubSlip, Cause.Ventilation),
        SeparatingTest.Gauge => OneOf(one, other, Cause.PitchOrCupLoss, Cause.DiameterLoss) || (one, other) is (Cause.PitchOrCupLoss, Cause.DiameterLoss) or (Cause.DiameterLoss, Cause.PitchOrCupLoss),
        SeparatingTest.FuelFlow => OneOf(one, other, Cause.EnginePower),
        SeparatingTest.SwapTheProp => CauseFacts.TravelsWithProp(one) != CauseFacts.TravelsWithProp(other),
        _ => one == Cause.None || other == Cause.None || one == Cause.Several || other == Cause.Several,
    };

    /// <summary>The cheapest set that was found to part every pair, cheapest first: for each pair the cheapest test that parts it.</summary>
    /// <param name="tied">Causes that the readings leave.</param>
    /// <param name="airUnread">Whether the air of some trial was not read.</param>
    public static IReadOnlyList<SeparatingTest> For(IReadOnlyList<Cause> tied, bool airUnread)
    {
        ArgumentNullException.ThrowIfNull(tied);
        var tests = new SortedSet<SeparatingTest>();
        for (var i = 0; i < tied.Count; i++)
            for (var j = i + 1; j < tied.Count; j++)
                foreach (var test in Enum.GetValues<SeparatingTest>())
                    if (Parts(test, tied[i], tied[j], airUnread))
                    {
                        tests.Add(test);
                        break;
                    }

        return [.. tests];
    }

    /// <summary>The test in plain words; those where a hand goes near the prop say first how it is made safe (common practice, no source).</summary>
    /// <param name="test">The test.</param>
    public static string Words(SeparatingTest test) => test switch
    {
        SeparatingTest.ReadTheAir => "read barometer, temperature and humidity at the next trial",
        SeparatingTest.RecordTheLoad => "write down people, fuel and gear, and run with the baseline's load",
        SeparatingTest.HubMark => $"{MadeSafe} draw a line across hub and barrel, and see after a hard run whether it still meets",
        SeparatingTest.LookAtBottomAndBlades => $"{MadeSafe} look at the bottom, the blades' faces and their edges",
        SeparatingTest.TrimIn => $"trim in and run again; or {MadeSafe} set the engine a hole lower, and run again",
        SeparatingTest.LowerRpmOnPlane => "read the speed at two lower RPM on plane",
        SeparatingTest.Gauge => $"{MadeSafe} measure diameter and pitch with rule and gauge",
        SeparatingTest.FuelFlow => "read fuel flow or the engine's load figure at wide-open throttle",
        SeparatingTest.SwapTheProp => $"{MadeSafe} swap the prop with a sister boat, and run both",
        SeparatingTest.Repeat => "repeat the trial",
        _ => throw new ArgumentOutOfRangeException(nameof(test), test, "Not a test that is known."),
    };

    /// <summary>Whether exactly one of two causes is among some.</summary>
    private static bool OneOf(Cause one, Cause other, params ReadOnlySpan<Cause> some) => some.Contains(one) != some.Contains(other);
}
