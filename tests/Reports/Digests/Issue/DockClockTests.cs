using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Digests.Issue;

namespace FleetWake.Reports.Tests.Digests.Issue;

/// <summary>By whose clock a day begins and a night is quiet. The people at a dock sleep by the dock's clock; readers of the whole fleet sit at the office (judgement, no source).</summary>
public sealed class DockClockTests
{
    private static readonly TimeZoneInfo Office = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland");

    [Fact]
    public void A_docks_clock_is_the_one_that_was_told_else_that_of_its_boats_and_the_fleets_is_the_offices()
    {
        var boats = SkerryBay.Fleet(); // all at "North slip", Atlantic/Faroe
        Assert.Equal("Pacific/Auckland", Of(null, [], boats));
        Assert.Equal("Atlantic/Faroe", Of("North slip", [], boats));
        Assert.Equal("Europe/Oslo", Of("North slip", [new DockCard("North slip", "North slip", "Europe/Oslo", null, null)], boats));
        Assert.Equal("Pacific/Auckland", Of("nowhere", [], boats));
        Assert.Equal("Pacific/Auckland", Of("North slip", [], [.. boats.Select(b => b with { Retired = new RetiredCard(SkerryBay.Monday, Logbook.Season.BoatRetirement.Sold) })]));
    }

    private static string Of(string? dock, IReadOnlyList<DockCard> docks, IReadOnlyList<BoatFinding> boats) => DockClock.Of(dock, docks, boats, Office).Id;
}
