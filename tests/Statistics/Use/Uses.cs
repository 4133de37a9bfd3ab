using FleetWake.Statistics.Use;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>Seasons for the tests.</summary>
internal static class Uses
{
    /// <summary>A fleet without seasons, and sure of it.</summary>
    internal static SeasonOfUse Sure(double hoursPerDay, double shape, double lump = 6) =>
        SeasonOfUse.Trade with { MeanHoursPerDay = hoursPerDay, Shape = shape, OutingHours = lump, Boats = 10, SeasonDoubt = 0 };

    /// <summary>May to September, more in July; nothing in winter.</summary>
    internal static SeasonOfUse Summer(double hoursPerDay, double shape, double lump = 6) =>
        Sure(hoursPerDay, shape, lump) with { MonthShares = [0, 0, 0, 0, 2, 2.5, 3, 2.5, 2, 0, 0, 0] };
}
