using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Tests.Findings;

public class Mountings_that_ended
{
    /// <summary>The prop is typed at 10:00, and the engine of the same visit at 10:05.</summary>
    private static readonly Fleet s_late = new Fleet().With(
        Dock.Boat(), Dock.Engine(), Dock.Prop(), Dock.Mounted("2026-01-05T10:00"), Dock.Fitted("2026-01-05T10:05"),
        Dock.Trial("2026-02-01T10:00", 5500, 120), Dock.Trial("2026-03-01T10:00", 5550, 150), Dock.Trial("2026-04-01T10:00", 5600, 200));

    [Fact]
    public void One_that_ended_tells_what_it_told_while_it_lasted()
    {
        var ended = s_late.With(Dock.Removed("2026-04-02T10:00")).History();
        var (span, wear) = Assert.Single(EveryMounting.Of(ended));
        Assert.NotNull(span.To);
        Assert.NotNull(wear.Drift);
        Assert.Equal(s_late.Mounting().Drift, wear.Drift);
        Assert.Equal(s_late.Mounting().Band, wear.Band);
        Assert.All(wear.Trials, t => Assert.Null(t.SetAside));
        Assert.Equal(wear.Drift, Assess.Mounting(ended, span).Drift);
    }
}
