namespace FleetWake.Propulsion.Fastening;

/// <summary>
/// The thread of a prop shaft with the length that its nut stretches; what is needed to guess the clamp of a joint.
/// </summary>
/// <remarks>
/// Nothing here sets a torque. A clamp made by a torque scatters by about a quarter, and one made by a turn depends on how
/// soft the stack of hub, sleeve and washers is, which nobody measures; so both come as wide ranges.
/// </remarks>
public sealed record PropShaftThread
{
    /// <summary>
    /// Nut factor K in T = K F d [1]: 0.2 for plain steel, from 0.15 greased to 0.25 dry (handbook figures, from memory; for
    /// instance Bickford, An Introduction to the Design and Behavior of Bolted Joints).
    /// </summary>
    public static Uncertain NutFactor { get; } = new(0.20, 0.05);

    /// <summary>Young's modulus of a stainless shaft [Pa]: 195 GPa (handbook range 190 to 200, from memory).</summary>
    private const double E = 195e9;

    /// <summary>
    /// How much of a turn stretches the shaft and presses the stack as if the stack were rigid [1]: 0.1 to 0.6. Judgement, no
    /// source: a sleeve as stiff as the shaft would leave half, and seating, washers and thread take more.
    /// </summary>
    private const double SoftestShare = 0.1;
    private const double StiffestShare = 0.6;

    /// <summary>Takes a thread.</summary>
    /// <param name="diameter">Nominal diameter d, 5 to 60 mm.</param>
    /// <param name="pitch">Thread pitch p, above 0 and at most a quarter of the diameter.</param>
    /// <param name="stretched">Length between thrust face and nut, 10 to 400 mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public PropShaftThread(Length diameter, Length pitch, Length stretched)
    {
        _ = Reject.Outside(5, 60, "mm", diameter.Millimetres, nameof(diameter));
        _ = Reject.Outside(10, 400, "mm", stretched.Millimetres, nameof(stretched));
        if (!(pitch.Metres > 0 && pitch.Metres <= diameter.Metres / 4))
            throw new ArgumentOutOfRangeException(
                nameof(pitch), pitch, "Must be above 0 and at most a quarter of the diameter.");

        (Diameter, Pitch, Stretched) = (diameter, pitch, stretched);
    }

    /// <summary>Nominal diameter.</summary>
    public Length Diameter { get; }

    /// <summary>Thread pitch.</summary>
    public Length Pitch { get; }

    /// <summary>Length between thrust face and nut.</summary>
    public Length Stretched { get; }

    /// <summary>A guess of the clamp that a torque made: F = T/(K d), K one standard deviation up and down.</summary>
    /// <param name="torque">Torque T on the nut.</param>
    public ClampEstimate FromTorque(Torque torque)
    {
        var T = torque.NewtonMetres; // [N m]
        var d = Diameter.Metres;     // [m]
        return new ClampEstimate(
            Force.FromNewtons(T / (NutFactor.High(1) * d)), Force.FromNewtons(T / (NutFactor.Low(1) * d)));
    }

    /// <summary>
    /// A guess of the clamp that a further turn adds, by the stretch of the shaft: F = c E A_s x/L with the advance x = p
    /// theta/360, the tensile stress area A_s = pi/4 (d - 0.9382 p)^2 (ISO 898-1, from memory) and c the share that the
    /// softness of the stack leaves.
    /// </summary>
    /// <param name="turnDegrees">The further turn theta [degrees], 0 to 180, from a joint that is already tight.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public ClampEstimate FromFurtherTurn(double turnDegrees)
    {
        var theta = Reject.Outside(0, 180, "degrees", turnDegrees, nameof(turnDegrees)); // [degrees]
        var x = Pitch.Metres * theta / 360;                                              // [m]
        var d_s = Diameter.Metres - (0.9382 * Pitch.Metres);                             // [m]
        var A_s = Math.PI / 4 * d_s * d_s;                                               // [m2]
        var rigid = E * A_s * x / Stretched.Metres;                                      // [N]
        return new ClampEstimate(Force.FromNewtons(SoftestShare * rigid), Force.FromNewtons(StiffestShare * rigid));
    }

    /// <summary>
    /// A guess of the torque that such a turn would need in all: T + K d F, from a slippery thread with a soft stack to a dry one
    /// with a stiff stack, so that the upper end holds for whichever it is.
    /// </summary>
    /// <param name="reached">Torque already on the nut.</param>
    /// <param name="turnDegrees">The further turn [degrees], 0 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public TorqueRange TorqueAfter(Torque reached, double turnDegrees)
    {
        var more = FromFurtherTurn(turnDegrees);
        var d = Diameter.Metres; // [m]
        return new TorqueRange(
            Torque.FromNewtonMetres(reached.NewtonMetres + (NutFactor.Low(1) * d * more.Low.Newtons)),
            Torque.FromNewtonMetres(reached.NewtonMetres + (NutFactor.High(1) * d * more.High.Newtons)));
    }
}
