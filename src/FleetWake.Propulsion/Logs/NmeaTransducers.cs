using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// The sentences that carry readings of many kinds. What a transducer hangs on stands in its name, which no standard fixes:
/// a reading is taken for the air's where the name says so, else from a weather station (talker WI) where the name does not
/// say otherwise, the first of each kind. What is not taken is told.
/// </summary>
internal sealed class NmeaTransducers(LogBuilder log)
{
    private const double HectopascalsPerBar = 1000; // exact
    private const int MostTold = 6;

    /// <summary>Parts of names of what is not the air that an engine breathes, or is reckoned from it. Common practice, no source.</summary>
    private static readonly string[] s_otherThings =
    [
        "WATER", "SEA", "MSL", "QNH", "ALTIM", "ENG", "OIL", "COOL", "FUEL", "TANK", "EXH", "INTAKE", "BOOST", "MANIF", "GEAR", "TRANSM",
        "HYDR", "BATT", "INSIDE", "CABIN", "SALOON", "BILGE", "FRIDGE", "FREEZ", "DEW", "CHILL", "WCH", "HINX", "HEAT",
    ];

    private readonly AirMeans _unnamed = new();
    private readonly Dictionary<string, string> _first = [];
    private readonly Dictionary<(string Type, string Name), (CsvQuantity Quantity, bool IsOther, string Told)> _aside = [];

    /// <summary>XDR: type, value, unit and name, any number of times.</summary>
    internal void Take(NmeaSentence s, int line, Action<string, double> rate)
    {
        var unnamed = "";
        for (var i = 1; i < s.Fields.Length; i += 4)
        {
            var (type, unit, name) = (s[i], s[i + 2], s[i + 3]);
            if (s.Number(i + 1) is not { } value) continue;
            if (type == "T" && unit == "R") rate(name, value);
            if (Column(type, unit) is not { } column) continue;
            var isOther = IsOther(name);
            var isAir = !isOther && IsAir(type, name);
            if (!isAir && (isOther || s.Talker != "WI" || unnamed.Contains(type, StringComparison.Ordinal) || !IsFirst(type, name, column, value)))
            {
                if (_aside.Count < 50) _aside.TryAdd((type, name), (column.Quantity, isOther, string.Create(
                    CultureInfo.InvariantCulture, $"{type} \"{name}\" ({value} {column.Unit})")));
                continue;
            }

            if (!isAir) unnamed += type;
            if ((isAir ? log.Air : _unnamed).Take(column, value) is { } reason) log.Aside(line, $"XDR {type} \"{name}\": {reason}");
        }
    }

    /// <summary>MDA: the weather in one sentence, each number told by the letter behind it; humidity has none.</summary>
    internal static void Weather(NmeaSentence s, LogBuilder log, int line)
    {
        if (s[4] == "B" && s.Number(3) is { } bar && log.Air.Hectopascals(bar * HectopascalsPerBar) is { } p) log.Aside(line, p);
        if (s[6] == "C" && s.Number(5) is { } celsius && log.Air.Celsius(celsius) is { } t) log.Aside(line, t);
        if (s.Number(9) is { } humidity && log.Air.HumidityFraction(humidity / 100) is { } h) log.Aside(line, h);
    }

    /// <summary>When all was heard: a station that names nothing is believed only where nothing has the air's name.</summary>
    internal void End()
    {
        log.Air.Fill(_unnamed);
        // What is plainly of something else is worth a word only where the air's own reading is missing.
        var told = _aside.Values.Where(one => !one.IsOther || !log.Air.Knows(one.Quantity)).Select(one => one.Told).ToArray();
        if (told.Length == 0) return;
        var more = told.Length > MostTold ? $" and {told.Length - MostTold} more" : "";
        log.Say(LogNoticeKind.LeftAside, $"XDR {string.Join(", ", told.Take(MostTold))}{more} left aside: "
            + (told.Length == 1 ? "its name does not say it is the air's" : "their names do not say they are the air's, or another was taken before"));
    }

    private static CsvColumn? Column(string type, string unit) => (type, unit) switch
    {
        ("C", "C") => new(CsvQuantity.Celsius, "deg C"),
        ("C", "F") => new(CsvQuantity.Celsius, "deg F", 5 / 9.0, -160 / 9.0),
        ("P", "B") => new(CsvQuantity.Hectopascals, "bar", HectopascalsPerBar),
        ("P", "P") => new(CsvQuantity.Hectopascals, "Pa", 0.01),
        ("P", "H") => new(CsvQuantity.Hectopascals, "hPa"),
        ("H", "P" or "") => new(CsvQuantity.HumidityFraction, "%", 0.01),
        _ => null,
    };

    private static bool IsAir(string type, string name) =>
        Has(name, "AIR") || Has(name, "OUTSIDE") || Has(name, "OUTDOOR") || Has(name, "AMBIENT") || type switch
        {
            "P" => Has(name, "BARO") || Has(name, "ATM") || Has(name, "STNP") || Has(name, "STATION"),
            "H" => Has(name, "HUMID") || Has(name, "RELH") || Is(name, "RH"),
            _ => false,
        };

    private static bool IsOther(string name) =>
        Array.Exists(s_otherThings, part => Has(name, part)) || Is(name, "DP") || Is(name, "SST") || Is(name, "SLP");

    /// <summary>Whether a station's reading that names nothing is of the transducer that was heard first of its kind.</summary>
    private bool IsFirst(string type, string name, CsvColumn column, double value)
    {
        if (_first.TryGetValue(type, out var first)) return first == name;
        if (Plausible.Of(column, value) is null) _first[type] = name;
        return true;
    }

    private static bool Is(string name, string whole) => name.Equals(whole, StringComparison.OrdinalIgnoreCase);

    private static bool Has(string name, string part) => name.Contains(part, StringComparison.OrdinalIgnoreCase);
}
