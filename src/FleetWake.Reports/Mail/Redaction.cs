using System.Text.RegularExpressions;

namespace FleetWake.Reports.Mail;

/// <summary>What a server said, as the record may keep it: on one line, not endless, and without addresses, for facts are never erased.</summary>
internal static partial class Redaction
{
    private const int Longest = 300;

    public static string Of(string said)
    {
        var line = Address().Replace(string.Concat(said.Select(c => char.IsControl(c) ? ' ' : c)).Trim(), "(address)");
        return line.Length > Longest ? line[..Longest] : line;
    }

    [GeneratedRegex(@"<?[^\s<>()""',;:]+@[^\s<>()""',;:]+>?", RegexOptions.None, 1000)]
    private static partial Regex Address();
}
