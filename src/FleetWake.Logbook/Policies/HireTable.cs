using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Policies;

/// <summary>The operator's table: what a strike or a verdict means for hire, until it is cleared. The first row that fits counts.</summary>
/// <param name="Rows">The rows, in order.</param>
public sealed record HireTable(IReadOnlyList<HireRow> Rows)
{
    /// <summary>
    /// The table of an operator that set none. Common practice, no source. "Touched, no mark" never blocks, else nobody
    /// reports; a scuff needs a look by a mechanic; whatever is heavier needs an inspection that says fit.
    /// </summary>
    public static HireTable Usual { get; } = new(
    [
        new(null, StrikeSeverity.NoMark, null, HireWord.InHire),
        new(null, StrikeSeverity.Scuffed, null, HireWord.LookFirst),
        new(null, StrikeSeverity.Chipped, null, HireWord.Out),
        new(null, StrikeSeverity.Bent, null, HireWord.Out),
        new(null, StrikeSeverity.Broken, null, HireWord.Out),
        new(Verdict.Fit, null, null, HireWord.InHire),
        new(Verdict.Watch, null, null, HireWord.InHire),
        new(Verdict.Repair, null, null, HireWord.LookFirst),
        new(Verdict.TakeOff, null, null, HireWord.Out),
    ]);

    /// <summary>What a strike means for hire. Where the material is not known, the strictest word of all materials counts.</summary>
    public HireWord Of(StrikeSeverity severity, PropMaterial? material) => Strictest(material, r => r.Severity == severity);

    /// <summary>What a verdict means for hire.</summary>
    public HireWord Of(Verdict verdict, PropMaterial? material) => Strictest(material, r => r.Verdict == verdict);

    private HireWord Strictest(PropMaterial? material, Func<HireRow, bool> about) =>
        (material is { } known ? [known] : Enum.GetValues<PropMaterial>()).Max(m => Rows.First(r => about(r) && (r.Material ?? m) == m).State);
}

/// <summary>One row: a strike's severity or an inspection's verdict, for a material or for all, and what follows.</summary>
/// <param name="Verdict">The verdict it is about; null when it is about strikes.</param>
/// <param name="Severity">The severity it is about; null when it is about verdicts.</param>
/// <param name="Material">Material of the prop; null for any.</param>
/// <param name="State">What follows for hire.</param>
public sealed record HireRow(Verdict? Verdict, StrikeSeverity? Severity, PropMaterial? Material, HireWord State);

/// <summary>May a boat go out on hire?</summary>
public enum HireWord
{
    /// <summary>Nothing on record keeps it.</summary>
    InHire,

    /// <summary>A mechanic looks first.</summary>
    LookFirst,

    /// <summary>It stays.</summary>
    Out,
}
