using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// One NMEA 0183 sentence taken apart: "$", talker and formatter, fields, and after "*" the exclusive-or of all characters
/// between both. A TAG block (NMEA 0183 version 4: "\c:1438489697*13\" before the sentence) or a time that a logger put in
/// front tells when it was heard.
/// </summary>
/// <param name="Formatter">The three letters that say what it is, RMC for instance.</param>
/// <param name="Talker">Who said it, GP for instance.</param>
/// <param name="Fields">The fields; the address is field zero, so that numbers are those of the standard.</param>
/// <param name="Checked">It had a checksum, and that was right.</param>
/// <param name="Heard">When the logger heard it; null when it did not write that.</param>
internal sealed record NmeaSentence(string Formatter, string Talker, string[] Fields, bool Checked, DateTimeOffset? Heard)
{
    /// <summary>A TAG block stood before it whose checksum is wrong.</summary>
    internal bool WrongTag { get; init; }

    /// <summary>A field, empty when the sentence has not so many.</summary>
    internal string this[int number] => number < Fields.Length ? Fields[number] : "";

    /// <summary>A field as a number; null when empty or none.</summary>
    internal double? Number(int number) => Numbers.Parse(this[number]);

    internal static bool LooksLike(string line)
    {
        var start = line.IndexOf('$');
        var comma = start < 0 ? -1 : line.IndexOf(',', start);
        return comma - start is >= 5 and <= 8 && line.AsSpan(start + 1, comma - start - 1).IndexOfAnyExceptInRange('0', 'Z') < 0;
    }

    /// <summary>Takes a line apart.</summary>
    /// <returns>
    /// The sentence; or why the line is none; or neither for a line that is empty, a remark, or of a kind that is never wanted.
    /// </returns>
    internal static (NmeaSentence? Sentence, string? Reason) Of(string line)
    {
        var text = line.AsSpan().Trim();
        if (text.IsEmpty || text[0] == '#') return (null, null);
        DateTimeOffset? heard = null;
        var wrongTag = false;
        if (text[0] == '\\')
        {
            var end = text[1..].IndexOf('\\');
            if (end < 0) return (null, "a TAG block without its end");
            (heard, wrongTag) = WhenHeard(text.Slice(1, end));
            text = text[(end + 2)..].Trim();
        }

        var start = text.IndexOfAny('$', '!');
        if (start < 0) return (null, "no sentence");
        if (text[start] == '!') return (null, null); // encapsulated: AIS
        if (start > 0) heard ??= LogTime.InFront(text[..start]);
        var body = text[(start + 1)..];
        if (body.IndexOfAnyExceptInRange(' ', '~') >= 0) return (null, "characters that no sentence has");

        var star = body.LastIndexOf('*');
        if (star >= 0)
        {
            var said = body[(star + 1)..];
            body = body[..star];
            if (said.Length < 2 || !byte.TryParse(said[..2], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var sum))
                return (null, "a checksum that is none");
            if (Checksum(body) != sum) return (null, $"its checksum is {sum:X2}, its characters make {Checksum(body):X2}");
        }

        var fields = body.ToString().Split(',');
        var address = fields[0];
        if (address.StartsWith('P')) return (null, null); // a maker's own
        return address.Length != 5
            ? (null, "an address that is not of two letters and three")
            : (new NmeaSentence(address[2..], address[..2], fields, star >= 0, heard) { WrongTag = wrongTag }, null);
    }

    internal static byte Checksum(ReadOnlySpan<char> body)
    {
        byte sum = 0;
        foreach (var c in body) sum ^= (byte)c;
        return sum;
    }

    /// <summary>The time of a TAG block. One whose checksum is wrong has none: the sentence behind it has its own and stays.</summary>
    private static (DateTimeOffset? Heard, bool Wrong) WhenHeard(ReadOnlySpan<char> tag)
    {
        var star = tag.LastIndexOf('*');
        if (star >= 0)
        {
            if (!byte.TryParse(tag[(star + 1)..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var sum)
                || Checksum(tag[..star]) != sum)
                return (null, true);
            tag = tag[..star];
        }

        foreach (var part in tag.ToString().Split(','))
        {
            if (part.StartsWith("c:", StringComparison.Ordinal)) return (LogTime.Unix(part.AsSpan(2)), false);
        }

        return (null, false);
    }
}
