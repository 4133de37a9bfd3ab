using System.Globalization;

namespace FleetWake.Propulsion.Tests;

/// <summary>The rows of a table in Reference, less its header.</summary>
internal static class ReferenceTable
{
    internal static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", file))
            .Skip(1)
            .Where(line => line.Length > 0)
            .Select(line => line.Split(','));

    internal static double[] Numbers(IEnumerable<string> cells) =>
        [.. cells.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
}
