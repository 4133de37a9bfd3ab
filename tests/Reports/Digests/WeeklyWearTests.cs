using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;
using FleetWake.Reports.Digests;

namespace FleetWake.Reports.Tests.Digests;

public class WeeklyWearTests
{
    private static WeeklyWearContent Build(params BoatFinding[] boats) => WeeklyWear.Build(SkerryBay.Hire, "2026-W47", SkerryBay.Monday, boats);

    private static readonly WeeklyWearContent Fleet = Build([.. SkerryBay.Fleet()]);

    [Fact]
    public void The_headline_and_the_subject_count_the_same_boats()
    {
        Assert.Equal("4 boats stay until released (2 of them for a look only), 4 to decide on; 2 inspections are overdue.", Fleet.Headline);
        Assert.Equal("Skerry Bay Hire, week 47: 4 stay, 4 to decide, 2 overdue", Fleet.Subject);
        Assert.Equal(8, Fleet.Monday.Count(m => m.Kind == "blocked") + Fleet.Decisions.Count);
        Assert.Equal(["Turnstone"], Fleet.Overdue.Select(d => d.Boat)); // Razorbill's look is what it stays for
    }

    [Fact]
    public void A_week_without_anything_to_decide_says_so()
    {
        var quiet = Build(SkerryBay.Quiet());
        Assert.Equal("Nothing to decide this week.", quiet.Headline);
        Assert.Equal("Skerry Bay Hire, week 47: nothing to decide", quiet.Subject);
        Assert.Empty(quiet.Charts);
        Assert.Equal("1 boat to decide on; 1 inspection is overdue.", Build(SkerryBay.LuggingBoat(), SkerryBay.Quiet("Turnstone", 190)).Headline);
    }

    [Fact]
    public void A_boat_that_stays_is_told_once_with_what_releases_it_and_is_no_decision()
    {
        var stay = Fleet.Monday.Where(m => m.Kind == "blocked").ToList();
        Assert.Equal(["Dipper", "Razorbill", "Smew", "boat-17"], stay.Select(m => m.Name));
        Assert.All(stay, m => Assert.Contains("Released by ", m.Sentence, StringComparison.Ordinal));
        Assert.Equal("stays at the dock: strike on rock (chipped) on 2026-10-02. Released by an inspection dated after the strike with the verdict fit; about 30 min.", stay[1].Sentence);
        Assert.StartsWith("waits for a look: ", stay[2].Sentence, StringComparison.Ordinal);
        Assert.Equal(["Fulmar", "Dunlin", "Gannet", "Great Skua"], Fleet.Decisions.Select(d => d.Boat));
        Assert.All(Fleet.Decisions, d => Assert.False(d.Blocks));
    }

    [Fact]
    public void A_boat_that_stays_and_is_outside_its_band_is_a_decision_too_and_says_that_it_stays()
    {
        var both = SkerryBay.LuggingBoat() is var lugging ? lugging with { Positions = [lugging.Positions[0] with { OpenStrikes = SkerryBay.StruckBoat().Positions[0].OpenStrikes }] } : null!;
        var content = Build(both);
        Assert.Equal("Fulmar", Assert.Single(content.Monday).Name);
        var decision = Assert.Single(content.Decisions);
        Assert.Equal((true, "not for hire", "Cost of waiting: its hire, counted above.", "Next: release it, then run a trial."), (decision.Blocks, decision.State, decision.Waiting, decision.Points[0].Settles));
        Assert.DoesNotContain(decision.Points, p => p.Sentence.Contains("Strike", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_decision_says_what_where_it_leads_and_what_to_do_next()
    {
        var gannet = Fleet.Decisions.Single(d => d.Boat == "Gannet");
        Assert.Contains("likely to leave its band at the top within 100 engine hours", gannet.Points[0].Sentence, StringComparison.Ordinal);
        Assert.StartsWith("Expected exit: reaches the top about ", gannet.Exit, StringComparison.Ordinal);
        Assert.All(Fleet.Decisions.SelectMany(d => d.Points), p => Assert.StartsWith("Next: ", p.Settles, StringComparison.Ordinal));
        var fulmar = Fleet.Decisions.Single(d => d.Boat == "Fulmar").Points.Single();
        Assert.Equal("Lugging: 4930 RPM, 70 below the bottom (5000). May be load, fouling or a weak engine.", fulmar.Sentence);
    }

    [Fact]
    public void A_reading_that_its_trials_together_do_not_bear_out_is_called_not_settled_as_its_chart_does()
    {
        var dunlin = Fleet.Decisions.Single(d => d.Boat == "Dunlin").Points.First();
        Assert.Contains("not settled: last read 6030 RPM, 30 above the top (6000); its trials together say 5990.", dunlin.Sentence, StringComparison.Ordinal);
        Assert.Contains("while its trials together say 5990: not settled", Fleet.Charts.Single(c => c.Boat == "boat-dunlin").Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_is_counted_by_what_it_is_about_and_answered_in_the_office()
    {
        var boat = SkerryBay.Quiet() with { Contradictions = [new Logbook.Entries.Contradiction(Logbook.Entries.ContradictionKind.PropInTwoPlaces, [], "Prop P-07 is on two boats: which one?")] };
        var content = Build(boat);
        Assert.Equal("1 question waits for an answer: a prop in two places (Sanderling).", content.Questions);
        Assert.Empty(content.Decisions);
        Assert.Equal("1 question to answer.", content.Headline);
        Assert.Null(Build(SkerryBay.Quiet()).Questions);
    }

    [Fact]
    public void Every_kind_of_question_has_words_of_its_own()
    {
        var said = Enum.GetValues<Logbook.Entries.ContradictionKind>().Select(k => Build(SkerryBay.Quiet() with { Contradictions = [new Logbook.Entries.Contradiction(k, [], "?")] }).Questions).ToList();
        Assert.Equal(said.Count, said.Distinct().Count());
    }

    [Fact]
    public void The_margin_is_the_less_favourable_of_reading_and_trials_in_row_and_chart_alike()
    {
        // 420 from the bottom as read, 600 as read but 400 by a line that falls, 450 as read: of a wide band, so that a row is made only for drift.
        BoatFinding Boat(string name, double read, double line) => SkerryBay.Boat(name, new Fitted(5000, 6200, Rpm: [5500, 5500, read], FirstHours: 100, Every: 30) { Drifts = true, PresentRpm = line, Evidence = (11, 2) }.Position());
        BoatFinding[] boats = [Boat("a", 5420, 5425), Boat("b", 5600, 5400), Boat("c", 5450, 5460)];
        var rows = BoatRows.Of(boats, new HashSet<string>(), FleetWake.Reports.Digests.Wear.WearNews.None);
        Assert.Equal([("b", "400 above the bottom"), ("a", "420 above the bottom"), ("c", "450 above the bottom")], rows.Select(r => (r.Name, r.Margin)));
        Assert.Contains("5400 by its trials together, 400 above the bottom", FleetWake.Reports.Pictures.Standings.Of(boats[1].Positions[0]).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Boats_that_drift_or_stand_near_an_edge_have_a_row_unless_a_decision_tells_of_them_and_the_rest_a_sentence()
    {
        Assert.Equal(["Whimbrel", "Razorbill"], Fleet.Boats.Select(b => b.Name));
        var nearTop = SkerryBay.Boat("Auk", new Fitted(5000, 6000, Rpm: [5960, 5962, 5961], FirstHours: 20, Every: 10) { Drifts = false }.Position());
        Assert.Equal(("Auk", "●", "39 below the top"), Assert.Single(Build(nearTop, SkerryBay.Quiet()).Boats) is var near ? (near.Name, near.Sign, near.Margin) : default);
        Assert.DoesNotContain(Fleet.Boats, b => Fleet.Decisions.Any(d => b.Name.StartsWith(d.Boat, StringComparison.Ordinal)));
        Assert.StartsWith("6 engines are inside the band without a drift alarm; the nearest to an edge is ", Fleet.OtherBoats, StringComparison.Ordinal);
        Assert.Contains("the trials say next to nothing of a drift yet", Fleet.OtherBoats, StringComparison.Ordinal);
    }

    [Fact]
    public void Engines_without_a_trial_are_named_and_a_position_that_nobody_has_is_none()
    {
        Assert.Equal("No trial of the present prop yet, so nothing is said of the RPM: Knot.", Fleet.WithoutTrials);
        var ghost = new Logbook.Findings.PositionFinding(Logbook.Position.Port, null, null, null, [], null, null) { NotOnBoat = true };
        Assert.Null(Build(SkerryBay.Quiet() with { Positions = [.. SkerryBay.Quiet().Positions, ghost] }).WithoutTrials);
    }

    [Fact]
    public void What_is_overdue_comes_longest_first_without_the_looks_that_release_a_boat_and_twins_share_a_line()
    {
        Assert.Equal(("Turnstone", "North slip"), (Fleet.Overdue[0].Boat, Fleet.Overdue[0].Dock));
        Assert.EndsWith(" days overdue", Fleet.Overdue[0].When, StringComparison.Ordinal);
        Assert.Equal("1 overdue look is what the boats above stay for. 1 falls due within 14 days, the first on 2026-11-24.", Fleet.DueLeftOut);
        var twin = SkerryBay.Boat("Great Skua", [.. new[] { Logbook.Position.Port, Logbook.Position.Starboard }.Select(p => SkerryBay.Quiet("x", 400).Positions[0] with { Position = p })]);
        Assert.Equal("Great Skua, port and starboard", Assert.Single(Build(twin).Overdue).Boat);
    }

    [Fact]
    public void There_are_at_most_five_charts_of_what_is_to_decide_first_and_a_strike_alone_gets_none()
    {
        // The strip of the fleet is one of the five.
        Assert.Equal(["Fulmar", "Dunlin", "Gannet", "Great Skua, port"], Fleet.Charts.Select(c => c.Title.Split(':')[0]));
        Assert.Null(Fleet.ChartsLeftOut);
        var more = Build([.. SkerryBay.Fleet(), SkerryBay.LuggingBoat() with { Boat = "boat-x" }]);
        Assert.Equal(4, more.Charts.Count);
        Assert.Equal("No room for charts of: Great Skua, port.", more.ChartsLeftOut);
    }

    [Fact]
    public void What_trials_point_to_is_said_with_the_cheapest_test_that_would_part_it_made_safe_first()
    {
        var points = new PointsTo(CauseGroup.RpmUp, 0.97, null, [Cause.PitchOrCupLoss, Cause.HubSlip], [SeparatingTest.HubMark], 6);
        BoatFinding Pointing(BoatFinding boat) => boat with { Positions = [boat.Positions[0] with { Mounting = boat.Positions[0].Mounting! with { PointsTo = points } }] };
        var point = Build(Pointing(SkerryBay.WornSkiff())).Decisions.Single().Points[0];
        Assert.EndsWith("May be a worn prop or lost cup or a slipping hub.", point.Sentence, StringComparison.Ordinal);
        Assert.StartsWith("Next: engine off, key out, lanyard off, then draw a line", point.Settles, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thousand_boats_are_counted_and_the_lists_cut()
    {
        var many = Build([.. Enumerable.Range(1, 1000).Select(i => (i % 4 == 0 ? SkerryBay.StruckBoat() : i % 4 == 1 ? SkerryBay.LuggingBoat() : SkerryBay.Quiet("x", 400)) is var boat ? boat with { Boat = $"boat-{i}", Registered = boat.Registered! with { Name = $"Boat {i:0000}" } } : null!)]);
        Assert.StartsWith("250 boats stay until released, 250 to decide on; ", many.Headline, StringComparison.Ordinal);
        Assert.Equal((WeeklyWear.MostDecisions, WeeklyWear.MostRows), (many.Decisions.Count, many.Overdue.Count));
        Assert.StartsWith("To decide as well: Boat 0041; ", many.DecisionsLeftOut, StringComparison.Ordinal);
        Assert.EndsWith("; and 200 more, in the office.", many.DecisionsLeftOut, StringComparison.Ordinal);
        Assert.Contains("more are overdue", many.DueLeftOut, StringComparison.Ordinal);
        Assert.Equal("240 more", many.Monday[^1].Name);
        Assert.Equal(WeeklyWear.MostCharts, WeeklyWearDraft.Of(many).Pictures.Count);
    }

    [Fact]
    public void A_fleet_of_forty_five_is_read_in_two_minutes()
    {
        // What changes Monday and what is to decide, that is: 238 words a minute, as adults read English prose (Brysbaert 2019, Journal of Memory
        // and Language 109; from memory). What follows is to look things up in, and is short all the same.
        BoatFinding[] fleet = [.. SkerryBay.Fleet(), .. Enumerable.Range(1, 30).Select(i => SkerryBay.Quiet($"Gull {i:00}"))];
        var text = new FleetWake.Reports.Digests.Templates.DigestRenderer(new FleetWake.Reports.Pictures.PngRenderer(), null).Render(WeeklyWearDraft.Of(Build(fleet))).Text;
        int Words(string until) => text[..text.IndexOf(until, StringComparison.Ordinal)].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.InRange(Words("SKERRY BAY HIRE: EVERY ENGINE"), 100, 476);
        Assert.InRange(Words("CHARTS, IN WORDS"), 200, 800);
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
    public void Sums_are_shown_of_boats_with_an_open_alarm_where_there_is_room_two_at_most()
    {
        Assert.Empty(Fleet.Sums);
        BoatFinding Other(string name) => SkerryBay.WornSkiff() with { Boat = name };
        Assert.Equal(["a"], Build(Other("a")).Sums.Select(s => s.Boat));
        Assert.Equal(WeeklyWear.MostSums, Build(Other("a"), Other("b")).Sums.Count);
        Assert.Single(Build(Other("a"), Other("b"), Other("c")).Sums);
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
        Assert.Equal("31\u00A0% chance that it changes what to do", Fleet.Trials[0].Decides);
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
