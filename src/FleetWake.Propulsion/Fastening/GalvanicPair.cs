namespace FleetWake.Propulsion.Fastening;

/// <summary>
/// Two metals that touch under water: which of them is eaten, and by what potential difference. The difference tells the
/// direction and not the rate, which areas, water and time decide (ASTM G82, precautions).
/// </summary>
/// <param name="Eaten">The less noble metal, the anode; null when the ranges overlap so that either may be.</param>
/// <param name="LowVolts">Least potential difference [V]; 0 when the ranges overlap.</param>
/// <param name="HighVolts">Largest potential difference [V].</param>
public readonly record struct GalvanicPair(GalvanicMaterial? Eaten, double LowVolts, double HighVolts)
{
    /// <summary>Differences above about this [V] call for protection (a public galvanic-series sheet; common practice).</summary>
    public const double HarmlessVolts = 0.2;

    /// <summary>
    /// Potential of each metal in flowing sea water against a saturated calomel electrode [V], least noble first in each:
    /// Australasian Corrosion Association's table, the series of ASTM G82-98(2014), Fig. 1.
    /// </summary>
    private static readonly (double Low, double High)[] s_series =
    [
        (-1.63, -1.60), // magnesium
        (-1.03, -0.98), // zinc
        (-1.00, -0.76), // aluminium alloys
        (-0.72, -0.60), // mild steel, cast iron
        (-0.58, -0.44), // 302/304/321/347 active
        (-0.46, -0.33), // 316/317 active
        (-0.34, -0.26), // manganese bronze
        (-0.22, -0.14), // nickel-aluminium bronze
        (-0.10, -0.04), // 302/304/321/347 passive
        (-0.10, 0.00),  // 316/317 passive
    ];

    /// <summary>Something on the boat is eaten unless an anode is: look at the anodes.</summary>
    public bool RemindOfAnode => HighVolts > HarmlessVolts;

    /// <summary>The pair of two metals, in either order.</summary>
    /// <param name="one">One metal.</param>
    /// <param name="other">The other; the same one gives no difference.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a declared metal.</exception>
    public static GalvanicPair Of(GalvanicMaterial one, GalvanicMaterial other)
    {
        var (a, b) = (Potential(one, nameof(one)), Potential(other, nameof(other)));
        if (one == other)
            return new GalvanicPair(null, 0, 0); // of one piece or one melt; two alloys of one family may still differ
        if (a.High < b.Low)
            return new GalvanicPair(one, b.Low - a.High, b.High - a.Low);
        if (b.High < a.Low)
            return new GalvanicPair(other, a.Low - b.High, a.High - b.Low);
        return new GalvanicPair(null, 0, Math.Max(b.High - a.Low, a.High - b.Low));
    }

    private static (double Low, double High) Potential(GalvanicMaterial material, string name) =>
        Enum.IsDefined(material)
            ? s_series[(int)material]
            : throw new ArgumentOutOfRangeException(name, material, "Must be a declared metal.");
}
