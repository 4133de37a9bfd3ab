namespace FleetWake.Propulsion.Hull;

/// <summary>Resistance about one speed, R = R_0 (V/V_0)^m: what a balance asks of a hull.</summary>
public readonly record struct HullResistance
{
    /// <summary>Half of the step of ln V over which the slope is taken [1].</summary>
    private const double Step = 0.01;

    /// <summary>Takes the resistance.</summary>
    /// <param name="reference">R_0.</param>
    /// <param name="referenceSpeed">V_0, above zero.</param>
    /// <param name="exponent">m [1], finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges.</exception>
    public HullResistance(Force reference, Speed referenceSpeed, double exponent)
    {
        if (!(referenceSpeed.MetresPerSecond > 0))
            throw new ArgumentOutOfRangeException(nameof(referenceSpeed), referenceSpeed, "Must be above zero.");

        (Reference, ReferenceSpeed, Exponent) = (reference, referenceSpeed, Reject.NotFinite(exponent, exponent));
    }

    /// <summary>R_0, the resistance at the reference speed.</summary>
    public Force Reference { get; }

    /// <summary>V_0.</summary>
    public Speed ReferenceSpeed { get; }

    /// <summary>m = dlnR/dlnV [1] about V_0. Not to be used across the hump, where there is no one exponent.</summary>
    public double Exponent { get; }

    /// <summary>R at another speed.</summary>
    /// <param name="speed">Speed through water, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A speed of zero or less: a power of it may have no value.</exception>
    public Force Of(Speed speed) => speed.MetresPerSecond > 0
        ? Force.FromNewtons(
            Reference.Newtons * Math.Pow(speed.MetresPerSecond / ReferenceSpeed.MetresPerSecond, Exponent))
        : throw new ArgumentOutOfRangeException(nameof(speed), speed, "Must be above zero.");

    /// <summary>The bare bottom of a planing hull about a speed, by Savitsky's method at a fixed centre of gravity.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="speed">Speed V_0, above zero.</param>
    /// <param name="water">Density of the water.</param>
    /// <param name="kinematicViscositySquareMetresPerSecond">nu [m2/s], 1e-7 to 1e-5.</param>
    /// <returns>R_0 and m; null when the hull does not plane there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="Savitsky.Equilibrium"/>.</exception>
    public static HullResistance? Planing(
        PlaningHull hull, Speed speed, Density water,
        double kinematicViscositySquareMetresPerSecond = Savitsky.SeaWaterSquareMetresPerSecond)
    {
        if (DragAt(1) is not { } here || DragAt(Math.Exp(-Step)) is not { } slower || DragAt(Math.Exp(Step)) is not { } faster)
            return null;

        var m = Math.Log(faster.Newtons / slower.Newtons) / (2 * Step); // [1]
        return new HullResistance(here, speed, m);

        Force? DragAt(double factor) => Savitsky.Equilibrium(
            hull, Speed.FromMetresPerSecond(factor * speed.MetresPerSecond), water,
            kinematicViscositySquareMetresPerSecond)?.Drag;
    }
}
