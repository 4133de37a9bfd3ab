using System.Text.Json;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Tests.Fleets;

public class What_a_fleet_has_shown
{
    private static readonly Entry s_night = new(Dock.Id("night"), "fleetwake", "worker", 1, Dock.Arrived.ReceivedAt, "UTC", Dock.Arrived.ReceivedAt, Dock.Arrived.ReceivedAt, 0, null);
    private static readonly IReadOnlyList<ICommand> s_records = A_small_fleet.Records([2, 5, 8, 30, 35, 40, 32, 28, 31, 36]);
    private static readonly IReadOnlyList<BoatHistory> s_fleet = A_small_fleet.Histories(s_records);
    private static readonly FleetPriorFitted s_fitted = FitFleetPrior.Of(s_fleet, 1, s_night);

    [Fact]
    public void It_tells_what_it_rests_on() =>
        Assert.Equal((1, 10, 10, 80), (s_fitted.Number, s_fitted.Boats, s_fitted.Mountings, s_fitted.Trials));

    [Fact]
    public void The_order_of_boats_and_of_records_does_not_matter()
    {
        var other = FitFleetPrior.Of([.. A_small_fleet.Histories(s_records.Reverse()).Reverse()], 1, s_night);
        Assert.Equal(Json(s_fitted), Json(other));
    }

    /// <summary>What is written, sorted by the store and read again makes the same findings to the last bit.</summary>
    [Fact]
    public void Findings_made_under_it_can_be_made_again()
    {
        var again = FleetPriors.Of(JsonSerializer.Deserialize<FleetPriorFitted>(Json(s_fitted), LogbookJson.Options));
        Assert.All(s_fleet, boat => Assert.Equal(Json(Assess.Boat(boat, FleetPriors.Of(s_fitted))), Json(Assess.Boat(boat, again))));
        Assert.Equal(1, Assess.Boat(s_fleet[0], again).PriorNumber);
    }

    /// <summary>Most of this fleet drift by 30: a boat of it with two trials is told so, and one of the trade's fleet is not.</summary>
    [Fact]
    public void A_boat_with_two_trials_borrows_from_the_others()
    {
        var young = A_small_fleet.Histories(A_small_fleet.Records([30], trials: 2)).Single();
        double Drift(FleetPriors? priors) => Assess.Boat(young, priors).Positions.Single().Mounting!.Drift!.Value;
        Assert.True(Drift(FleetPriors.Of(s_fitted)) > 1.3 * Drift(null), $"{Drift(FleetPriors.Of(s_fitted))} {Drift(null)}");
    }

    /// <summary>A mounting must not be told its own drift twice.</summary>
    [Fact]
    public void Its_own_trials_are_not_in_what_the_fleet_says_of_a_mounting()
    {
        var slow = s_fleet[0].Mountings.Single().Id;
        var of = s_fitted.Drift.Members.Single(m => m.Id == slow);
        var rest = FitFleetPrior.Of([.. s_fleet.Skip(1)], 1, s_night);
        double Mean(IReadOnlyList<int> counts) => counts.Select((c, i) => c * SlopeGrid.At(i)).Sum() / counts.Sum(c => (double)c);
        var without = Mean(rest.Drift.Groups.Single(g => g is { Material: "aluminium", Water: "salt" }).Counts);
        var with = Mean(s_fitted.Drift.Groups.Single(g => g is { Material: "aluminium", Water: "salt" }).Counts);
        Assert.True(Math.Abs(without - Mean(of.Counts)) < 0.5 * Math.Abs(with - Mean(of.Counts)), $"alone {Mean(of.Counts)}, others {without}, all {with}");
    }

    [Fact]
    public void A_fleet_of_nothing_is_the_trades()
    {
        var nothing = FitFleetPrior.Of([], 1, s_night);
        Assert.Equal((0, 0, 0), (nothing.Boats, nothing.Mountings, nothing.Trials));
        Assert.Equal(Json(FleetPriors.Trade.Drift.Figures()), Json(nothing.Drift));
        Assert.Equal(0, FleetPriors.Of(null).Number);
    }

    [Fact]
    public void A_fresh_installation_with_one_boat_works()
    {
        var one = A_small_fleet.Histories(A_small_fleet.Records([10], trials: 1));
        var mounting = Assess.Boat(one.Single(), FleetPriors.Of(FitFleetPrior.Of(one, 1, s_night))).Positions.Single().Mounting!;
        Assert.True(mounting.FleetOnly);
        Assert.InRange(mounting.Drift!.Value, 0, 40);
        Assert.Null(mounting.Watch);
        Assert.NotNull(mounting.NextTrial);
    }

    /// <summary>The usual alarm is kept as numbers: this makes them again.</summary>
    [Fact]
    public void The_usual_alarm_is_what_its_simulation_gives()
    {
        var made = AlarmCalibration.Of([], FleetPriors.Trade.Drift.Settings);
        Assert.Equal(Rounded(made), Rounded(FleetPriors.Trade.Alarm));
    }

    private static AlarmCalibration Rounded(AlarmCalibration of) => of with
    {
        FalseAlarmsPerBoatYear = Math.Round(of.FalseAlarmsPerBoatYear, 3),
        Low = Math.Round(of.Low, 3),
        High = Math.Round(of.High, 3),
        BoatYears = Math.Round(of.BoatYears),
    };

    private static string Json<T>(T of) => JsonSerializer.Serialize(of, LogbookJson.Options);
}
