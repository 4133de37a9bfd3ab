using FleetWake.Demo;
using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Journey.Tests.Demo;

public class StoriesTests
{
    public static TheoryData<DateOnly> Days => [.. DemoDays.All];

    [Theory]
    [MemberData(nameof(Days))]
    public void The_worn_skiff_leaves_its_band_in_about_75_hours(DateOnly today) =>
        Assert.InRange(HoursLeft(today, "sanderling", 5500), 60, 90); // by least squares, trials with read meters

    [Theory]
    [MemberData(nameof(Days))]
    public void Three_more_drift_and_have_over_a_hundred_hours(DateOnly today)
    {
        Assert.InRange(HoursLeft(today, "plover", 6000), 105, 210);
        Assert.InRange(HoursLeft(today, "avocet", 6000), 150, 330);
        Assert.InRange(HoursLeft(today, "heron", 6000, Position.Starboard), 200, 450);
        Assert.InRange(Line(today, "heron", Position.Port).Slope, -0.08, 0.12);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void One_is_over_the_top_already_and_came_from_inside(DateOnly today)
    {
        var trials = Trials(today, "knot");
        Assert.True(trials[0].Rpm < 5500);
        Assert.InRange(trials[^1].Rpm, 5510, 5620);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Boats_without_a_story_stay_inside_their_bands(DateOnly today)
    {
        foreach (var boat in DecidedRecords.Facts(DemoDays.Records[today]).Select(p => p.Fact).OfType<BoatRegistered>()
            .Where(b => b.Name is "Prion" or "Albatross" or "Phalarope" or "Petrel" or "Tern" or "Murre" or "Eider" or "Dunlin"))
        {
            var (low, high) = boat.Name == "Prion" ? (4500, 5500) : (5000, 6000);
            Assert.All(boat.Positions, p => Assert.All(TrialPoint.Of(DemoDays.Records[today], boat.Boat, p), t => Assert.InRange(t.Rpm, low, high)));
        }
    }

    [Fact]
    public void The_bent_stainless_prop_has_not_been_looked_at()
    {
        var strike = Counting<StrikeReported>("gannet").Single(s => s.Severity == StrikeSeverity.Bent);
        Assert.DoesNotContain(Counting<Inspected>("gannet"), i => i.Entry.Happened() > strike.Entry.Happened());
        Assert.Equal(PropMaterial.Stainless, DecidedRecords.Counting<PropRegistered>(Usual, "prop/P-102").Single().Material);
    }

    [Fact]
    public void A_cleared_strike_left_a_step()
    {
        var strike = Counting<StrikeReported>("shag").Single();
        var trials = Trials(DemoDays.Usual, "shag");
        var step = trials.Where(t => t.On > strike.Entry.Date()).Average(t => t.Rpm) - trials.Where(t => t.On < strike.Entry.Date()).Average(t => t.Rpm);
        Assert.InRange(step, 50, 100);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void The_spun_hub_turns_too_fast_and_goes_too_slow(DateOnly today)
    {
        var trials = Trials(today, "cormorant");
        Assert.InRange(trials[^1].Rpm, 6010, 6200);
        Assert.True(trials[^1].Rpm > trials[^2].Rpm + 350);
        Assert.InRange(trials[^1].Slip(17, 2.15), 0.20, 0.30);
        var last = DecidedRecords.Counting<Inspected>(DemoDays.Records[today], "boat/cormorant")[^1];
        Assert.Equal((Verdict.TakeOff, InspectionMark.HubSlip), (last.Verdict, Assert.Single(last.Marks)));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void The_loaded_boat_lugs(DateOnly today)
    {
        Assert.InRange(Trials(today, "pelican")[^1].Rpm, 4800, 4990);
        Assert.InRange(Trials(today, "pelican")[0].Rpm, 5200, 5450);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void The_repitch_brought_its_boat_back(DateOnly today)
    {
        var repitch = Assert.Single(DecidedRecords.Counting<Repitched>(DemoDays.Records[today], "prop/P-121"));
        var trials = Trials(today, "whimbrel");
        Assert.All(trials.Where(t => t.On < repitch.Entry.Date().AddDays(-25)), t => Assert.True(t.Rpm < 5000));
        Assert.All(trials.Where(t => t.On > repitch.Entry.Date().AddDays(5)), t => Assert.InRange(t.Rpm, 5100, 5500));
        Assert.Equal(["P-121", "P-921", "P-121"], Counting<PropMounted>(today, "whimbrel").Select(m => m.Prop));
    }

    [Fact]
    public void One_prop_is_on_two_boats() => Assert.Equal("P-117", Counting<PropMounted>("turnstone")[^1].Prop);

    [Theory]
    [MemberData(nameof(Days))]
    public void The_season_prop_changes_spring_and_autumn(DateOnly today)
    {
        var props = Counting<PropMounted>(today, "curlew").Select(m => m.Prop).ToList();
        Assert.InRange(props.Count, 3, 6);
        Assert.All(props.Zip(props.Skip(1)), pair => Assert.NotEqual(pair.First, pair.Second));
    }

    [Fact]
    public void A_meter_seems_to_run_back()
    {
        var hours = DecidedRecords.Counting<HoursRead>(Usual, "engine/e-godwit").Select(h => h.Hours).ToList();
        Assert.Single(hours.Zip(hours.Skip(1)), pair => pair.Second < pair.First);
    }

    [Fact]
    public void Odd_trials_are_there()
    {
        Assert.Contains(Counting<TrialRun>("skua"), t => t.Runs.Any(r => r.Tachometers[0].LimiterReached));
        Assert.Contains(Counting<TrialRun>("egret"), t => t.Throttle == Throttle.Part);
        Assert.Contains(Counting<TrialRun>("noddy"), t => t.Runs.Count == 1);
        Assert.Contains(Trials(DemoDays.Usual, "stilt"), t => t.Slip(13, 2.08) < 0);
    }

    [Fact]
    public void Corrections_count()
    {
        Assert.All(Trials(DemoDays.Usual, "fulmar"), t => Assert.InRange(t.Rpm, 5250, 5750));
        Assert.Equal(StrikeSeverity.Scuffed, Counting<StrikeReported>("guillemot").Single().Severity);
        Assert.Empty(Counting<StrikeReported>("booby"));
        Assert.Single(Counting<StrikeReported>("petrel"));
        Assert.Empty(Effective.Of([.. DecidedRecords.Facts(Usual).Where(p => p.Stream == "engine/e-grebe").Select(p => p.Fact)]).Unmatched);
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Four_boats_are_overdue_for_a_look_and_the_rest_are_not(DateOnly today)
    {
        var facts = DecidedRecords.Facts(DemoDays.Records[today]).Select(p => p.Fact).ToList();
        var gone = facts.OfType<BoatRetired>().Select(r => r.Boat).ToHashSet();
        var overdue = facts
            .Where(f => f is Inspected or PropMounted).Cast<IAtPosition>()
            .Where(f => !gone.Contains(f.Boat))
            .GroupBy(f => f.Boat)
            .Where(g => g.Max(f => f.Entry.Date()).AddMonths(6) < today)
            .Select(g => g.Key).Order();
        Assert.Equal(["auklet", "diver", "merganser", "puffin"], overdue);
    }

    private static InventedRecord Usual => DemoDays.Records[DemoDays.Usual];

    private static IReadOnlyList<T> Counting<T>(string boat)
        where T : IFact => Counting<T>(DemoDays.Usual, boat);

    private static IReadOnlyList<T> Counting<T>(DateOnly today, string boat)
        where T : IFact => DecidedRecords.Counting<T>(DemoDays.Records[today], StreamName.Boat(boat));

    private static IReadOnlyList<TrialPoint> Trials(DateOnly today, string boat) =>
        TrialPoint.Of(DemoDays.Records[today], boat, Position.Single);

    private static (double Slope, double AtLast) Line(DateOnly today, string boat, Position position = Position.Single) =>
        TrialPoint.Line(TrialPoint.Of(DemoDays.Records[today], boat, position));

    private static double HoursLeft(DateOnly today, string boat, double top, Position position = Position.Single)
    {
        var (slope, atLast) = Line(today, boat, position);
        return (top - atLast) / slope;
    }
}
