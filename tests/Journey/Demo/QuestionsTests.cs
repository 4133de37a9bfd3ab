using FleetWake.Logbook.Entries;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>What the invented fleet asks of a reader: a question too many would hide those that matter.</summary>
public class QuestionsTests
{
    public static TheoryData<DateOnly> Days => [DemoDays.Usual, new DateOnly(2026, 7, 31), new DateOnly(2026, 11, 30), new DateOnly(2024, 2, 29)];

    [Theory]
    [MemberData(nameof(Days))]
    public void Nothing_is_asked_but_what_the_stories_leave_open(DateOnly today)
    {
        var asked = AssessedFleet.Of(DemoDays.Records[today]).Values
            .SelectMany(f => f.Contradictions.Select(c => (f.Boat, c.Kind, c.Question)))
            .OrderBy(a => a.Boat, StringComparer.Ordinal);
        Assert.Equal(
        [
            ("godwit", ContradictionKind.HoursOutOfLine),
            ("loaner-7", ContradictionKind.TrialWithoutProp),
            ("oystercatcher", ContradictionKind.PropInTwoPlaces),
            ("turnstone", ContradictionKind.PropInTwoPlaces),
        ],
        asked.Select(a => (a.Boat, a.Kind)));
    }
}
