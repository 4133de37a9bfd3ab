using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// A torque as a wrench reads it, held in newton metres. Valid from zero up; a negative torque is refused, because a
/// wrench shows no sign and a prop nut is recorded by what it was tightened to. <c>default</c> is zero.
/// </summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the newton metres.</remarks>
public readonly record struct Torque
{
    private readonly double _newtonMetres;

    private Torque(double newtonMetres) => _newtonMetres = newtonMetres;

    /// <summary>The torque [N.m].</summary>
    public double NewtonMetres => _newtonMetres;

    /// <summary>
    /// The torque [lbf.ft]; 1 lbf.ft = 1.355 817 948 331 400 4 N.m exactly, from foot and pound (yard and pound
    /// agreement, 1959) and standard gravity 9.806 65 m/s2 (3rd CGPM, 1901).
    /// </summary>
    public double PoundForceFeet => _newtonMetres / ExactUnits.PoundForceFootInNewtonMetres;

    /// <summary>Takes a torque in newton metres.</summary>
    /// <param name="newtonMetres">The torque [N.m], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Torque FromNewtonMetres(double newtonMetres) =>
        new(Reject.NotFiniteOrNegative(newtonMetres, newtonMetres));

    /// <summary>Takes a torque in pound-force feet.</summary>
    /// <param name="poundForceFeet">The torque [lbf.ft], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Torque FromPoundForceFeet(double poundForceFeet) =>
        new(Reject.NotFiniteOrNegative(poundForceFeet, poundForceFeet * ExactUnits.PoundForceFootInNewtonMetres));

    /// <summary>The torque in newton metres to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{NewtonMetres:0.###} N.m");
}
