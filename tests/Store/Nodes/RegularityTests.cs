using FleetWake.Store.Nodes;

namespace FleetWake.Store.Tests.Nodes;

/// <summary>How long a beat has come without a gap.</summary>
public sealed class RegularityTests
{
    private readonly SteppedTime time = new();

    [Fact]
    public void It_grows_while_the_beat_comes_and_starts_again_after_a_gap()
    {
        var regularity = new Regularity(time, TimeSpan.FromSeconds(6));
        Assert.Null(regularity.Beat());
        for (var i = 0; i < 10; i++)
        {
            time.Step(3);
            Assert.Null(regularity.Beat());
        }

        Assert.Equal(TimeSpan.FromSeconds(30), regularity.For);
        time.Step(40);
        Assert.Equal(TimeSpan.FromSeconds(40), regularity.Beat());
        Assert.Equal(TimeSpan.Zero, regularity.For);
        time.Step(6);
        Assert.Null(regularity.Beat());
        Assert.Equal(TimeSpan.FromSeconds(6), regularity.For);
    }
}
