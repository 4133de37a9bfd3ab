using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

public class What_a_correction_costs
{
    /// <summary>The result with its correction and its list of doubts, and nothing on the way there.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void It_allocates_its_result_and_nothing_else(int runs)
    {
        var trial = ATrial.Of([.. Enumerable.Range(0, runs).Select(i => ATrial.Run(5500, 31, i % 2 == 0 ? 40 : 220))])
            .In(ATrial.SultryAir);
        Assert.InRange(Enumerable.Range(0, 20).Min(_ => BytesOf(trial)), 1, 300); // the first calls pay for being first
    }

    private static long BytesOf(TrialReading trial)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        _ = TrialCorrection.Of(trial);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
