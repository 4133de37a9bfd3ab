namespace FleetWake.Reports.Pictures.Figures;

/// <summary>Numbers with their limits, one a row, held against one reference: strikes of docks against the fleet's, shares that held against the level claimed.</summary>
/// <param name="Title">What it is of.</param>
/// <param name="Statement">What stands out.</param>
/// <param name="Caption">What the numbers are, above the rows.</param>
/// <param name="Rows">The rows, from the top.</param>
/// <param name="Reference">What they are held against.</param>
/// <param name="ReferenceLabel">What that is, in words.</param>
/// <param name="To">Right end of the axis, which begins at 0; limits beyond it end in an arrow.</param>
/// <param name="Note">A line below; null for none.</param>
public abstract record LimitRows(
    string Title, string Statement, string Caption, IReadOnlyList<LimitRow> Rows, double Reference, string ReferenceLabel, double To, string? Note)
    : Picture(Title, Statement);

/// <summary>A row.</summary>
/// <param name="Name">Whose number it is.</param>
/// <param name="Value">The number; null where there is none yet.</param>
/// <param name="Low">Its lower limit.</param>
/// <param name="High">Its upper limit; null when none is set.</param>
/// <param name="Beside">What it rests on, e.g. <c>12 in 3400 h</c>.</param>
/// <param name="Stands">The reference lies outside its limits.</param>
public sealed record LimitRow(string Name, double? Value, double Low, double? High, string Beside, bool Stands);
