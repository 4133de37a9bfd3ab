using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Boats;

public class Corrections_in_their_place
{
    [Fact]
    public void A_mounting_amended_within_its_minute_still_comes_before_the_trial_of_that_minute()
    {
        var mounted = Dock.Mounted("2026-02-01T10:00", "p2");
        var trial = Dock.Trial("2026-02-01T10:00", 5500, 120);
        var fleet = Dock.OneBoat().With(
            Dock.Prop(prop: "p2"), Dock.Removed("2026-02-01T09:00"),
            mounted with { Entry = mounted.Entry! with { Count = 5 } }, trial with { Entry = trial.Entry! with { Count = 6 } },
            mounted with { Torque = 30, Entry = Dock.At("2026-02-01T10:00", "better sheet", amends: "mount p2 kea 2026-02-01T10:00") with { Count = 20 } });
        Assert.Empty(fleet.History().Contradictions);
        Assert.Single(fleet.Finding().Positions[0].Mounting!.Trials);
    }

    [Fact]
    public void A_strike_amended_within_the_minute_of_its_clearing_look_stays_cleared()
    {
        var strike = Dock.Strike("2026-02-01T10:00");
        var look = Dock.Look("2026-02-01T10:00");
        var fleet = Dock.OneBoat().With(
            strike with { Entry = strike.Entry! with { Count = 5 } }, look with { Entry = look.Entry! with { Count = 6 } },
            Dock.Strike("2026-02-01T10:00", "chipped") with { Entry = Dock.At("2026-02-01T10:00", "milder", amends: "strike") with { Count = 20 } });
        Assert.Empty(fleet.Finding().Positions[0].OpenStrikes);
    }

    [Fact]
    public void A_record_of_another_kind_replaces_nothing_and_somebody_is_asked()
    {
        var trial = Dock.Trial("2026-02-02T10:00", 5500, 120);
        var fleet = Dock.OneBoat().With(
            Dock.Strike("2026-02-01T10:00"),
            trial with { Entry = Dock.At("2026-02-02T10:00", "a trial for a strike", amends: "strike") });
        Assert.Single(fleet.Finding().Positions[0].OpenStrikes);
        Assert.Contains(fleet.History().Contradictions, c => c.Kind == ContradictionKind.NothingToCorrect);
        Assert.Empty(fleet.History().Trials);
    }

    [Fact]
    public void A_day_in_the_past_is_told_from_the_record_as_known_now()
    {
        var wrong = Dock.Strike("2026-05-02T10:00");
        var moved = Dock.Strike("2026-05-03T10:00", label: "moved");
        var fleet = Dock.OneBoat().With(
            wrong, new Retract(Dock.At("2026-05-06T10:00", "taken back"), wrong.Entry!.Id, "wrong_subject", Boat: Dock.Kea),
            moved, moved with { Entry = Dock.At("2026-05-06T12:00", "it was the sixth", amends: "moved") });
        var fourth = Assess.Boat(fleet.Around() with { Until = new DateOnly(2026, 5, 4) });
        Assert.Empty(fourth.Positions[0].OpenStrikes);
        Assert.Empty(fourth.Contradictions);
        Assert.Single(Assess.Boat(fleet.Around() with { Until = new DateOnly(2026, 5, 6) }).Positions[0].OpenStrikes);
    }
}
