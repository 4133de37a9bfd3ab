using FleetWake.Propulsion.Response;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Fleet;

/// <summary>
/// What a fleet has shown of itself and every finding leans on: how its props wear, how rough its trials are, how it runs over the
/// year, how its engines answer the air, and how often a drift alarm of it is false. Immutable; findings name its number.
/// </summary>
public sealed class FleetPriors
{
    private readonly IReadOnlyDictionary<string, BoatResponse> responses;

    private FleetPriors(int number, FleetPrior drift, SeasonOfUse season, AlarmCalibration alarm, IReadOnlyDictionary<string, BoatResponse> responses) =>
        (Number, Drift, Season, Alarm, this.responses) = (number, drift, season, alarm, responses);

    /// <summary>
    /// The alarm of a fleet that has no trials of its own yet: what <see cref="AlarmCalibration.Of"/> gives for the usual schedule, kept
    /// here as numbers so that no program begins with a simulation. A test makes them again.
    /// </summary>
    internal static AlarmCalibration UsualAlarm { get; } = new(1.4, 0.022, 0.014, 0.033, 997, 0, false);

    /// <summary>What the trade expects of a fleet that has shown nothing yet; number 0.</summary>
    public static FleetPriors Trade { get; } = new(
        0, FleetPrior.Fit([], WearExpectation.Trade, DriftSettings.Recommended), SeasonOfUse.Trade, UsualAlarm, new Dictionary<string, BoatResponse>(StringComparer.Ordinal));

    /// <summary>Its number in the fleet's record, from 1; 0 before the first.</summary>
    public int Number { get; }

    /// <summary>Drift, noise and gross errors.</summary>
    public FleetPrior Drift { get; }

    /// <summary>How its boats run over the year.</summary>
    public SeasonOfUse Season { get; }

    /// <summary>What raises a drift alarm, and how often that is false.</summary>
    public AlarmCalibration Alarm { get; }

    /// <summary>How engines of a model answer a change of power; what is assumed of any where nothing is learned.</summary>
    public BoatResponse ResponseOf(string? model) => (model is null ? null : responses.GetValueOrDefault(model)) ?? BoatResponse.Prior;

    /// <summary>The priors that a recorded fit holds; the trade's where there is none.</summary>
    public static FleetPriors Of(FleetPriorFitted? fitted) => fitted is null
        ? Trade
        : new(fitted.Number, FleetPrior.Of(fitted.Drift), fitted.Season, fitted.Alarm, fitted.Gains.ToDictionary(g => g.Model, g => g.Response(), StringComparer.Ordinal));
}
