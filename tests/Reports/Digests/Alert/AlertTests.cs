using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests.Alert;

namespace FleetWake.Reports.Tests.Digests.Alert;

/// <summary>What cannot wait, when it is told, and in which words. Rules of quiet hours and grouping: the operator's own; the usual ones are judgement, no source.</summary>
public sealed class AlertTests
{
    private static readonly TimeZoneInfo Faroe = TimeZoneInfo.FindSystemTimeZoneById("Atlantic/Faroe");

    [Fact]
    public void A_verdict_of_take_off_and_a_severe_strike_come_first_and_a_scuff_does_not_come()
    {
        var causes = Causes([.. SkerryBay.Fleet()]);
        Assert.Equal(["Dipper", "Razorbill"], causes.TakeWhile(c => c.Urgent).Select(c => c.Name));
        Assert.DoesNotContain(causes.Skip(2), c => c.Urgent);
        Assert.Contains(causes, c => c is { Name: "Gannet", Kind: AlertKind.Drift });
        Assert.Contains(causes, c => c is { Name: "Fulmar", Kind: AlertKind.OutsideBand });
        Assert.DoesNotContain(causes, c => c.Name is "Sanderling" or "Shag" or "Knot");
        var scuffed = SkerryBay.StruckBoat();
        scuffed = scuffed with { Positions = [scuffed.Positions[0] with { OpenStrikes = [scuffed.Positions[0].OpenStrikes[0] with { Severity = Logbook.Strikes.StrikeSeverity.Scuffed }] }] };
        Assert.DoesNotContain(Causes(scuffed), c => c.Kind == AlertKind.SevereStrike);
    }

    [Fact]
    public void A_question_is_a_cause_and_a_boat_that_left_has_none()
    {
        var asked = SkerryBay.Quiet() with { Contradictions = [new Contradiction(ContradictionKind.PropInTwoPlaces, [SkerryBay.Id(5), SkerryBay.Id(6)], "Prop P-07 is on two boats: which one?")] };
        var cause = Assert.Single(Causes(asked));
        Assert.Equal((AlertKind.Question, "Prop P-07 is on two boats: which one?"), (cause.Kind, cause.Sentence));
        Assert.Empty(Causes(SkerryBay.StruckBoat() with { Retired = new RetiredCard(SkerryBay.Monday, Logbook.Season.BoatRetirement.Sold) }));
    }

    [Fact]
    public void A_boat_without_a_dock_is_told_of_to_readers_of_the_whole_fleet()
    {
        var cause = Assert.Single(Causes(SkerryBay.StruckBoat() with { Registered = null }), c => c.Kind == AlertKind.SevereStrike);
        Assert.Null(cause.Dock); // of no dock, and so of the fleet's readers alone
        Assert.True(cause.Urgent);
    }

    [Fact]
    public void Every_cause_has_a_key_of_its_own_and_the_same_one_the_next_time()
    {
        var keys = Causes([.. SkerryBay.Fleet()]).Select(c => c.Key).ToList();
        Assert.Equal(keys.Count, keys.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(keys, Causes([.. SkerryBay.Fleet().Reverse()]).Select(c => c.Key));
    }

    [Fact]
    public void An_amended_strike_or_inspection_is_the_cause_that_was_told()
    {
        var (struck, off) = (SkerryBay.StruckBoat(), SkerryBay.TakenOff());
        BoatFinding Looked(int entry, int? original) => off with { Positions = [off.Positions[0] with { Uncleared = [off.Positions[0].Uncleared[0] with { Entry = SkerryBay.Id(entry), Original = original is { } o ? SkerryBay.Id(o) : null }] }] };
        BoatFinding Hit(int entry, int? original) => struck with { Positions = [struck.Positions[0] with { OpenStrikes = [struck.Positions[0].OpenStrikes[0] with { Entry = SkerryBay.Id(entry), Original = original is { } o ? SkerryBay.Id(o) : null }] }] };
        Assert.Equal(Keys(Hit(71, null), Looked(81, null)), Keys(Hit(72, 71), Looked(82, 81)));
        Assert.NotEqual(Keys(Hit(71, null)), Keys(Hit(72, null)));
        Assert.NotEqual(Keys(Looked(81, null)), Keys(Looked(82, null)));

        static IEnumerable<string> Keys(params BoatFinding[] boats) => Causes(boats).Where(c => c.Urgent).Select(c => c.Key);
    }

    [Fact]
    public void One_that_trials_showed_back_inside_its_band_and_that_leaves_again_is_told_again()
    {
        static string Key(params double[] rpm) => Causes(SkerryBay.Boat("Fulmar", new Fitted(5000, 6000, rpm, 40, 18).Position())).Single(c => c.Kind == AlertKind.OutsideBand).Key;
        var first = Key(5050, 4950, 4940);
        Assert.Equal(first, Key(5050, 4950, 4940, 4930)); // still outside
        var second = Key(5050, 4950, 4940, 5060, 4930);
        Assert.NotEqual(first, second);
        Assert.Equal(second, Key(5050, 4950, 4940, 5060, 4930, 4920));
    }

    [Theory]
    [InlineData("2026-11-16T14:00", 59, false)] // gathered for an hour
    [InlineData("2026-11-16T14:00", 60, true)]
    [InlineData("2026-11-16T21:00", 600, false)] // quiet hours
    [InlineData("2026-11-17T06:29", 600, false)]
    [InlineData("2026-11-17T06:30", 600, true)]
    public void What_can_wait_is_gathered_and_not_told_at_night(string wall, int minutes, bool told)
    {
        var drift = Causes(SkerryBay.WornSkiff()).First(c => !c.Urgent);
        Assert.Equal(told, AlertDue.Of([(drift, At(wall).AddMinutes(-minutes))], AlertRule.Usual, At(wall), Faroe));
        Assert.False(AlertDue.Of([(drift, At(wall).AddDays(-1))], AlertRule.Usual with { Off = true }, At(wall), Faroe));
    }

    [Theory]
    [InlineData("2026-11-16T14:00")]
    [InlineData("2026-11-17T03:00")]
    public void Neither_quiet_hours_nor_gathering_delay_a_take_off_or_a_severe_strike_and_what_waits_goes_along(string wall)
    {
        var (urgent, drift) = (Causes(SkerryBay.TakenOff()).Single(c => c.Urgent), Causes(SkerryBay.WornSkiff()).First(c => !c.Urgent));
        Assert.True(AlertDue.Of([(urgent, At(wall))], AlertRule.Usual, At(wall), Faroe));
        Assert.True(AlertDue.Of([(drift, At(wall)), (urgent, At(wall))], AlertRule.Usual, At(wall), Faroe));
        Assert.False(AlertDue.Of([(drift, At(wall))], AlertRule.Usual, At(wall), Faroe));
    }

    [Fact]
    public void A_bad_afternoon_is_one_message_with_the_worst_first()
    {
        var causes = Causes([.. SkerryBay.Fleet()]);
        var draft = AlertContent.Draft("Skerry Bay Hire", causes, [.. SkerryBay.Fleet()], d => d, new Uri("https://fleet.example/"));
        Assert.Equal($"Skerry Bay Hire: {causes.Count} alerts, Dipper (take off) first", draft.Subject);
        var content = Assert.IsType<AlertContent>(draft.Content);
        Assert.Equal(causes.Count, content.Rows.Count);
        Assert.Equal("https://fleet.example/office/boats/boat-dipper", content.Rows[0].Link);
        Assert.All(content.Rows, r => Assert.False(string.IsNullOrWhiteSpace(r.Act)));
        Assert.InRange(draft.Pictures.Count, 1, 3);
        Assert.Equal("Skerry Bay Hire: Dipper, take off", AlertContent.Draft("Skerry Bay Hire", [causes[0]], [], d => d, null).Subject);
    }

    private static IReadOnlyList<AlertCause> Causes(params BoatFinding[] boats) => AlertCauses.Of(boats, FleetPolicy.Usual, AlertRule.Usual);

    private static DateTimeOffset At(string wall)
    {
        var local = DateTime.Parse(wall, CultureInfo.InvariantCulture);
        return new DateTimeOffset(local, Faroe.GetUtcOffset(local));
    }
}
