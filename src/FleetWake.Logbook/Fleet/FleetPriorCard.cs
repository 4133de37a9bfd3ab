using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Fleet;

/// <summary>What a fleet has shown of itself, for people and programs to read: no figure here is of one boat.</summary>
/// <param name="Number">Counts the fits of this fleet that were recorded, from 1; 0 for what the trade expects, before the first.</param>
/// <param name="FittedAt">When it was fitted, in the zone of the office; null for number 0.</param>
/// <param name="Method">Name and version of the method that fitted it.</param>
/// <param name="Boats">Boats with a usable trial.</param>
/// <param name="Mountings">Mountings with a usable trial.</param>
/// <param name="Trials">Their usable trials.</param>
/// <param name="Noise">How rough its trials are.</param>
/// <param name="Groups">What is expected of a prop on a new boat, for each pair of material and water that can be told of, those with the most mountings first.</param>
/// <param name="AnyOther">The same where material or water is none of those.</param>
/// <param name="Use">How it runs over the year.</param>
/// <param name="Gains">How its engines answer the air, by model; models that taught nothing are left out.</param>
/// <param name="Alarm">What raises a drift alarm, and how often that is false.</param>
public sealed record FleetPriorCard(
    int Number,
    DateTimeOffset? FittedAt,
    string Method,
    int Boats,
    int Mountings,
    int Trials,
    TrialNoiseCard Noise,
    IReadOnlyList<GroupWearCard> Groups,
    GroupWearCard AnyOther,
    UseOfYearCard Use,
    IReadOnlyList<LearnedGain> Gains,
    DriftAlarmCard Alarm)
{
    /// <summary>The card of a fit; of what the trade expects where there is none.</summary>
    public static FleetPriorCard Of(FleetPriorFitted? fitted)
    {
        var priors = FleetPriors.Of(fitted);
        var (drift, season, alarm) = (priors.Drift, priors.Season, priors.Alarm);
        var noise = drift.Figures(new HashSet<string>()).Noise;
        return new(
            priors.Number,
            fitted?.Entry.Happened(),
            fitted?.Method ?? FitFleetPrior.Method,
            fitted?.Boats ?? 0,
            fitted?.Mountings ?? 0,
            fitted?.Trials ?? 0,
            new(noise.MedianShare, noise.LogSd, TrialNoiseCard.At * noise.MedianShare, drift.Settings.GrossChance),
            [
                .. drift.Groups.OrderByDescending(g => g.Value).ThenBy(g => g.Key.Material, StringComparer.Ordinal).ThenBy(g => g.Key.Water, StringComparer.Ordinal)
                    .Select(g => new GroupWearCard(g.Key.Material, g.Key.Water, g.Value, Wear(drift.Group(g.Key.Material, g.Key.Water)))),
            ],
            new(null, null, 0, Wear(drift.Unseen)),
            new(season.MonthShares, season.MeanHoursPerDay, season.Boats),
            fitted?.Gains ?? [],
            new(Math.Exp(alarm.Threshold), alarm.FalseAlarmsPerBoatYear, alarm.Low, alarm.High, alarm.OwnSchedule));
    }

    private static Estimate Wear(SlopePrior prior)
    {
        var mean = SlopeGrid.Mean(prior.Weights);
        var square = 0.0;
        for (var g = 0; g < SlopeGrid.Count; g++) square += prior.Weights[g] * (SlopeGrid.At(g) - mean) * (SlopeGrid.At(g) - mean);
        return new(mean, Math.Sqrt(square), SlopeGrid.Quantile(prior.Weights, 0.1), SlopeGrid.Quantile(prior.Weights, 0.9), 0.8);
    }
}

/// <summary>How rough the trials of a boat are that the fleet has not seen.</summary>
/// <param name="MedianShare">Half of the boats have a smaller standard deviation of one trial than this share of the RPM [1].</param>
/// <param name="LogSd">How much boats differ: standard deviation of its natural logarithm [1].</param>
/// <param name="RpmAt5500">The same share of 5500 RPM [RPM].</param>
/// <param name="GrossErrorChance">Chance that a trial is grossly wrong [1].</param>
public sealed record TrialNoiseCard(double MedianShare, double LogSd, double RpmAt5500, double GrossErrorChance)
{
    internal const double At = 5500;
}

/// <summary>What is expected of a prop before its own trials.</summary>
/// <param name="Material">Its material, "not known" where nobody said; null for any.</param>
/// <param name="Water">The boat's water, "not known" where nobody said; null for any.</param>
/// <param name="Mountings">Mountings of the pair that the fleet has shown; 0 where the trade and the other pairs speak alone.</param>
/// <param name="Drift">Drift [RPM per 100 engine hours] with its 80 % range.</param>
public sealed record GroupWearCard(string? Material, string? Water, int Mountings, Estimate Drift);

/// <summary>How the fleet runs over the year.</summary>
/// <param name="ByMonth">Twelve, January first: how many times the year's mean a boat runs on a day of that month [1].</param>
/// <param name="HoursPerDay">Mean of what is believed of a boat, over the whole year [engine hours a day].</param>
/// <param name="Boats">How many boats taught it.</param>
public sealed record UseOfYearCard(IReadOnlyList<double> ByMonth, double HoursPerDay, int Boats);

/// <summary>What raises a drift alarm, and how often that is false.</summary>
/// <param name="AtToOne">It is raised when the trials are so many times likelier with drift than without [1].</param>
/// <param name="FalseAlarmsPerBoatYear">False alarms to be expected of a boat without drift in a year [1/a], by simulation.</param>
/// <param name="Low">Lower 95 % limit of that [1/a].</param>
/// <param name="High">Upper 95 % limit of that [1/a].</param>
/// <param name="OnOwnSchedule">The simulation had the fleet's own trials; else a usual year of them.</param>
public sealed record DriftAlarmCard(double AtToOne, double FalseAlarmsPerBoatYear, double Low, double High, bool OnOwnSchedule);
