using FleetWake.Logbook.Entries;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Fleet;

/// <summary>
/// What a fleet had shown of itself up to a night, fitted to its record. A fact, so that every finding made under it can be made
/// again: fitted afresh it might differ, for late records change the past.
/// </summary>
/// <param name="Entry">The stamp; the program's own.</param>
/// <param name="Number">Counts the fits of this fleet that were recorded, from 1.</param>
/// <param name="Method">Name and version of the method that fitted it.</param>
/// <param name="Drift">Wear by material, water and mounting; noise; gross errors.</param>
/// <param name="Season">Use over the year.</param>
/// <param name="Alarm">What raises a drift alarm, and how often that is false.</param>
/// <param name="Gains">How engines answer the air, by model; models that taught nothing are left out.</param>
/// <param name="Boats">Boats with a usable trial.</param>
/// <param name="Mountings">Mountings with a usable trial.</param>
/// <param name="Trials">Their usable trials.</param>
[StoredAs("fleet_prior_fitted", 1)]
public sealed record FleetPriorFitted(
    Entry Entry,
    int Number,
    string Method,
    FleetPriorFigures Drift,
    SeasonOfUse Season,
    AlarmCalibration Alarm,
    IReadOnlyList<LearnedGain> Gains,
    int Boats,
    int Mountings,
    int Trials) : IFact;

/// <summary>How engines of a model answer power, as the fleet has shown.</summary>
/// <param name="Model">The model as registered.</param>
/// <param name="Gain">g [1]: share by which RPM follows power.</param>
/// <param name="GainSd">Its standard deviation [1].</param>
/// <param name="Steps">How many known changes taught it.</param>
public sealed record LearnedGain(string Model, double Gain, double GainSd, int Steps)
{
    internal BoatResponse Response() => BoatResponse.Prior with { Gain = new Uncertain(Gain, GainSd) };
}
