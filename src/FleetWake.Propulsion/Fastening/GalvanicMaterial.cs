namespace FleetWake.Propulsion.Fastening;

/// <summary>A metal of a boat under water, from the least noble on.</summary>
public enum GalvanicMaterial
{
    /// <summary>Magnesium anodes, for fresh water.</summary>
    Magnesium,

    /// <summary>Zinc anodes.</summary>
    Zinc,

    /// <summary>Aluminium alloys: lower units, most props, some anodes.</summary>
    Aluminium,

    /// <summary>Mild steel and cast iron.</summary>
    MildSteel,

    /// <summary>Stainless steel 302, 304, 321 or 347 where its film is broken: under deposits, in still or stale water.</summary>
    Stainless304Active,

    /// <summary>Stainless steel 316 or 317, likewise.</summary>
    Stainless316Active,

    /// <summary>Manganese bronze.</summary>
    ManganeseBronze,

    /// <summary>Nickel-aluminium bronze.</summary>
    NickelAluminiumBronze,

    /// <summary>Stainless steel 302, 304, 321 or 347 in clean moving water. Precipitation-hardening grades, usual for props, are taken for this (judgement, no source).</summary>
    Stainless304Passive,

    /// <summary>Stainless steel 316 or 317, likewise.</summary>
    Stainless316Passive,
}
