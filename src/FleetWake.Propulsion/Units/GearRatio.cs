using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// The reduction of a gearcase: how often the engine turns while the prop turns once. Finite and above zero; above one
/// on every outboard (common practice, no source), but one (direct drive) and less are accepted.
/// </summary>
/// <remarks>
/// <c>default(GearRatio)</c> is no ratio: it reads as 0 and every formula here refuses it, so that a forgotten ratio
/// never passes for direct drive.
/// </remarks>
public readonly record struct GearRatio
{
    /// <summary>Takes a ratio such as 2.08 for 2.08:1.</summary>
    /// <param name="enginePerPropTurn">Engine turns per prop turn [1], finite and above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public GearRatio(double enginePerPropTurn)
    {
        if (!(enginePerPropTurn > 0) || !double.IsFinite(enginePerPropTurn))
            throw new ArgumentOutOfRangeException(
                nameof(enginePerPropTurn), enginePerPropTurn, "Must be a finite number above zero.");

        EnginePerPropTurn = enginePerPropTurn;
    }

    /// <summary>Engine turns per prop turn [1]; above zero, but 0 for <c>default</c>.</summary>
    public double EnginePerPropTurn { get; }

    /// <summary>The ratio to three decimals, such as <c>2.08:1</c>, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{EnginePerPropTurn:0.###}:1");
}
