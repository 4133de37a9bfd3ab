namespace FleetWake.Propulsion.Logs;

/// <summary>Tells a format by how a log begins.</summary>
internal static class FormatGuess
{
    internal static LogFormat Of(string beginning)
    {
        foreach (var raw in beginning.Split('\n'))
        {
            var line = raw.Trim();
            if (line.Length == 0 || line[0] == '#') continue;
            if (line[0] == '<') return LogFormat.Gpx;
            if (line[0] is '{' or '[' && !line.Contains('$', StringComparison.Ordinal)) return LogFormat.SignalK;
            if (line[0] is '$' or '!' or '\\') return LogFormat.Nmea0183;
            // A line may begin in the midst of a sentence, or with a time: a later "$" with a comma some letters on tells.
            if (NmeaSentence.LooksLike(line)) return LogFormat.Nmea0183;
            return beginning.Contains("\n$", StringComparison.Ordinal) ? LogFormat.Nmea0183 : LogFormat.Csv;
        }

        return LogFormat.Csv;
    }
}
