using System.Text.Json;
using CsCheck;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Logbook.Tests.Figures;

public class Figures_in_any_order
{
    /// <summary>Nothing accepted makes a figure throw or be no number (JSON would refuse it), and the order of arrival never matters.</summary>
    [Fact]
    public void Any_accepted_records_give_one_set_of_figures() => Anything.Records.Sample(
        t =>
        {
            var fleet = Dock.OneBoat().With(t.Records.SelectMany(Anything.Kept));
            Placed[] shuffled = [.. fleet.Placed, .. fleet.Placed];
            new Random(t.Seed).Shuffle(shuffled);
            Assert.Equal(Told(fleet), Told(new Fleet().With(shuffled)));
        },
        iter: 100);

    [Fact]
    public void The_worked_fleet_is_the_same_backwards() =>
        Assert.Equal(Told(Worked.Fleet()), Told(new Fleet().With(Worked.Fleet().Placed.Reverse())));

    [Fact]
    public void Nothing_at_all_gives_words() => Assert.Contains("no rate is told", Told(new Fleet()), StringComparison.Ordinal);

    private static string Told(Fleet fleet)
    {
        var record = fleet.Record();
        return JsonSerializer.Serialize(
            new { UsedUp = PropLives.Of(record), Worn = PropLives.Of(record, LifeQuestion.Worn), Cost = WearCost.Of(record), Strikes = StrikeRates.Of(record), Spares = SpareNeeds.Of(record) },
            LogbookJson.Options);
    }
}
