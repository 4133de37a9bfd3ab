namespace FleetWake.Propulsion.Logs;

/// <summary>
/// The sentences that carry readings of many kinds. What a transducer hangs on stands in its name, which no standard fixes:
/// a temperature is taken for the air's only where the name, or a weather station that names nothing, says so.
/// </summary>
internal static class NmeaTransducers
{
    private const double HectopascalsPerBar = 1000; // exact

    /// <summary>XDR: type, value, unit and name, any number of times.</summary>
    internal static void Take(NmeaSentence s, LogBuilder log, int line, Action<string, double> rate)
    {
        for (var i = 1; i < s.Fields.Length; i += 4)
        {
            var (type, unit, name) = (s[i], s[i + 2], s[i + 3]);
            if (s.Number(i + 1) is not { } value) continue;
            var reason = (type, unit) switch
            {
                ("C", "C") when OfAir(name, s.Talker) => log.Air.Celsius(value),
                ("C", "F") when OfAir(name, s.Talker) => log.Air.Celsius((value - 32) * 5 / 9),
                ("P", "B") when OfWeather(name, s.Talker) => log.Air.Hectopascals(value * HectopascalsPerBar),
                ("P", "P") when OfWeather(name, s.Talker) => log.Air.Hectopascals(value / 100),
                ("H", "P" or "") when OfAir(name, s.Talker) => log.Air.HumidityFraction(value / 100),
                _ => null,
            };
            if (reason is not null) log.Drop(line, reason);
            if (type == "T" && unit == "R") rate(name, value);
        }
    }

    /// <summary>MDA: the weather in one sentence, each number told by the letter behind it; humidity has none.</summary>
    internal static void Weather(NmeaSentence s, LogBuilder log, int line)
    {
        if (s[4] == "B" && s.Number(3) is { } bar && log.Air.Hectopascals(bar * HectopascalsPerBar) is { } p) log.Drop(line, p);
        if (s[6] == "C" && s.Number(5) is { } celsius && log.Air.Celsius(celsius) is { } t) log.Drop(line, t);
        if (s.Number(9) is { } humidity && log.Air.HumidityFraction(humidity / 100) is { } h) log.Drop(line, h);
    }

    private static bool OfAir(string name, string talker) =>
        (Has(name, "AIR") && !Has(name, "INTAKE")) || Has(name, "OUTSIDE") || Has(name, "AMBIENT") || (name.Length == 0 && talker == "WI");

    private static bool OfWeather(string name, string talker) =>
        Has(name, "BARO") || Has(name, "ATM") || OfAir(name, talker);

    private static bool Has(string name, string part) => name.Contains(part, StringComparison.OrdinalIgnoreCase);
}
