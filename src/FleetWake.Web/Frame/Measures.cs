using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Engines;
using FleetWake.Propulsion;
using FleetWake.Store.People;

namespace FleetWake.Web.Frame;

/// <summary>
/// Dates, numbers and units as somebody prefers to read them. The program itself runs under the invariant culture; only what
/// stands on a page is turned, and only here. RPM, engine hours and the inches of a prop are the same to everybody.
/// </summary>
/// <param name="preferences">What the person prefers.</param>
public sealed partial class Measures(PersonPreferences preferences)
{
    private static readonly NumberFormatInfo Point = new() { NumberGroupSeparator = ",", NumberDecimalSeparator = "." };
    private static readonly NumberFormatInfo Comma = new() { NumberGroupSeparator = "\u00A0", NumberDecimalSeparator = "," };

    /// <summary>As records have it, for whoever chose nothing.</summary>
    public static Measures Usual { get; } = new(new PersonPreferences(""));

    /// <summary>What the person prefers.</summary>
    public PersonPreferences Preferences => preferences;

    /// <summary>What of the preferences a page's words depend on: pages with the same read alike.</summary>
    public (SpeedReading, TorqueReading, TemperatureReading, DateReading, NumberReading) Way =>
        (preferences.Speed, preferences.Torque, preferences.Temperature, preferences.Dates, preferences.Numbers);

    /// <summary>The word of the unit of speeds.</summary>
    public string SpeedUnit => preferences.Speed switch { SpeedReading.MilesPerHour => "mph", SpeedReading.KilometresPerHour => "km/h", _ => "kn" };

    /// <summary>A date.</summary>
    public string Date(DateOnly date) => preferences.Dates switch
    {
        DateReading.DayFirst => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture),
        DateReading.MonthFirst => date.ToString("MMM d, yyyy", CultureInfo.InvariantCulture),
        _ => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
    };

    /// <summary>A moment by the clock of a place.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">IANA zone of the place.</param>
    public string Moment(DateTimeOffset moment, string zone) => Clock(TimeZoneInfo.ConvertTime(moment, TimeZoneInfo.FindSystemTimeZoneById(zone)));

    /// <summary>A moment by the clock it was read from.</summary>
    public string Clock(DateTimeOffset local) =>
        $"{Date(DateOnly.FromDateTime(local.DateTime))}\u00A0{local.ToString(preferences.Dates == DateReading.MonthFirst ? "h:mm\u00A0tt" : "HH:mm", CultureInfo.InvariantCulture)}";

    /// <summary>A number with at most so many decimals.</summary>
    public string Number(double value, int decimals = 0) =>
        value.ToString(decimals == 0 ? "#,##0" : "#,##0." + new string('#', decimals), preferences.Numbers == NumberReading.Comma ? Comma : Point);

    /// <summary>A number that tells its sign, as a drift does.</summary>
    public string Signed(double value) => $"{(Math.Round(value) > 0 ? "+" : Math.Round(value) < 0 ? "\u2212" : "")}{Number(Math.Abs(value))}";

    /// <summary>A speed without its unit.</summary>
    /// <param name="knots">The speed [kn].</param>
    public double SpeedOf(double knots) => preferences.Speed switch
    {
        SpeedReading.MilesPerHour => Propulsion.Speed.FromKnots(knots).MilesPerHour,
        SpeedReading.KilometresPerHour => Propulsion.Speed.FromKnots(knots).KilometresPerHour,
        _ => knots,
    };

    /// <summary>A speed with its unit.</summary>
    /// <param name="knots">The speed [kn].</param>
    public string Speed(double knots) => $"{Number(SpeedOf(knots), 1)}\u00A0{SpeedUnit}";

    /// <summary>A torque as its manual or tool has it, and in the person's unit beside it where that is another.</summary>
    public string Torque(double value, TorqueUnit unit)
    {
        var torque = unit == TorqueUnit.PoundForceFoot ? Propulsion.Torque.FromPoundForceFeet(value) : Propulsion.Torque.FromNewtonMetres(value);
        var newtonMetres = $"{Number(unit == TorqueUnit.NewtonMetre ? value : torque.NewtonMetres, 1)}\u00A0N\u00A0m";
        var poundFeet = $"{Number(unit == TorqueUnit.PoundForceFoot ? value : torque.PoundForceFeet, 1)}\u00A0lbf\u00A0ft";
        return (unit, preferences.Torque) switch
        {
            (TorqueUnit.NewtonMetre, TorqueReading.NewtonMetres) => newtonMetres,
            (TorqueUnit.NewtonMetre, _) => $"{newtonMetres} ({poundFeet})",
            (_, TorqueReading.PoundFeet) => poundFeet,
            _ => $"{poundFeet} ({newtonMetres})",
        };
    }

    /// <summary>A temperature with its unit.</summary>
    /// <param name="celsius">The temperature [°C].</param>
    public string Temperature(double celsius) => preferences.Temperature == TemperatureReading.Fahrenheit
        ? $"{Number((celsius * 9 / 5) + 32)}\u00A0°F"
        : $"{Number(celsius, 1)}\u00A0°C";

    /// <summary>A sentence of the logbook's, its dates and numbers written as the person reads them.</summary>
    public string Say(string sentence)
    {
        var numbers = preferences.Numbers == NumberReading.Comma ? PointNumber().Replace(sentence, m => m.Value.Replace('.', ',')) : sentence;
        var grouped = Thousands().Replace(numbers, m => Number(double.Parse(m.Value, CultureInfo.InvariantCulture)));
        return Dated(grouped);
    }

    private string Dated(string sentence) => preferences.Dates == DateReading.YearFirst
        ? sentence
        : IsoDate().Replace(sentence, m => DateOnly.TryParseExact(m.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? Date(date) : m.Value);

    // A year is told in a date alone: what stands before RPM, or between the words of a band, is a speed.
    [GeneratedRegex(@"(?<![\w.,-])\d{4,5}(?= RPM| h\b| to \d{4,5}(?![\d-])|\) of its band)|(?<=\d{4,5} to )\d{4,5}(?![\w-])|(?<=(?:turned|read|showed|baseline) )\d{4,5}(?![\w-])")]
    private static partial Regex Thousands();

    [GeneratedRegex(@"(?<![\w.-])\d+\.\d+(?![\w.-])")]
    private static partial Regex PointNumber();

    [GeneratedRegex(@"(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-])")]
    private static partial Regex IsoDate();
}
