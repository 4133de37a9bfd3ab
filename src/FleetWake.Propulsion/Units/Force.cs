using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>A force along the way of a boat: thrust, resistance or a clamp. Held in newtons, valid from zero up. <c>default</c> is zero.</summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the N.</remarks>
public readonly record struct Force
{
    private readonly double _newtons;

    private Force(double newtons) => _newtons = newtons;

    /// <summary>The value [N].</summary>
    public double Newtons => _newtons;

    /// <summary>The value [lbf]; 0.453 592 37 kg x 9.806 65 m/s2, exact.</summary>
    public double PoundsForce => _newtons / ExactUnits.NewtonsPerPoundForce;

    /// <summary>Takes a value in N.</summary>
    /// <param name="newtons">The value [N], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Force FromNewtons(double newtons) => new(Reject.NotFiniteOrNegative(newtons, newtons));

    /// <summary>Takes a value in lbf.</summary>
    /// <param name="poundsForce">The value [lbf], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Force FromPoundsForce(double poundsForce) =>
        new(Reject.NotFiniteOrNegative(poundsForce, poundsForce * ExactUnits.NewtonsPerPoundForce));

    /// <summary>The value in N to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Newtons:0.###} N");
}
