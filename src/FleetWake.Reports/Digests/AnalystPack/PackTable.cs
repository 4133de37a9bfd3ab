namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>A table for an analyst: what stands in the file, and in the dictionary beside it.</summary>
/// <param name="Name">Name of the file, without its ending.</param>
/// <param name="Meaning">What a row is.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows: text, double, int, bool, day or null, as the column says.</param>
public sealed record PackTable(string Name, string Meaning, IReadOnlyList<PackColumn> Columns, IReadOnlyList<object?[]> Rows);

/// <summary>A column.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">What its cells hold.</param>
/// <param name="Unit">Unit; empty without one.</param>
/// <param name="Meaning">What it says.</param>
public sealed record PackColumn(string Name, PackType Type, string Unit, string Meaning);

/// <summary>What cells hold.</summary>
public enum PackType
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>Yes or no.</summary>
    Truth,

    /// <summary>A day of the dock's calendar.</summary>
    Day,
}
