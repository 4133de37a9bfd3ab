using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;
using FleetWake.Reports.Digests;

namespace FleetWake.Reports.Tests.Digests;

public class WeeklyWearTests
{
    private static WeeklyWearContent Build(params BoatFinding[] boats) => WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, boats);

    private static readonly WeeklyWearContent Fleet = Build([.. SkerryBay.Fleet()]);

    private static BoatRow Row(string name) => Fleet.Boats.Single(b => b.Name == name);

    [Fact]
    public void The_headline_and_the_subject_count_the_same_boats()
    {
        Assert.Equal("8 boats need a decision, 2 of them not for hire and 2 to look at first; 2 inspections are overdue.", Fleet.Headline);
        Assert.Equal("Skerry Bay Hire, week 47: 8 decisions, 2 overdue", Fleet.Subject);
        Assert.Equal(8, Fleet.Decisions.Count);
        Assert.Equal(2, Fleet.Overdue.Count);
    }

    [Fact]
    public void A_week_without_anything_to_decide_says_so()
    {
        var quiet = Build(SkerryBay.Quiet());
        Assert.Equal("Nothing to decide this week.", quiet.Headline);
        Assert.Equal("Skerry Bay Hire, week 47: nothing to decide", quiet.Subject);
        Assert.Empty(quiet.Charts);
        Assert.Equal("1 boat needs a decision; 1 inspection is overdue.", Build(SkerryBay.LuggingBoat(), SkerryBay.Quiet("Turnstone", 190)).Headline);
    }

    [Fact]
    public void Boats_that_are_not_for_hire_come_first_and_each_says_what_releases_it()
    {
        Assert.Equal(["Dipper", "Razorbill", "Smew", "boat-17", "Fulmar", "Dunlin", "Gannet", "Great Skua"], Fleet.Decisions.Select(d => d.Boat));
        Assert.Equal([true, true, true, true, false, false, false, false], Fleet.Decisions.Select(d => d.Blocks));
        Assert.Equal(["not for hire", "not for hire", "look first", "look first", "to decide", "to decide", "to decide", "to decide"], Fleet.Decisions.Select(d => d.State));
        Assert.All(Fleet.Decisions.Where(d => d.Blocks), d => Assert.StartsWith("Released by: ", d.Points[0].Settles, StringComparison.Ordinal));
        Assert.All(Fleet.Decisions.SelectMany(d => d.Points), p => Assert.NotEmpty(p.Settles));
    }

    [Fact]
    public void A_contradiction_is_put_as_its_question()
    {
        var boat = SkerryBay.Quiet() with { Contradictions = [new Logbook.Entries.Contradiction(Logbook.Entries.ContradictionKind.PropInTwoPlaces, [], "Prop P-07 is on two boats: which one?")] };
        var point = Assert.Single(Assert.Single(Build(boat).Decisions).Points);
        Assert.Equal("Prop P-07 is on two boats: which one?", point.Sentence);
    }

    [Fact]
    public void A_boat_whose_newest_records_are_not_assessed_is_named_whatever_else_is_said_of_it()
    {
        var quiet = SkerryBay.Quiet("Sanderling");
        var content = WeeklyWear.Build("x", "2026-W19", new DateOnly(2026, 5, 4), [quiet], [quiet.Boat, "never-seen"]);
        Assert.Equal(["Sanderling", "never-seen"], content.Decisions.Select(d => d.Boat));
        Assert.All(content.Decisions, d => Assert.Contains("not in this digest", d.Points[0].Sentence, StringComparison.Ordinal));
        Assert.DoesNotContain("Nothing to decide", content.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void The_margins_shown_ascend()
    {
        // 420 from the bottom as read, 600 as read but 400 by a line that falls, 450 as read.
        BoatFinding Boat(string name, double read, double line) => SkerryBay.Boat(name, new Fitted(5000, 6200, Rpm: [5500, 5500, read], FirstHours: 100, Every: 30) { Drifts = true, PresentRpm = line }.Position());
        var rows = WeeklyWear.Build("x", "2026-W19", new DateOnly(2026, 5, 4), [Boat("a", 5420, 5425), Boat("b", 5600, 5400), Boat("c", 5450, 5460)]).Boats;
        Assert.Equal(["400 above the bottom by its trials together", "420 above the bottom", "450 above the bottom"], rows.Select(r => r.Margin));
    }

    [Fact]
    public void Boats_stand_by_margin_the_smallest_first_and_twins_have_a_row_each()
    {
        Assert.Equal(
            ["Fulmar", "Dunlin", "Gannet", "Great Skua, port", "Whimbrel", "Razorbill", "Shag"],
            Fleet.Boats.Take(7).Select(b => b.Name));
        Assert.Contains(Fleet.Boats, b => b.Name == "Great Skua, starboard");
        var first = Fleet.Boats[0];
        Assert.Equal(("▼", "below the bottom", "4930 RPM", "70 below the bottom", "band 5000 to 6000"), (first.Sign, first.State, first.Rpm, first.Margin, first.Band));
    }

    [Fact]
    public void A_boat_read_over_its_top_is_not_called_inside_because_its_trials_together_are()
    {
        var row = Fleet.Boats.Single(b => b.Name == "Dunlin");
        Assert.True(row.Outside);
        Assert.Equal("read above the top", row.State);
        Assert.Contains(Fleet.Charts, c => c.Title.StartsWith("Dunlin", StringComparison.Ordinal));
    }

    [Fact]
    public void A_blocked_boat_says_so_in_its_row_however_good_its_RPM()
    {
        Assert.Equal(["Dipper", "Razorbill"], Fleet.Boats.Where(b => b.Hire == "not for hire").Select(b => b.Name).Order());
    }

    [Fact]
    public void Boats_without_a_trial_are_named_in_words_and_are_in_no_row()
    {
        Assert.Equal(["Knot: no trial of prop P-07 yet; nothing is said of its RPM.", "Smew: no engine on record."], Fleet.WithoutTrials);
        Assert.DoesNotContain(Fleet.Boats, b => b.Name is "Knot" or "Smew");
    }

    [Fact]
    public void A_position_that_nobody_has_is_no_boat_without_a_trial()
    {
        var ghost = new Logbook.Findings.PositionFinding(Logbook.Position.Port, null, null, null, [], null, null) { NotOnBoat = true };
        Assert.Empty(Build(SkerryBay.Quiet() with { Positions = [.. SkerryBay.Quiet().Positions, ghost] }).WithoutTrials);
    }

    [Fact]
    public void Overdue_work_comes_longest_first_and_only_the_next_14_days_are_listed()
    {
        Assert.Equal(["Razorbill", "Turnstone"], Fleet.Overdue.Select(d => d.Boat));
        Assert.Contains("45 days overdue", Fleet.Overdue[0].When, StringComparison.Ordinal);
        Assert.Equal(["Little Tern"], Fleet.DueSoon.Select(d => d.Boat));
    }

    [Fact]
    public void There_are_at_most_five_charts_and_the_boats_without_one_are_named()
    {
        // The strip of the fleet is one of the five.
        Assert.Equal(["Razorbill", "Fulmar", "Dunlin", "Gannet"], Fleet.Charts.Select(c => c.Title.Split(':')[0]));
        Assert.Equal("No room for charts of: Great Skua, port.", Fleet.ChartsLeftOut);
        var more = Build([.. SkerryBay.Fleet(), SkerryBay.LuggingBoat() with { Boat = "boat-x" }]);
        Assert.Equal(4, more.Charts.Count);
        Assert.Equal("No room for charts of: Gannet; Great Skua, port.", more.ChartsLeftOut);
    }

    [Fact]
    public void A_drift_alarm_is_to_be_settled_by_a_look_and_a_trial_and_stands_in_its_row_with_its_rate()
    {
        var alarm = Fleet.Decisions.Single(d => d.Boat == "Gannet").Points.Single(p => p.Sentence.StartsWith("Drift alarm", StringComparison.Ordinal));
        Assert.Equal("Settled by: an inspection of blades and hub, and one more trial; the owner's manual wins.", alarm.Settles);
        Assert.Equal("drift alarm since the trial of 2026-11-02 (0.04 false alarms a boat-year on this fleet's trials)", Row("Gannet").Alarm);
        Assert.Empty(Row("Fulmar").Alarm);
    }

    [Fact]
    public void Sums_are_shown_of_boats_with_an_open_alarm_where_there_is_room_two_at_most()
    {
        Assert.Empty(Fleet.Sums);
        BoatFinding Other(string name) => SkerryBay.WornSkiff() with { Boat = name };
        Assert.Equal(["a"], Build(Other("a")).Sums.Select(s => s.Boat));
        Assert.Equal(WeeklyWear.MostSums, Build(Other("a"), Other("b")).Sums.Count);
        Assert.Single(Build(Other("a"), Other("b"), Other("c")).Sums);
    }

    [Fact]
    public void A_row_says_whose_figure_the_drift_is_and_which_readings_are_likely_wrong()
    {
        Assert.StartsWith("mostly what its fleet makes likely, +8 RPM per 100 h", Row("Tystie").Drift, StringComparison.Ordinal);
        Assert.StartsWith("no date of leaving its band", Row("Tystie").Exit, StringComparison.Ordinal);
        Assert.Equal("1 of 7 trials is out of line with the others: 2026-11-02", Row("Shag").Wrong);
        Assert.Empty(Row("Gannet").Wrong);
    }

    [Fact]
    public void What_trials_point_to_is_said_once()
    {
        var points = new PointsTo(CauseGroup.RpmUp, 0.97, null, [Cause.PitchOrCupLoss, Cause.LighterLoad], [], 6);
        BoatFinding Pointing(BoatFinding boat) => boat with { Positions = [boat.Positions[0] with { Mounting = boat.Positions[0].Mounting! with { PointsTo = points } }] };
        var content = Build(Pointing(SkerryBay.WornSkiff()), Pointing(SkerryBay.Quiet()));
        Assert.Contains("cannot tell apart a worn prop or lost cup and a lighter load", content.Decisions.Single().Points[0].Sentence, StringComparison.Ordinal);
        Assert.Empty(content.Boats.Single(b => b.Name == "Gannet").Causes);
        Assert.Equal("It turns faster than at its baseline; RPM and speed cannot tell apart a worn prop or lost cup and a lighter load.", content.Boats.Single(b => b.Name == "Sanderling").Causes);
    }

    [Fact]
    public void Strikes_and_work_of_the_last_weeks_have_a_line_each()
    {
        Assert.Equal(
            ["Shag: strike, bent + repitched to 14 in of 2026-10-13: -428 RPM (-474 to -382).", "Razorbill: strike of 2026-10-02 cost +112 RPM (71 to 153)."],
            Fleet.Steps);
        Assert.Empty(WeeklyWear.Build("x", "2026-W51", SkerryBay.Monday.AddDays(28), [SkerryBay.StruckBoat()]).Steps);
    }

    [Fact]
    public void Trials_worth_running_stand_by_what_they_would_decide()
    {
        // Razorbill would decide more, but is kept for its strike; Shag's trial would change next to nothing.
        Assert.Equal(["Gannet", "Tystie"], Fleet.Trials.Select(t => t.Name));
        Assert.Equal("31\u00A0% chance that it changes the decision (act before the next 100 engine hours, or wait)", Fleet.Trials[0].Decides);
        Assert.Equal("takes away about 22\u00A0% of the drift's doubt; the smallest drift that its gauge could show this season is 24 RPM per 100 h", Fleet.Trials[0].Shows);
        Assert.EndsWith("its gauge could show no usual drift this season", Fleet.Trials[1].Shows, StringComparison.Ordinal);
        Assert.Null(Fleet.TrialsLeftOut);
    }

    [Fact]
    public void At_most_five_trials_are_listed_and_props_that_nobody_ran_for_half_a_year_are_counted_only()
    {
        BoatFinding Named(BoatFinding boat, string name) => boat with { Boat = name, Registered = boat.Registered! with { Name = name } };
        var many = Enumerable.Range(1, 7).Select(i => Named(SkerryBay.WornSkiff(), $"Gull {i}"));
        var idle = Enumerable.Range(1, 3).Select(i => Named(SkerryBay.NewBoat(), $"Tern {i}"));
        var content = WeeklyWear.Build("x", "2027-W22", SkerryBay.Monday.AddDays(200), [.. many, .. idle]);
        Assert.Equal(5, content.Trials.Count);
        Assert.Equal(
            "Worth a trial too, but less: Gull 6; Gull 7. Of 3 props with no trial for half a year only the fleet's figure is known: any trial begins a record of their own.",
            content.TrialsLeftOut);
    }

    [Fact]
    public void A_thousand_boats_have_each_decision_counted_and_named_and_the_lists_cut()
    {
        var many = Build([.. Enumerable.Range(1, 1000).Select(i => (i % 2 == 0 ? SkerryBay.StruckBoat() : SkerryBay.Quiet("x", 400)) is var boat ? boat with { Boat = $"boat-{i}", Registered = boat.Registered! with { Name = $"Boat {i:0000}" } } : null!)]);
        Assert.StartsWith("500 boats need a decision", many.Headline, StringComparison.Ordinal);
        Assert.Equal((WeeklyWear.MostDecisions, WeeklyWear.MostDue), (many.Decisions.Count, many.Overdue.Count));
        Assert.StartsWith("To decide as well: Boat 0050 (not for hire); ", many.DecisionsLeftOut, StringComparison.Ordinal);
        Assert.EndsWith("; and 376 more, in the office.", many.DecisionsLeftOut, StringComparison.Ordinal);
        Assert.Contains("more overdue", many.DueLeftOut, StringComparison.Ordinal);
        Assert.Equal(WeeklyWear.MostCharts, WeeklyWearDraft.Of(many).Pictures.Count);
    }

    [Fact]
    public void A_long_fleet_names_the_boats_that_found_no_row()
    {
        var content = Build([.. Enumerable.Range(1, 70).Select(i => SkerryBay.Quiet($"Boat {i:00}"))]);
        Assert.Equal(60, content.Boats.Count);
        Assert.Contains("Boat 70", content.BoatsLeftOut, StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_of_the_findings_changes_nothing()
    {
        var turned = Build([.. SkerryBay.Fleet().Reverse()]);
        Assert.Equal(Fleet.Decisions.Select(d => d.Boat), turned.Decisions.Select(d => d.Boat));
        Assert.Equal(Fleet.Boats, turned.Boats);
    }

    [Fact]
    public void A_name_with_a_line_break_cannot_reach_the_subject()
    {
        var content = WeeklyWear.Build("Skerry\r\nBcc: all@skerry.example", "2026-W47", SkerryBay.Monday, []);
        Assert.DoesNotContain('\n', content.Subject);
        Assert.DoesNotContain('\r', content.Subject);
    }

    [Fact]
    public void The_caution_and_the_state_of_the_numbers_are_always_there()
    {
        var content = Build();
        Assert.Contains(content.Caution, c => c.Contains("owner's manual", StringComparison.Ordinal));
        Assert.Contains(content.Caution, c => c.Contains("does not mean sound", StringComparison.Ordinal));
        Assert.Contains(content.Caution, c => c.Contains("until what releases it is done", StringComparison.Ordinal));
        Assert.DoesNotContain(content.Caution, c => c.StartsWith("Dates", StringComparison.Ordinal));
        Assert.Contains("Dates are those of each boat's dock (Atlantic/Faroe).", Fleet.Caution);
        Assert.Contains(content.Method, m => m.Contains("RPM at reference air is what the trial would have shown", StringComparison.Ordinal));
    }
}
