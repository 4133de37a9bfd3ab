namespace FleetWake.Propulsion.Logs;

/// <summary>What a column holds.</summary>
internal enum CsvQuantity
{
    Time, Seconds, Rpm, Knots, Heading, Hectopascals, Celsius, HumidityFraction, HeldSeconds, Limiter, Ventilated, Engine,
}

/// <summary>What a column holds, told by its name, which must name the unit wherever more than one is in use.</summary>
/// <param name="Quantity">What.</param>
/// <param name="Factor">What its number is multiplied by.</param>
/// <param name="Offset">What is then added.</param>
internal readonly record struct CsvColumn(CsvQuantity Quantity, double Factor = 1, double Offset = 0)
{
    /// <summary>The column's name as one would write it, less its case and what parts the words.</summary>
    internal static string Plain(string name)
    {
        var letters = name.ToLowerInvariant().Where(c => char.IsAsciiLetterOrDigit(c) || c == '%').ToArray();
        return new string(letters).Replace("%", "percent", StringComparison.Ordinal);
    }

    internal static CsvColumn? Of(string name) => Plain(name) switch
    {
        "time" or "timestamp" or "datetime" or "timeutc" or "utc" => new(CsvQuantity.Time),
        "seconds" or "times" or "ts" or "elapseds" => new(CsvQuantity.Seconds),
        "rpm" or "enginerpm" or "rpmengine" => new(CsvQuantity.Rpm),
        "revolutionshz" => new(CsvQuantity.Rpm, 60),
        "speedkn" or "speedkt" or "speedkts" or "speedknots" or "sogkn" or "sogkts" or "sogknots" => new(CsvQuantity.Knots),
        "speedmph" => new(CsvQuantity.Knots, Speed.FromMilesPerHour(1).Knots),
        "speedkmh" or "speedkph" => new(CsvQuantity.Knots, Speed.FromKilometresPerHour(1).Knots),
        "speedms" or "speedmps" or "sogms" => new(CsvQuantity.Knots, Speed.FromMetresPerSecond(1).Knots),
        "headingdeg" or "heading" or "headingdegrees" or "coursedeg" or "course" or "coursedegrees" or "cogdeg" or "cog" => new(CsvQuantity.Heading),
        "pressurehpa" or "pressurembar" or "pressuremb" or "barohpa" or "baromb" => new(CsvQuantity.Hectopascals),
        "pressurekpa" => new(CsvQuantity.Hectopascals, 10),
        "pressurepa" => new(CsvQuantity.Hectopascals, 0.01),
        "pressureinhg" => new(CsvQuantity.Hectopascals, Pressure.FromInchesOfMercury(1).Hectopascals),
        "airc" or "aircelsius" or "airtempc" or "airtemperaturec" => new(CsvQuantity.Celsius),
        "airf" or "airfahrenheit" or "airtempf" or "airtemperaturef" => new(CsvQuantity.Celsius, 5 / 9.0, -160 / 9.0),
        "humiditypercent" or "relativehumiditypercent" or "rhpercent" => new(CsvQuantity.HumidityFraction, 0.01),
        "helds" or "heldseconds" or "durations" => new(CsvQuantity.HeldSeconds),
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
