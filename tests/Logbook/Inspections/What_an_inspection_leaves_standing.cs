using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;

namespace FleetWake.Logbook.Tests.Inspections;

public class What_an_inspection_leaves_standing
{
    private static readonly Fleet s_off = Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", "take_off", marks: "crack"));

    [Fact]
    public void Take_off_blocks_until_a_later_fit_and_a_watch_in_between_changes_nothing()
    {
        Assert.Equal([AttentionKind.TakeOff], Blocking(s_off));
        Assert.Equal([AttentionKind.TakeOff], Blocking(s_off.With(Dock.Look("2026-02-02T10:00", "watch"))));
        Assert.Equal([AttentionKind.TakeOff], Blocking(s_off.With(Dock.Look("2026-01-31T10:00"))));
        Assert.Empty(Blocking(s_off.With(Dock.Look("2026-02-02T10:00", "watch"), Dock.Look("2026-02-03T10:00"))));
    }

    [Fact]
    public void A_slipping_hub_blocks_until_a_later_fit_that_sees_none()
    {
        var slips = Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", "repair", marks: "hub_slip"));
        Assert.Equal([AttentionKind.HubSlip], Blocking(slips));
        Assert.Equal([AttentionKind.HubSlip], Blocking(slips.With(Dock.Look("2026-02-02T10:00", "watch"))));
        Assert.Equal([AttentionKind.HubSlip], Blocking(slips.With(Dock.Look("2026-02-02T10:00", "fit", marks: "hub_slip"))));
        Assert.Empty(Blocking(slips.With(Dock.Look("2026-02-02T10:00"))));
    }

    [Fact]
    public void One_inspection_that_saw_both_is_said_once_and_two_are_said_both()
    {
        Assert.Equal([AttentionKind.TakeOff], Blocking(Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", "take_off", marks: "hub_slip"))));
        Assert.Equal([AttentionKind.TakeOff, AttentionKind.HubSlip], Blocking(s_off.With(Dock.Look("2026-02-02T10:00", "repair", marks: "hub_slip"))));
    }

    [Fact]
    public void The_last_inspection_is_the_last_to_happen()
    {
        var card = s_off.With(Dock.Look("2026-01-20T10:00", "watch")).Finding().Positions.Single().LastInspection!;
        Assert.Equal((new DateOnly(2026, 2, 1), Verdict.TakeOff), (card.On, card.Verdict));
        Assert.Equal([InspectionMark.Crack], card.Marks);
    }

    private static IEnumerable<AttentionKind> Blocking(Fleet fleet) => Attentions.Of(fleet.Finding()).Where(a => a.Blocks).Select(a => a.Kind);
}
