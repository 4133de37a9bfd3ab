using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

public class Height_and_correction
{
    /// <summary>"Altitude" says that the correction is large: where none is made it would contradict the doubt beside it.</summary>
    [Fact]
    public void Height_is_no_doubt_beside_one_that_says_nothing_was_corrected()
    {
        var high = ATrial.Usual.In(ATrial.Air(20, 900, 0.5)); // CF 1.1 and more, outside 0.93 to 1.07
        Assert.Equal([TrialDoubt.OutsideValidity], high.Corrected().Doubts);
        Assert.Equal(
            [TrialDoubt.NotCorrectable],
            (ATrial.Usual.In(ATrial.Air(20, 950, 0.5)) with { Engine = ATrial.Engine with { Breathing = AirResponse.Supercharged } }).Corrected().Doubts);
    }
}
