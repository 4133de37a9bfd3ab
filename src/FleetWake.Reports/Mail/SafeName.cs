using System.Text;

namespace FleetWake.Reports.Mail;

/// <summary>Names that are safe in a file system and in a header: lower-case letters, digits, hyphens.</summary>
internal static class SafeName
{
    public static string Of(string value, int most)
    {
        var name = new StringBuilder();
        foreach (var c in value.Normalize(NormalizationForm.FormD).Where(c => c < 128))
        {
            if (char.IsAsciiLetterOrDigit(c)) name.Append(char.ToLowerInvariant(c));
            else if (name.Length > 0 && name[^1] != '-') name.Append('-');
        }

        var cut = name.Length > most ? name.ToString(0, most) : name.ToString();
        return cut.Trim('-') is { Length: > 0 } s ? s : "x";
    }
}
