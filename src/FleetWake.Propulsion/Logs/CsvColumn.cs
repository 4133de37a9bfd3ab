namespace FleetWake.Propulsion.Logs;

/// <summary>What a column holds.</summary>
internal enum CsvQuantity
{
    Time, Seconds, Rpm, Knots, Heading, Hectopascals, Celsius, HumidityFraction, HeldSeconds, Limiter, Ventilated, Engine,
}

/// <summary>
/// What a column, or a member of an object, holds, told by its name, which must name the unit wherever more than one is in use.
/// </summary>
/// <param name="Quantity">What.</param>
/// <param name="Unit">The unit that its numbers are written in, for people.</param>
/// <param name="Factor">What its number is multiplied by.</param>
/// <param name="Offset">What is then added.</param>
internal readonly record struct CsvColumn(CsvQuantity Quantity, string Unit = "", double Factor = 1, double Offset = 0)
{
    /// <summary>What a number stands for, in the unit of the quantity.</summary>
    internal double Value(double written) => (written * Factor) + Offset;

    /// <summary>How a value of the quantity is written here; the other way round.</summary>
    internal double Written(double value) => (value - Offset) / Factor;

    /// <summary>The column's name as one would write it, less its case and what parts the words.</summary>
    internal static string Plain(string name)
    {
        var letters = name.ToLowerInvariant().Where(c => char.IsAsciiLetterOrDigit(c) || c == '%').ToArray();
        return new string(letters).Replace("%", "percent", StringComparison.Ordinal);
    }

    internal static CsvColumn? Of(string name) => Plain(name) switch
    {
        "time" or "timestamp" or "datetime" or "timeutc" or "utc" => new(CsvQuantity.Time),
        "seconds" or "times" or "ts" or "elapseds" => new(CsvQuantity.Seconds, "s"),
        "rpm" or "enginerpm" or "rpmengine" => new(CsvQuantity.Rpm, "rev/min"),
        "revolutionshz" => new(CsvQuantity.Rpm, "Hz", 60),
        "speedkn" or "speedkt" or "speedkts" or "speedknots" or "sogkn" or "sogkts" or "sogknots" => new(CsvQuantity.Knots, "kn"),
        "speedmph" => new(CsvQuantity.Knots, "mph", Speed.FromMilesPerHour(1).Knots),
        "speedkmh" or "speedkph" => new(CsvQuantity.Knots, "km/h", Speed.FromKilometresPerHour(1).Knots),
        "speedms" or "speedmps" or "sogms" => new(CsvQuantity.Knots, "m/s", Speed.FromMetresPerSecond(1).Knots),
        "headingdeg" or "heading" or "headingdegrees" or "coursedeg" or "course" or "coursedegrees" or "cogdeg" or "cog" => new(CsvQuantity.Heading, "degrees"),
        "pressurehpa" or "pressurembar" or "pressuremb" or "barohpa" or "baromb" => new(CsvQuantity.Hectopascals, "hPa"),
        "pressurekpa" => new(CsvQuantity.Hectopascals, "kPa", 10),
        "pressurepa" => new(CsvQuantity.Hectopascals, "Pa", 0.01),
        "pressureinhg" => new(CsvQuantity.Hectopascals, "inHg", Pressure.FromInchesOfMercury(1).Hectopascals),
        "airc" or "aircelsius" or "airtempc" or "airtemperaturec" => new(CsvQuantity.Celsius, "deg C"),
        "airf" or "airfahrenheit" or "airtempf" or "airtemperaturef" => new(CsvQuantity.Celsius, "deg F", 5 / 9.0, -160 / 9.0),
        "humiditypercent" or "relativehumiditypercent" or "rhpercent" => new(CsvQuantity.HumidityFraction, "%", 0.01),
        "helds" or "heldseconds" or "durations" => new(CsvQuantity.HeldSeconds, "s"),
        "limiter" or "limiterreached" => new(CsvQuantity.Limiter),
        "ventilated" => new(CsvQuantity.Ventilated),
        "engine" => new(CsvQuantity.Engine),
        _ => null,
    };

    /// <summary>Which of the names is meant by one that names no unit; null when it means nothing here.</summary>
    internal static string? WithUnit(string name) => Plain(name) switch
    {
        "speed" or "sog" => "speed_kn, speed_mph, speed_kmh or speed_ms",
        "pressure" or "baro" or "barometer" => "pressure_hpa, pressure_kpa or pressure_inhg",
        "air" or "airtemp" or "temperature" => "air_c or air_f",
        "humidity" => "humidity_percent",
        _ => null,
    };
}
