using System.Globalization;
using System.Text;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>
/// A trial whose truth is known, one reading a second: a minute idling, up to wide open throttle on 40 degrees, a slow turn,
/// wide open back on 220. The boat goes 30 kn through the water in a current of 1 kn along 40 degrees; the speed comes up to
/// it with a time constant of 4 s. Invented boat; noise by a fixed seed.
/// </summary>
internal sealed class SyntheticTrial
{
    internal const double Rpm = 5600;
    internal const double Knots = 30;
    internal const double Current = 1;
    internal const double Line = 40;

    internal static readonly DateTimeOffset Start = new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);

    private SyntheticTrial(IReadOnlyList<(DateTimeOffset At, double Rpm, double Knots, double Course)> seconds) => Seconds = seconds;

    internal IReadOnlyList<(DateTimeOffset At, double Rpm, double Knots, double Course)> Seconds { get; }

    internal static SyntheticTrial Make(double rpmNoise = 12, double knotsNoise = 0.25, double step = 10, double line = Line, int seed = 1)
    {
        var random = new Random(seed);
        var seconds = new List<(DateTimeOffset, double, double, double)>();
        var v = 4.0;
        void Leg(int length, double rpm, double knots, double from, double to)
        {
            for (var i = 0; i < length; i++)
            {
                v += (knots - v) * (1 - Math.Exp(-1 / 4.0));
                var course = from + ((to - from) * i / Math.Max(1, length - 1));
                var n = rpm + (rpmNoise * Normal(random));
                seconds.Add((
                    Start.AddSeconds(seconds.Count), Math.Round(n / step) * step,
                    Math.Max(0, v + (knotsNoise * Normal(random))), ((course + (2 * Normal(random))) % 360 + 360) % 360));
            }
        }

        Leg(60, 800, 4, line, line);
        Leg(75, Rpm, Knots + Current, line, line);
        Leg(10, 3000, 15, line, line);
        Leg(30, 3000, 15, line, line + 180);
        Leg(75, Rpm, Knots - Current, line + 180, line + 180);
        Leg(40, 800, 4, line + 180, line + 180);
        return new SyntheticTrial(seconds);
    }

    internal IEnumerable<string> Nmea() => Seconds.SelectMany(s => new[]
    {
        Logs.Nmea($"GPRMC,{s.At:HHmmss}.00,A,5800.000,N,01000.000,E,{s.Knots:0.00},{s.Course:0.0},{s.At:ddMMyy},,,A"),
        Logs.Nmea($"IIRPM,E,1,{s.Rpm:0.0},,A"),
    });

    internal IEnumerable<string> SignalK() => Seconds.Select(s => string.Create(CultureInfo.InvariantCulture,
        $$"""
        {"context":"vessels.self","updates":[{"timestamp":"{{s.At:yyyy-MM-ddTHH:mm:ss.fffZ}}","values":[{"path":"navigation.speedOverGround","value":{{s.Knots * 1852 / 3600:0.0000}}},{"path":"navigation.courseOverGroundTrue","value":{{s.Course * Math.PI / 180:0.0000}}},{"path":"propulsion.port.revolutions","value":{{s.Rpm / 60:0.0000}}}]}]}
        """));

    internal IEnumerable<string> Csv() => Seconds
        .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.At:yyyy-MM-ddTHH:mm:ssZ},{s.Rpm:0},{s.Knots:0.00},{s.Course:0.0}"))
        .Prepend("time,rpm,speed_kn,course_deg");

    /// <summary>Positions by dead reckoning on WGS 84, rounded to a millionth of a degree.</summary>
    internal string Gpx()
    {
        var text = new StringBuilder("""<?xml version="1.0"?><gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test"><trk><trkseg>""");
        var (lat, lon) = (58.0, 10.0);
        foreach (var s in Seconds)
        {
            var (sin, cos) = Math.SinCos(s.Course * Math.PI / 180);
            lat += s.Knots * 1852 / 3600 * cos / MetresNorth(lat);
            lon += s.Knots * 1852 / 3600 * sin / MetresEast(lat);
            text.Append(CultureInfo.InvariantCulture, $"\n<trkpt lat=\"{lat:0.000000}\" lon=\"{lon:0.000000}\"><time>{s.At:yyyy-MM-ddTHH:mm:ssZ}</time></trkpt>");
        }

        return text.Append("\n</trkseg></trk></gpx>").ToString();
    }

    /// <summary>Metres in a degree of latitude: the series for WGS 84 that navigators' tables print (from memory).</summary>
    internal static double MetresNorth(double lat)
    {
        var phi = lat * Math.PI / 180;
        return 111132.954 - (559.822 * Math.Cos(2 * phi)) + (1.175 * Math.Cos(4 * phi)) - (0.0023 * Math.Cos(6 * phi));
    }

    /// <summary>Metres in a degree of longitude: the same tables.</summary>
    internal static double MetresEast(double lat)
    {
        var phi = lat * Math.PI / 180;
        return (111412.84 * Math.Cos(phi)) - (93.5 * Math.Cos(3 * phi)) + (0.118 * Math.Cos(5 * phi));
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
