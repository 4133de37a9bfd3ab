namespace FleetWake.Propulsion;

/// <summary>
/// What a prop would do if water were a solid nut, and how far short of that a boat stays. Plain kinematics; the usual
/// definitions of naval architecture (for instance Carlton, Marine Propellers and Propulsion; cited from memory).
/// </summary>
/// <remarks>
/// The pitch here is whatever pitch is passed in. A stamped pitch is not the effective one: cup, progressive pitch and
/// casting tolerance move it by several per cent, so a slip from it is good for comparing a boat with itself only.
/// </remarks>
public static class Slip
{
    /// <summary>The speed at which the prop would advance one pitch a turn, without slip: V_th = n P.</summary>
    /// <param name="engine">Engine rate.</param>
    /// <param name="gear">Gear ratio.</param>
    /// <param name="pitch">Pitch P, the advance per prop turn.</param>
    /// <returns>V_th, zero when the engine stands or the pitch is zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gear"/> is <c>default</c>, or the result is not
    /// finite.</exception>
    public static Speed TheoreticalSpeed(EngineRate engine, GearRatio gear, Length pitch)
    {
        var n = PropRate.Of(engine, gear).RevolutionsPerSecond; // [rev/s]
        var P = pitch.Metres;                                // [m]
        return Speed.FromMetresPerSecond(n * P);             // [m/s]
    }

    /// <summary>
    /// Apparent slip s_a = 1 - V / V_th [1], a fraction, not a per cent. "Apparent" because V is the boat's speed and
    /// not that of the water at the prop.
    /// </summary>
    /// <param name="boat">Speed V of the boat; over ground with the current removed, see <see cref="TwoWayMean"/>.</param>
    /// <param name="engine">Engine rate.</param>
    /// <param name="gear">Gear ratio.</param>
    /// <param name="pitch">Pitch.</param>
    /// <returns>
    /// 1 at standstill, 0 at the theoretical speed, negative above it: with cup, a pitch stamped too small or a
    /// following current that is real information, so it is never clamped. Typical planing outboard: 0.08 to 0.20
    /// (common practice, no source).
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The theoretical speed is zero, so there is no slip to speak of;
    /// names the engine rate or else the pitch. Also as for <see cref="TheoreticalSpeed"/>.</exception>
    public static double ApparentSlipFraction(Speed boat, EngineRate engine, GearRatio gear, Length pitch)
    {
        var V = boat.MetresPerSecond;                                      // [m/s]
        var V_th = TheoreticalSpeed(engine, gear, pitch).MetresPerSecond; // [m/s]
        if (!(V_th > 0))
            throw engine.RevolutionsPerMinute > 0
                ? new ArgumentOutOfRangeException(nameof(pitch), pitch, "Slip needs a pitch above zero.")
                : new ArgumentOutOfRangeException(nameof(engine), engine, "Slip needs a turning engine.");

        return 1 - (V / V_th);
    }
}
