using System.Globalization;
using System.Runtime.CompilerServices;

namespace FleetWake.Propulsion;

/// <summary>Refuses numbers that cannot be a quantity; a refusal names the parameter and the number as it was given.</summary>
internal static class Reject
{
    /// <summary>Returns <paramref name="converted"/> unless it, or the number it came from, is not finite.</summary>
    internal static double NotFinite(
        double given, double converted, [CallerArgumentExpression(nameof(given))] string? name = null) =>
        double.IsFinite(given) && double.IsFinite(converted)
            ? converted
            : throw new ArgumentOutOfRangeException(name, given, "Must be a finite number.");

    /// <summary>As <see cref="NotFinite"/>, and refuses negative numbers too.</summary>
    internal static double NotFiniteOrNegative(
        double given, double converted, [CallerArgumentExpression(nameof(given))] string? name = null) =>
        given >= 0
            ? NotFinite(given, converted, name)
            : throw new ArgumentOutOfRangeException(name, given, "Must be zero or a positive, finite number.");

    /// <summary>As <see cref="Outside"/>, of a pure number or one whose name says its unit.</summary>
    internal static double NotWithin(double given, double low, double high, string name) =>
        given >= low && given <= high
            ? given
            : throw new ArgumentOutOfRangeException(
                name, given, string.Create(CultureInfo.InvariantCulture, $"Must lie in {low} to {high}."));

    /// <summary>Returns <paramref name="given"/> unless it lies outside a range, ends included, or is not a number.</summary>
    internal static double Outside(double low, double high, string unit, double given, string name) =>
        given >= low && given <= high
            ? given
            : throw new ArgumentOutOfRangeException(
                name, given, string.Create(CultureInfo.InvariantCulture, $"Must be from {low} to {high} {unit}."));
}
