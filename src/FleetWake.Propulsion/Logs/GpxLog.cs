using System.Globalization;
using System.Xml;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads the track points of GPX (GPX 1.1 schema, topografix.com/GPX/1/1; that of 1.0 too). A speed [m/s] and a course
/// [degrees] are taken where a point has them, in GPX 1.0 as its own elements and in 1.1 among its extensions; otherwise
/// both are made from positions.
/// </summary>
internal static class GpxLog
{
    internal static void Read(TextReader text, LogBuilder log)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit, // no entity may grow or reach out
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            MaxCharactersInDocument = 1L << 30,
            CloseInput = false,
        };
        var track = new PositionTrack(log);
        var line = 1;
        try
        {
            using var xml = XmlReader.Create(text, settings);
            var place = (IXmlLineInfo)xml;
            while (xml.Read())
            {
                line = place.LineNumber;
                if (xml.NodeType != XmlNodeType.Element) continue;
                if (xml.LocalName == "trkseg") track.Break();
                if (xml.LocalName != "trkpt") continue;
                if (!log.Take()) break;
                Point(xml, track, log, line);
            }
        }
        catch (Exception e) when (e is XmlException or ArgumentException)
        {
            // What came before is kept: a track often ends where a battery did. The second is half a surrogate pair.
            log.Drop(e is XmlException { LineNumber: > 0 } at ? at.LineNumber : line, $"the XML cannot be read on: {e.Message}");
        }

        track.End();
    }

    private static void Point(XmlReader xml, PositionTrack track, LogBuilder log, int line)
    {
        double? lat = Numbers.Parse(xml.GetAttribute("lat")), lon = Numbers.Parse(xml.GetAttribute("lon"));
        double? speed = null, course = null;
        DateTimeOffset? time = null;
        if (!xml.IsEmptyElement)
        {
            var depth = xml.Depth;
            var name = "";
            while (xml.Read() && xml.Depth > depth)
            {
                if (xml.NodeType == XmlNodeType.Element) name = xml.IsEmptyElement ? "" : xml.LocalName;
                else if (xml.NodeType == XmlNodeType.EndElement) name = "";
                else if (xml.NodeType is not (XmlNodeType.Text or XmlNodeType.CDATA)) continue;
                else if (name == "time") time = LogTime.Iso(xml.Value);
                else if (name == "speed") speed = Numbers.Parse(xml.Value);
                else if (name == "course") course = Numbers.Parse(xml.Value);
            }
        }

        if (time is not { } raw) log.Drop(line, "a point without a time");
        else if (lat is not (>= -90 and <= 90) || lon is not (>= -180 and <= 180)) log.Drop(line, string.Create(
            CultureInfo.InvariantCulture, $"a point at latitude {lat}, longitude {lon}, which are -90 to 90 and -180 to 180"));
        else if (log.Time(raw, line) is { } at) track.Add(new Position(at, lat.Value, lon.Value, speed, course, line));
    }
}
