using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Boats;

public class Questions_that_were_answered
{
    private static readonly Fleet s_two = Dock.OneBoat().With(Dock.Boat(boat: "tui"), Dock.Mounted("2026-02-01T09:00", boat: "tui"));

    [Fact]
    public void An_answered_question_is_asked_on_neither_boat_again_whichever_of_them_it_was_answered_on()
    {
        var asked = Assert.Single(s_two.History().Contradictions);
        Assert.All(new[] { "kea", "tui" }, boat =>
        {
            var settled = s_two.With(Answer(asked, boat));
            Assert.Empty(settled.History().Contradictions);
            Assert.Empty(settled.History("tui").Contradictions);
        });
    }

    [Fact]
    public void An_answer_to_another_question_or_of_other_entries_settles_nothing()
    {
        var asked = Assert.Single(s_two.History().Contradictions);
        Assert.Single(s_two.With(Answer(asked, "kea") with { Contradiction = "hours_out_of_line" }).History().Contradictions);
        Assert.Single(s_two.With(Answer(asked, "kea") with { Entries = [asked.Entries[0]] }).History().Contradictions);
        Assert.Empty(s_two.With(Answer(asked, "kea") with { Entries = [asked.Entries[1], asked.Entries[0]] }).History().Contradictions);
    }

    [Fact]
    public void An_answer_that_is_taken_back_asks_again()
    {
        var settled = s_two.With(Answer(Assert.Single(s_two.History().Contradictions), "kea"));
        var back = settled.With(new Retract(Dock.At("2026-03-02T09:00", "back"), Dock.Id("answer"), "did_not_happen", "kea"));
        Assert.Single(back.History().Contradictions);
    }

    [Fact]
    public void A_reading_that_looked_wrong_and_was_right_is_believed()
    {
        var odd = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 2200, 120));
        Assert.Equal(SetAsideReason.NotCredible, odd.Mounting().Trials.Single().SetAside);
        var asked = Assert.Single(odd.History().Contradictions);
        Assert.Null(odd.With(Answer(asked, "kea")).Mounting().Trials.Single().SetAside);
        Assert.Equal(BandState.BelowBottom, odd.With(Answer(asked, "kea")).Mounting().Band.State);
        Assert.Equal(SetAsideReason.NotCredible, odd.With(Answer(asked, "kea") with { Answer = "corrected" }).Mounting().Trials.Single().SetAside);
    }

    [Fact]
    public void Hours_that_looked_wrong_and_were_right_are_believed_and_what_does_not_fit_them_is_asked_about()
    {
        var odd = Dock.OneBoat().With(Dock.Hours("2026-02-01T10:00", 130), Dock.Hours("2026-02-10T10:00", 120), Dock.Hours("2026-02-20T10:00", 150));
        var asked = Assert.Single(odd.History().Contradictions);
        Assert.Equal([100, 130, 150], odd.History().Meters["e1"].Readings.Select(r => r.Hours));

        var settled = odd.With(Answer(asked, "kea"));
        Assert.Equal([100, 120, 150], settled.History().Meters["e1"].Readings.Select(r => r.Hours));
        Assert.Contains("Was 130 misread?", Assert.Single(settled.History().Contradictions).Question, StringComparison.Ordinal);

        var left = odd.With(Answer(asked, "kea") with { Answer = "corrected" });
        Assert.Equal([100, 130, 150], left.History().Meters["e1"].Readings.Select(r => r.Hours));
        Assert.Empty(left.History().Contradictions);
    }

    [Fact]
    public void Hours_that_were_answered_for_are_not_asked_about_again_when_a_late_reading_stands_nearer()
    {
        var odd = Dock.OneBoat().With(Dock.Hours("2026-02-01T10:00", 130), Dock.Hours("2026-02-10T10:00", 1200), Dock.Hours("2026-02-20T10:00", 150));
        var settled = odd.With(Answer(Assert.Single(odd.History().Contradictions), "kea") with { Answer = "corrected" });
        Assert.Empty(settled.With(Dock.Hours("2026-02-05T10:00", 135)).History().Contradictions);
    }

    [Fact]
    public void Hours_that_are_believed_say_nothing_of_the_rpm_of_their_trial()
    {
        var odd = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 2200, 120));
        Assert.Equal(
            SetAsideReason.NotCredible,
            odd.With(Answer(Assert.Single(odd.History().Contradictions), "kea") with { Contradiction = "hours_out_of_line" }).Mounting().Trials.Single().SetAside);
    }

    [Fact]
    public void Of_two_answers_the_last_counts()
    {
        var odd = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 2200, 120));
        var asked = Assert.Single(odd.History().Contradictions);
        var later = Answer(asked, "kea") with { Entry = Dock.At("2026-03-02T09:00", "later answer"), Answer = "corrected" };
        Assert.Equal(SetAsideReason.NotCredible, odd.With(later, Answer(asked, "kea")).Mounting().Trials.Single().SetAside);
    }

    [Theory]
    [InlineData("right", 0)]
    [InlineData("left", 1)]
    public void A_prop_that_turns_the_other_way_than_its_engine_is_asked_about(string rotation, int questions)
    {
        var stated = Dock.OneBoat().With(new StateEngineFit(Dock.At("2026-02-01T09:00", "fit"), "e1", Rotation: rotation));
        Assert.Equal(questions, stated.History().Contradictions.Count(c => c.Kind == ContradictionKind.RotationDoesNotFit));
        Assert.Equal(questions, stated.History().Contradictions.Count);
    }

    [Fact]
    public void A_fit_that_says_nothing_of_rotation_asks_nothing() =>
        Assert.Empty(Dock.OneBoat().With(new StateEngineFit(Dock.At("2026-02-01T09:00", "fit"), "e1", SplineTeeth: 13)).History().Contradictions);

    private static SettleContradiction Answer(Contradiction asked, string boat) =>
        new(Dock.At("2026-03-01T09:00", "answer"), boat, Words.Of(asked.Kind), asked.Entries, "both_stand");
}
