using FleetWake.Demo;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>Days on which the demo may be shown: month ends, leap days, the weeks of clock changes, every season.</summary>
public static class DemoDays
{
    /// <summary>A usual day.</summary>
    public static readonly DateOnly Usual = new(2026, 3, 18);

    /// <summary>Forty days.</summary>
    public static IReadOnlyList<DateOnly> All { get; } =
    [
        Usual,
        new(2026, 1, 31), new(2026, 2, 28), new(2026, 3, 31), new(2026, 4, 30), new(2026, 5, 31), new(2026, 6, 30),
        new(2026, 7, 31), new(2026, 8, 31), new(2026, 9, 30), new(2026, 10, 31), new(2026, 11, 30), new(2026, 12, 31),
        new(2024, 2, 28), new(2024, 2, 29), new(2024, 3, 1), new(2028, 2, 29), new(2028, 3, 1), new(2027, 1, 1),
        new(2026, 4, 4), new(2026, 4, 5), new(2026, 4, 6), new(2026, 4, 26), new(2026, 4, 27),
        new(2026, 9, 26), new(2026, 9, 27), new(2026, 9, 28), new(2026, 10, 18), new(2026, 10, 19),
        new(2025, 4, 6), new(2025, 9, 28), new(2027, 4, 4), new(2027, 9, 26),
        new(2026, 5, 4), new(2026, 5, 5), new(2026, 10, 24), new(2026, 10, 25), new(2029, 7, 2), new(2030, 12, 24), new(2031, 8, 17),
    ];

    /// <summary>The record of each day, written once.</summary>
    public static IReadOnlyDictionary<DateOnly, InventedRecord> Records { get; } = All.ToDictionary(d => d, InventedFleet.Write);
}
