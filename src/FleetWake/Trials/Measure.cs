using System.Text.RegularExpressions;
using FleetWake.Commands;
using FleetWake.Propulsion;

namespace FleetWake.Trials;

/// <summary>Reads quantities with their units as they are typed at the command line, and inferred numbers with their doubt.</summary>
internal static partial class Measure
{
    /// <summary>A number and the unit behind it, in lower case; null when the text is none.</summary>
    public static (double Value, string Unit)? Read(string text)
    {
        var match = WithUnit().Match(text.Trim());
        return match.Success && OptionParts.ReadNumber(match.Groups[1].Value) is { } value
            ? (value, match.Groups[2].Value.ToLowerInvariant())
            : null;
    }

    /// <summary>A depth: <c>4m</c> or <c>12ft</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    public static Length Depth(string option, string text) => Read(text) switch
    {
        ( >= 0 and <= 11_000, "m") and var (metres, _) => Length.FromMetres(metres),
        ( >= 0 and <= 36_000, "ft") and var (feet, _) => Length.FromInches(feet * 12),
        _ => throw new CommandException($"{option} \"{text}\" is not a depth from 0 to 11000 m with its unit, such as 4m or 12ft."),
    };

    /// <summary>A load: <c>340kg</c> or <c>750lb</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    public static Mass Load(string option, string text) => Read(text) switch
    {
        ( >= 0 and <= 100_000, "kg") and var (kilograms, _) => Mass.FromKilograms(kilograms),
        ( >= 0 and <= 200_000, "lb") and var (pounds, _) => Mass.FromPounds(pounds),
        _ => throw new CommandException($"{option} \"{text}\" is not a load from 0 to 100000 kg with its unit, such as 340kg or 750lb."),
    };

    /// <summary>A number with its standard deviation: <c>0.38+-0.10</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="least">Lowest value.</param>
    /// <param name="most">Highest value.</param>
    public static Uncertain WithDoubt(string option, string text, double least, double most)
    {
        var match = PlusMinus().Match(text.Trim());
        return match.Success
            && OptionParts.ReadNumber(match.Groups[1].Value) is { } value && value >= least && value <= most
            && OptionParts.ReadNumber(match.Groups[2].Value) is { } doubt && doubt >= 0 && doubt <= most
            ? new Uncertain(value, doubt)
            : throw new CommandException(
                $"{option} \"{text}\" is not a number from {OptionParts.Show(least)} to {OptionParts.Show(most)} with its standard deviation, such as 0.38+-0.10.");
    }

    [GeneratedRegex(@"\A([+-]?[0-9.]+)\s*(%|[A-Za-z\u00B0]{1,4})\z")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"\A([+-]?[0-9.]+)\s*(?:\+-|\+/-|\u00B1)\s*([0-9.]+)\z")]
    private static partial Regex PlusMinus();
}
