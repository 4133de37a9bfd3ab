using System.Globalization;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.OpenWater;

/// <summary>The reference tables of the series, and the series by the names used there.</summary>
internal static class SeriesTables
{
    internal static OpenWaterSeries Named(string name) => name switch
    {
        "B" => OpenWaterSeries.WageningenB,
        "Gawn" => OpenWaterSeries.Gawn,
        "KCA" => OpenWaterSeries.GawnBurrill,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Unknown series."),
    };

    internal static IEnumerable<string[]> Rows(string file) => QuotedTable.Rows($"series/{file}");

    /// <summary>The terms of a table: coefficient, powers of J, P/D, area and blades, and of L where there is one.</summary>
    internal static SeriesTerm[] Terms(string file) => [.. Rows(file).Select(cells =>
    {
        var powers = cells[2..].Select(cell => byte.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
        return new SeriesTerm(
            Number(cells[1]), powers[0], powers[1], powers[2], powers[3], powers.Length > 4 ? powers[4] : (byte)0);
    })];

    /// <summary>As <see cref="Terms"/>, for the tables that part a number into mantissa and power of ten and begin with the area.</summary>
    internal static SeriesTerm[] TermsByMantissa(string file) => [.. Rows(file).Select(cells =>
    {
        var powers = cells[3..].Select(cell => byte.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
        return new SeriesTerm(Number($"{cells[1]}e{cells[2]}"), powers[2], powers[1], powers[0], 0);
    })];

    internal static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
