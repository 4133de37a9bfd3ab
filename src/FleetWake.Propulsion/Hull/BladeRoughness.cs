namespace FleetWake.Propulsion.Hull;

/// <summary>
/// Drag of a blade's section by the roughness of its surface, as the ITTC 1978 performance prediction method takes it
/// (ITTC 7.5-02-03-01.4; form from memory).
/// </summary>
/// <remarks>
/// The formula is for a fully rough surface and chords of metres. At the 90 to 150 mm of an outboard prop treat the effect of a
/// roughness as an upper bound. No measured wear or roughness of outboard props is published.
/// </remarks>
public static class BladeRoughness
{
    /// <summary>k_p of a new prop in the ITTC's method: 30 micrometres.</summary>
    public static Length Standard { get; } = Length.FromMillimetres(0.030);

    /// <summary>C_D = 2 (1 + 2 t/c) (1.89 + 1.62 log10(c/k_p))^-2.5 [1].</summary>
    /// <param name="chord">Chord c at 0.75 of the radius, 0.01 to 10 m.</param>
    /// <param name="thicknessRatio">t/c there [1], 0 to 0.5.</param>
    /// <param name="roughness">k_p, 1 micrometre to 1 mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range, named.</exception>
    public static double SectionDragCoefficient(Length chord, double thicknessRatio, Length roughness)
    {
        var c = Reject.NotWithin(chord.Metres, 0.01, 10, nameof(chord));               // [m]
        var t_c = Reject.NotWithin(thicknessRatio, 0, 0.5, nameof(thicknessRatio));    // [1]
        var k_p = Reject.NotWithin(roughness.Metres, 1e-6, 1e-3, nameof(roughness));   // [m]
        return 2 * (1 + (2 * t_c)) * Math.Pow(1.89 + (1.62 * Math.Log10(c / k_p)), -2.5);
    }

    /// <summary>dC_D [1] of a surface against the standard one; for <c>BoatState.SectionDragChange</c>. Negative when smoother.</summary>
    /// <param name="chord">As above.</param>
    /// <param name="thicknessRatio">As above; about 0.06 for small props (common practice, no source).</param>
    /// <param name="roughness">As above.</param>
    /// <exception cref="ArgumentOutOfRangeException">As above.</exception>
    public static double Change(Length chord, double thicknessRatio, Length roughness) =>
        SectionDragCoefficient(chord, thicknessRatio, roughness) - SectionDragCoefficient(chord, thicknessRatio, Standard);
}
