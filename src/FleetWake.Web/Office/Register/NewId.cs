using System.Text;

namespace FleetWake.Web.Office.Register;

/// <summary>Makes an id of a name: nobody has to know what an id may hold.</summary>
internal static class NewId
{
    private const int Longest = 40;

    private static readonly (string Letters, string As)[] Plain =
    [
        ("àáâãäåāăą", "a"), ("çćĉċč", "c"), ("ďđð", "d"), ("èéêëēĕėęě", "e"), ("ĝğġģ", "g"), ("ĥħ", "h"), ("ìíîïĩīĭįı", "i"), ("ĵ", "j"), ("ķ", "k"), ("ĺļľŀł", "l"),
        ("ñńņňŋ", "n"), ("òóôõöøōŏő", "o"), ("ŕŗř", "r"), ("śŝşšș", "s"), ("ţťŧț", "t"), ("ùúûüũūŭůűų", "u"), ("ŵ", "w"), ("ýÿŷ", "y"), ("źżž", "z"), ("æ", "ae"), ("œ", "oe"), ("ß", "ss"), ("þ", "th"),
    ];

    /// <summary>"Tarn Props &amp; Co" as <c>tarn-props-co</c>; empty when nothing of it can stand in an id.</summary>
    public static string Of(string? name)
    {
        var id = new StringBuilder();
        foreach (var c in (name ?? "").ToLowerInvariant())
        {
            // The program runs without the tables that take letters apart, and a dock's names need few of them.
            if (char.IsAsciiLetterOrDigit(c)) id.Append(c);
            else if (Plain.FirstOrDefault(p => p.Letters.Contains(c)) is { Letters: not null } plain) id.Append(plain.As);
            else if (id.Length > 0 && id[^1] != '-') id.Append('-');
        }

        var made = id.ToString();
        return (made.Length > Longest ? made[..Longest] : made).Trim('-');
    }

    /// <summary>The same, told apart from those there are by a number.</summary>
    public static string Of(string? name, IEnumerable<string> taken)
    {
        var (id, all) = (Of(name), taken.ToHashSet(StringComparer.OrdinalIgnoreCase));
        if (id.Length == 0 || !all.Contains(id)) return id;
        for (var n = 2; ; n++)
        {
            var numbered = $"{(id.Length > Longest - 4 ? id[..(Longest - 4)] : id)}-{n}";
            if (!all.Contains(numbered)) return numbered;
        }
    }
}
