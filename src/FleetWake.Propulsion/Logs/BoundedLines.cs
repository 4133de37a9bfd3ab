using System.Text;

namespace FleetWake.Propulsion.Logs;

/// <summary>A line of text with its number.</summary>
/// <param name="Number">From one.</param>
/// <param name="Text">The line without its end; null when it was too long to be kept.</param>
internal readonly record struct NumberedLine(int Number, string? Text);

/// <summary>Parts a text into lines, none longer than a bound: a file without line ends must not fill the memory.</summary>
internal static class BoundedLines
{
    /// <summary>Longest line kept [characters]. An NMEA 0183 sentence has 82; a Signal K delta may have thousands.</summary>
    internal const int Longest = 1 << 18;

    internal static IEnumerable<NumberedLine> Of(TextReader text)
    {
        var line = new StringBuilder();
        var number = 1;
        var (tooLong, afterReturn, any) = (false, false, false);
        var buffer = new char[8192];
        for (int count; (count = text.Read(buffer, 0, buffer.Length)) > 0;)
        {
            for (var i = 0; i < count; i++)
            {
                var c = buffer[i];
                if (c == '\n' && afterReturn)
                {
                    afterReturn = false;
                    continue;
                }

                afterReturn = c == '\r';
                if (c is '\n' or '\r')
                {
                    yield return new NumberedLine(number++, tooLong ? null : line.ToString());
                    line.Clear();
                    (tooLong, any) = (false, false);
                }
                else if (line.Length < Longest)
                {
                    line.Append(c);
                    any = true;
                }
                else
                {
                    tooLong = true;
                }
            }
        }

        if (any) yield return new NumberedLine(number, tooLong ? null : line.ToString());
    }
}
