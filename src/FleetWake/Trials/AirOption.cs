using System.Globalization;
using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Trials;

/// <summary>Reads the option that describes the air: <c>18C,1009hPa,70%</c>; each number is told by its unit.</summary>
internal static class AirOption
{
    /// <summary>The option's name.</summary>
    public const string Name = "--air";

    /// <summary>What the option takes, for its help.</summary>
    public const string Syntax =
        "The air: temperature, pressure where the boat is (not reduced to sea level), relative humidity and height of the water, "
        + "each told by its unit and any of them left out: \"18C,1009hPa,70%\", \"64F,29.80inHg\", \"300m\". "
        + "What is missing is taken from the file, or assumed and doubted. Units: C F hPa mbar kPa inHg % m ft.";

    /// <summary>The weather's own highs and lows lie within this [hPa] of the standard pressure, but for storms. Common practice, no source.</summary>
    private const double MostFromStandardHectopascals = 40;

    /// <summary>The air that the text describes. What is not given stays null.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="option">The option that it stands in.</param>
    /// <exception cref="CommandException">It cannot be read; says which part, its range and how to mend it.</exception>
    public static AirState Read(string text, string option = Name)
    {
        Temperature? temperature = null;
        Pressure? pressure = null;
        double? humidity = null;
        Length? height = null;
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var (value, unit) = Measure.Read(part) ?? throw Refused(option, part, "a number with its unit such as 18C, 1009hPa or 70%");
            switch (unit)
            {
                case "c" or "f" or "\u00b0c" or "\u00b0f":
                    Once(temperature, option, part);
                    temperature = unit[^1] == 'c' ? Temperature.FromCelsius(Within(value, -40, 50, option, part, "C")) : Temperature.FromFahrenheit(Within(value, -40, 122, option, part, "F"));
                    break;
                case "hpa" or "mbar" or "mb":
                    Once(pressure, option, part);
                    pressure = Pressure.FromHectopascals(Within(value, 500, 1100, option, part, "hPa"));
                    break;
                case "kpa":
                    Once(pressure, option, part);
                    pressure = Pressure.FromKilopascals(Within(value, 50, 110, option, part, "kPa"));
                    break;
                case "inhg":
                    Once(pressure, option, part);
                    pressure = Pressure.FromInchesOfMercury(Within(value, 14.8, 32.4, option, part, "inHg"));
                    break;
                case "%":
                    Once(humidity, option, part);
                    humidity = Within(value, 0, 100, option, part, "%") / 100;
                    break;
                case "m" or "ft":
                    Once(height, option, part);
                    height = unit == "m" ? Length.FromMetres(Within(value, 0, 5000, option, part, "m")) : Length.FromInches(12 * Within(value, 0, 16_400, option, part, "ft"));
                    break;
                default:
                    throw Refused(option, part, "in a unit known here: C F hPa mbar kPa inHg % m ft");
            }
        }

        if (temperature is null && pressure is null && humidity is null && height is null) throw Refused(option, text, "an air: write 18C,1009hPa,70%, or leave the option out");
        return Agreeing(new AirState(temperature, pressure, humidity) { Altitude = height }, $"{option}: the pressure");
    }

    /// <summary>The air as typed, with what was not typed from the file.</summary>
    /// <exception cref="CommandException">The file's pressure is not one of the height that was typed.</exception>
    public static AirState? Over(AirState? typed, AirState? logged) => typed is null || logged is null
        ? typed ?? logged
        : Agreeing(new AirState(
            typed.Temperature ?? logged.Temperature,
            typed.StationPressure ?? logged.StationPressure,
            typed.RelativeHumidityFraction ?? logged.RelativeHumidityFraction)
        { Altitude = typed.Altitude }, typed.StationPressure is null ? "the height was typed and the pressure is the file's" : "the pressure");

    /// <summary>
    /// The air, when pressure and height may be of one place. A pressure reduced to sea level, as forecasts and most barometers
    /// tell it, would be taken for the boat's own and correct the wrong way.
    /// </summary>
    private static AirState Agreeing(AirState air, string lead)
    {
        if (air is not { StationPressure: { } pressure, Altitude: { } height }) return air;
        var standard = StandardAtmosphere.PressureAt(height).Hectopascals;
        return Math.Abs(pressure.Hectopascals - standard) <= MostFromStandardHectopascals ? air : throw new CommandException(string.Create(
            CultureInfo.InvariantCulture,
            $"{lead}, {pressure.Hectopascals:0} hPa, is not one of {height.Metres:0} m, where about {standard:0} hPa is usual. Is {pressure.Hectopascals:0} reduced to sea level? Give one of them: the height alone, or the pressure read on the water."));
    }

    private static double Within(double value, double least, double most, string option, string part, string unit) =>
        value >= least && value <= most ? value : throw Refused(option, part, $"{OptionParts.Show(least)} to {OptionParts.Show(most)} {unit}");

    private static void Once<T>(T? before, string option, string part)
        where T : struct
    {
        if (before is not null) throw new CommandException($"{option}: \"{part}\" is the second of its kind: leave one of them out.");
    }

    private static CommandException Refused(string option, string part, string wanted) => new($"{option}: \"{part}\" is not {wanted}.");
}
