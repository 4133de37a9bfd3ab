using System.Text.Json;
using CsCheck;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Parts;

namespace FleetWake.Logbook.Tests.Props;

public class Lives_and_stock_in_any_order
{
    /// <summary>Nothing accepted makes a fold throw, and its order of arrival, or arriving twice, never matters.</summary>
    [Fact]
    public void Any_accepted_records_tell_one_life_and_one_stock() => Anything.Records.Sample(
        t =>
        {
            var fleet = Dock.OneBoat().With(t.Records.SelectMany(Anything.Kept));
            Placed[] shuffled = [.. fleet.Placed, .. fleet.Placed];
            new Random(t.Seed).Shuffle(shuffled);
            Assert.Equal(Told(fleet), Told(new Fleet().With(shuffled)));
        },
        iter: 500);

    private static string Told(Fleet fleet)
    {
        var lives = new[] { "p1", "p2" }.Select(fleet.Life).ToList();
        var pins = fleet.Log("part/pin");
        var stock = PartStock.Of(pins, PartStock.BoatsNamed(pins).Select(b => fleet.Log("boat/" + b)));

        // Whatever came in with corrections, hours are never negative, and a prop that is mounted is on a boat.
        Assert.All(lives.SelectMany(l => l.Mountings), m => Assert.False(m.Hours < 0));
        Assert.All(lives, l => Assert.Equal(l.Place.Standing == Logbook.Props.PropStanding.Mounted, l.Place.Boat is not null));
        return JsonSerializer.Serialize(new { lives, stock, fits = FitsNow.Of(null, null, lives, [stock]) }, LogbookJson.Options);
    }
}
