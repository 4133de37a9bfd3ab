namespace FleetWake.Statistics.Use;

/// <summary>Hours that one engine ran between two readings of its meter.</summary>
/// <param name="From">Day of the first reading, whose own hours are not in it.</param>
/// <param name="To">Day of the second reading, whose hours are.</param>
/// <param name="EngineHours">Hours run between the two [h], zero or more.</param>
/// <remarks>
/// A plain carrier: it checks nothing. Whoever learns from stretches leaves aside those that cannot be: no day long, back in
/// time, longer than twenty years, hours below zero, not a number, or more than the clock has.
/// </remarks>
public readonly record struct UseStretch(DateOnly From, DateOnly To, double EngineHours)
{
    private const int LongestDays = 7305; // twenty years: no engine's meter goes without a reading so long

    internal int Days => To.DayNumber - From.DayNumber;

    // One day more than the dates tell: read in the morning, and read again in the evening.
    internal bool CanBe => Days is > 0 and <= LongestDays && EngineHours >= 0 && EngineHours <= 24.0 * (Days + 1);
}
