using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop got its tag: what is stamped on it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="DiameterInches">Diameter, the first number on the prop [in].</param>
/// <param name="PitchInches">Pitch, the second number on the prop [in].</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Rotation">Which way it turns, seen from astern, driving ahead.</param>
[StoredAs("prop_registered", 1)]
public sealed record PropRegistered(
    Entry Entry,
    string Prop,
    double DiameterInches,
    double PitchInches,
    int Blades,
    PropMaterial Material,
    Rotation Rotation) : IRegistration;

/// <summary>What a prop is made of. Aluminium takes a strike itself; stainless passes it on to the shaft.</summary>
public enum PropMaterial
{
    /// <summary>Plastic or composite.</summary>
    Composite,

    /// <summary>Cast aluminium.</summary>
    Aluminium,

    /// <summary>Stainless steel.</summary>
    Stainless,
}

/// <summary>Which way a prop turns, seen from astern, driving ahead.</summary>
public enum Rotation
{
    /// <summary>Clockwise.</summary>
    Right,

    /// <summary>Anti-clockwise.</summary>
    Left,
}
