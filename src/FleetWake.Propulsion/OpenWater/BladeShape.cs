namespace FleetWake.Propulsion.OpenWater;

/// <summary>The shape of a prop as an open-water series sees it: pure numbers, no size.</summary>
/// <remarks>
/// A stamped pitch over a stamped diameter is where to begin; cup and progressive pitch make the effective P/D differ by several
/// per cent, which calibration at a baseline takes up (see <c>Balance.WotBalance</c>).
/// </remarks>
public readonly record struct BladeShape
{
    /// <summary>Takes the shape.</summary>
    /// <param name="blades">Number of blades Z, 2 to 7.</param>
    /// <param name="expandedAreaRatio">A_E/A_0 [1], 0.1 to 1.5; small outboard props about 0.5 to 0.6 (common practice, no source).</param>
    /// <param name="pitchRatio">P/D [1], 0.1 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges, or not a number: no polynomial means anything there.
    /// What lies between them and a series' own range is answered and marked extrapolated.</exception>
    public BladeShape(int blades, double expandedAreaRatio, double pitchRatio)
    {
        if (blades is < 2 or > 7)
            throw new ArgumentOutOfRangeException(nameof(blades), blades, "Must be 2 to 7 blades.");

        Blades = blades;
        ExpandedAreaRatio = Reject.NotWithin(expandedAreaRatio, 0.1, 1.5, nameof(expandedAreaRatio));
        PitchRatio = Reject.NotWithin(pitchRatio, 0.1, 3, nameof(pitchRatio));
    }

    /// <summary>Number of blades Z.</summary>
    public int Blades { get; }

    /// <summary>Expanded area ratio A_E/A_0 [1].</summary>
    public double ExpandedAreaRatio { get; }

    /// <summary>Pitch ratio P/D [1].</summary>
    public double PitchRatio { get; }

    /// <summary>
    /// Chord over diameter at 0.75 of the radius [1]: c/D = 2.073 (A_E/A_0)/Z (Oosterveld and van Oossanen 1975, for B-series
    /// blades; used for every series here).
    /// </summary>
    public double ChordRatio => 2.073 * ExpandedAreaRatio / Blades;

    /// <summary>The same blades at another pitch ratio.</summary>
    /// <param name="pitchRatio">P/D [1], 0.1 to 3.</param>
    public BladeShape WithPitchRatio(double pitchRatio) => new(Blades, ExpandedAreaRatio, pitchRatio);
}
