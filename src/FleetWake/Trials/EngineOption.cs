using System.Text.RegularExpressions;
using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>Reads the option that describes an engine: <c>band=5000-6000,gear=2.08,step=50,power=150hp</c>.</summary>
internal static partial class EngineOption
{
    /// <summary>The option's name.</summary>
    public const string Name = "--engine";

    /// <summary>What the option takes, for its help.</summary>
    public const string Syntax =
        "The engine, from its owner's manual: band=LOW-HIGH rated wide-open-throttle RPM, gear=RATIO, step=RPM of the tachometer, "
        + "power=150hp (also kW or PS), tacho=+2% that it reads high (or tacho=+2+-0.5%), air=supercharged when no correction applies. "
        + "For instance \"band=5000-6000,gear=2.08,step=50\". Each part may be left out.";

    /// <summary>The engine that the text describes. What is not given stays null.</summary>
    /// <param name="text">What was typed.</param>
    /// <exception cref="CommandException">It cannot be read; says which part, its range and how to mend it.</exception>
    public static EngineData Read(string text)
    {
        var parts = new OptionParts(Name, text, "band", "gear", "step", "power", "tacho", "air");
        var (low, high) = Band(parts);
        return new EngineData
        {
            BandLow = low,
            BandHigh = high,
            Gear = parts.Number("gear", 0.5, 5, ":1") is { } ratio ? new GearRatio(ratio) : null,
            TachometerStep = parts.Number("step", 1, 500, "rpm") is { } step ? EngineRate.FromRevolutionsPerMinute(step) : null,
            RatedPower = RatedPower(parts),
            TachometerError = Tachometer(parts),
            Breathing = Breathing(parts),
        };
    }

    private static (EngineRate? Low, EngineRate? High) Band(OptionParts parts)
    {
        if (parts["band"] is not { } text) return (null, null);
        const string Wanted = "two numbers from 1000 to 12000 RPM such as 5000-6000, the lower one first";
        var match = BandPattern().Match(text);
        if (!match.Success
            || OptionParts.ReadNumber(match.Groups[1].Value) is not { } low
            || OptionParts.ReadNumber(match.Groups[2].Value) is not { } high
            || low < 1000 || high > 12_000 || low >= high)
            throw new CommandException(parts.Told("band", text, Wanted));
        return (EngineRate.FromRevolutionsPerMinute(low), EngineRate.FromRevolutionsPerMinute(high));
    }

    private static Power? RatedPower(OptionParts parts)
    {
        if (parts["power"] is not { } text) return null;
        var match = PowerPattern().Match(text);
        if (match.Success && OptionParts.ReadNumber(match.Groups[1].Value) is { } value and >= 0.5 and <= 2000)
            return match.Groups[2].Value.ToUpperInvariant() switch
            {
                "KW" => Power.FromKilowatts(value),
                "PS" => Power.FromMetricHorsepower(value),
                _ => Power.FromHorsepower(value),
            };
        throw new CommandException(parts.Told("power", text, "a power from 0.5 to 2000 with its unit, such as 150hp, 110kW or 150PS"));
    }

    private static Uncertain? Tachometer(OptionParts parts)
    {
        if (parts["tacho"] is not { } text) return null;
        const double Most = 20;        // [%]; beyond it a tachometer is broken and no correction is due
        const double DoubtOfACheck = 0.25; // [%]; of a comparison with a hand instrument, common practice, no source
        var match = TachometerPattern().Match(text);
        if (match.Success && OptionParts.ReadNumber(match.Groups[1].Value) is { } error && Math.Abs(error) <= Most)
        {
            var doubt = match.Groups[2].Success ? OptionParts.ReadNumber(match.Groups[2].Value) : DoubtOfACheck;
            if (doubt is >= 0 and <= Most) return new Uncertain(error / 100, doubt.Value / 100);
        }

        throw new CommandException(parts.Told("tacho", text, "an error from -20 to 20 % such as +2% or -1.5+-0.5%"));
    }

    private static AirResponse Breathing(OptionParts parts) => parts["air"]?.ToUpperInvariant() switch
    {
        null or "NATURAL" => AirResponse.NaturallyAspirated,
        "SUPERCHARGED" => AirResponse.Supercharged,
        _ => throw new CommandException(parts.Told("air", parts["air"]!, "natural or supercharged")),
    };

    [GeneratedRegex(@"\A([0-9.]+)\s*(?:-|\u2013|\.\.)\s*([0-9.]+)\s*(?:rpm)?\z", RegexOptions.IgnoreCase)]
    private static partial Regex BandPattern();

    [GeneratedRegex(@"\A([0-9.]+)\s*(hp|kw|ps)\z", RegexOptions.IgnoreCase)]
    private static partial Regex PowerPattern();

    [GeneratedRegex(@"\A([+-]?[0-9.]+)\s*%?\s*(?:(?:\+-|\+/-|\u00B1)\s*([0-9.]+)\s*%?)?\z")]
    private static partial Regex TachometerPattern();
}
