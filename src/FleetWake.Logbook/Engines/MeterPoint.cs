using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>One reading of an engine's hour meter.</summary>
/// <param name="Entry">The entry it came with.</param>
/// <param name="Hours">Hours of the engine [h]: what the meter showed, and what meters before it ran up.</param>
public sealed record MeterPoint(Entry Entry, double Hours)
{
    /// <summary>What the meter showed [h]; less than the engine's hours once a meter was replaced.</summary>
    public double Shown { get; init; } = Hours;

    /// <summary>It is the first of a new meter, and nobody read what the old one showed last: hours since the reading before it are missing.</summary>
    public bool Bridged { get; init; }
}

/// <summary>Engine hours at some moment.</summary>
/// <param name="Hours">Hours [h].</param>
/// <param name="Bridged">Reckoned between two readings, or carried on from the last, rather than read.</param>
public readonly record struct HoursAt(double Hours, bool Bridged);
