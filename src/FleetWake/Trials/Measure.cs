using System.Text.RegularExpressions;
using FleetWake.Commands;
using FleetWake.Propulsion;

namespace FleetWake.Trials;

/// <summary>Reads quantities with their units as they are typed at the command line, and inferred numbers with their doubt.</summary>
internal static partial class Measure
{
    /// <summary>Lowest RPM that is taken for one at wide-open throttle; common practice, no source.</summary>
    public const int LeastRpm = 300;

    /// <summary>Highest one; no engine of this trade turns faster.</summary>
    public const int MostRpm = 12_000;

    private const int MostKilograms = 100_000;

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
    public static Mass Load(string option, string text) =>
        MassFrom(0, text) ?? throw new CommandException($"{option} \"{text}\" is not a load from 0 to {MostKilograms} kg with its unit, such as 340kg or 750lb.");

    /// <summary>Mass of a whole boat: <c>1800kg</c> or <c>4000lb</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    public static Mass Displacement(string option, string text) =>
        MassFrom(50, text) ?? throw new CommandException($"{option} \"{text}\" is not a displacement from 50 to {MostKilograms} kg with its unit, such as 1800kg or 4000lb.");

    /// <summary>RPM of an engine at wide-open throttle: <c>5600</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    public static EngineRate Rate(string option, string text) => OptionParts.ReadNumber(text.Trim()) is { } rpm and >= LeastRpm and <= MostRpm
        ? EngineRate.FromRevolutionsPerMinute(rpm)
        : throw new CommandException($"{option} \"{text}\" is not a number from {LeastRpm} to {MostRpm}, or several separated by commas.");

    /// <summary>Trim of an engine [degrees], with the limits that a record has.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="degrees">What was typed.</param>
    public static double Trim(string option, double degrees) => degrees is >= -30 and <= 90
        ? degrees
        : throw new CommandException($"{option} {OptionParts.Show(degrees)} is not -30 to 90 degrees.");

    /// <summary>A number with its standard deviation: <c>0.38+-0.10</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="least">Lowest value.</param>
    /// <param name="most">Highest value.</param>
    /// <param name="mostDoubt">Highest standard deviation.</param>
    /// <param name="example">One that can be read, for a refusal.</param>
    public static Uncertain WithDoubt(string option, string text, double least, double most, double mostDoubt, string example)
    {
        return PlusMinus(text) is ({ } value, { } doubt) && value >= least && value <= most && doubt <= mostDoubt
            ? new Uncertain(value, doubt)
            : throw new CommandException(
                $"{option} \"{text}\" is not a number from {OptionParts.Show(least)} to {OptionParts.Show(most)} with its standard deviation up to {OptionParts.Show(mostDoubt)}, such as {example}.");
    }

    /// <summary>A number with or without its standard deviation, <c>5950</c> or <c>5950+-40</c>; null when the text is neither.</summary>
    /// <param name="text">What was typed.</param>
    public static (double Value, double? Doubt)? PlusMinus(string text)
    {
        var match = PlusMinusPattern().Match(text.Trim());
        if (!match.Success || OptionParts.ReadNumber(match.Groups[1].Value) is not { } value) return null;
        if (!match.Groups[2].Success) return (value, null);
        return OptionParts.ReadNumber(match.Groups[2].Value) is { } doubt ? (value, doubt) : null;
    }

    private static Mass? MassFrom(double leastKilograms, string text)
    {
        Mass? mass = Read(text) switch
        {
            ( >= 0, "kg") and var (kilograms, _) => Mass.FromKilograms(kilograms),
            ( >= 0, "lb") and var (pounds, _) => Mass.FromPounds(pounds),
            _ => null,
        };
        return mass is { } of && of.Kilograms >= leastKilograms && of.Kilograms <= MostKilograms ? mass : null;
    }

    [GeneratedRegex(@"\A([+-]?[0-9.]+)\s*(%|[A-Za-z\u00B0]{1,4})\z")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"\A([+-]?[0-9.]+)\s*(?:(?:\+-|\+/-|\u00B1)\s*([0-9.]+))?\z")]
    private static partial Regex PlusMinusPattern();
}
