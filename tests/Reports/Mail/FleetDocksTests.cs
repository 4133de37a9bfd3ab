using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Mail;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>Which docks there are to read of, and what reaches nobody.</summary>
public sealed class FleetDocksTests
{
    private static readonly BoatFinding Tern = SkerryBay.Quiet();
    private static readonly BoatFinding Lost = SkerryBay.Quiet() with { Boat = "boat-lost", Registered = null };
    private static readonly IReadOnlyList<FleetDock> Docks = FleetDocks.Of(Opened("old-mole"), [Tern, Lost]);

    [Fact]
    public void Docks_are_those_that_were_opened_and_those_that_boats_name()
    {
        Assert.Equal("North slip (1 boat), old-mole (no boat)", Docks.Listed());
        Assert.Equal("North slip", Docks.Meant("north SLIP")!.Dock);
        Assert.Null(Docks.Meant("north-slop"));
    }

    [Fact]
    public void A_reader_of_a_dock_without_boats_is_told_of_with_the_docks_that_have_some() => Assert.Equal(
        ["2 of skerry-bay read due-list of \"nort-slip\", where no boat lies: nothing comes of it (boats lie at North slip (1 boat))"],
        Gaps([Reader(null), Reader("nort-slip", DigestNames.DueList), Reader("nort-slip", DigestNames.DueList)], Tern));

    [Fact]
    public void A_boat_without_a_dock_is_told_of_and_to_whom_it_is() => Assert.Equal(
        [
            "boats of skerry-bay without a dock: boat-lost; readers of the whole fleet alone are told of them: register them",
            "boats of skerry-bay without a dock: boat-lost; nobody is told of them: register them",
        ],
        [.. Gaps([Reader(null)], Tern, Lost), .. Gaps([Reader("North slip")], Tern, Lost)]);

    [Fact]
    public void Boats_that_nobody_reads_of_are_told_of()
    {
        Assert.Equal(["nobody reads of North slip (1 boat) of skerry-bay: subscribe somebody to that dock, or to the whole fleet"], Gaps([Reader("old-mole")], Tern).Skip(1));
        Assert.Equal(["skerry-bay has 1 boat, and nobody receives anything of them: \"fleetwake operator subscribe\""], Gaps([Reader(null) with { Subscribed = false }], Tern));
    }

    [Fact]
    public void Nothing_is_told_where_all_is_well_and_of_a_fleet_without_boats()
    {
        Assert.Empty(Gaps([Reader("North slip")], Tern));
        Assert.Empty(Gaps([Reader("anywhere")]));
        Assert.Empty(Gaps([Reader("anywhere")], Tern with { Retired = new RetiredCard(SkerryBay.Monday, Logbook.Season.BoatRetirement.Sold) }));
    }

    private static IEnumerable<string> Gaps(IReadOnlyCollection<Recipient> readers, params BoatFinding[] boats) => FleetDocks.Gaps("skerry-bay", readers, FleetDocks.Of(Opened("old-mole"), boats), boats);

    private static Recipient Reader(string? dock, string digest = DigestNames.WeeklyWear) => new("r-1", "boss@bay.example", digest, "t", true) { Dock = dock };

    private static OfficeState Opened(string dock)
    {
        var noon = new DateTimeOffset(2026, 1, 1, 12, 0, 0, TimeSpan.Zero);
        var log = FactLog.Empty(StreamName.Operator).Evolve(new DockOpened(new Entry(SkerryBay.Id(7), "office", "office", 0, noon, "UTC", noon, noon, 0, null), dock, dock, "Europe/Oslo", null, null));
        return OfficeState.Unopened with { Record = OfficeRecord.Of(log) };
    }
}
