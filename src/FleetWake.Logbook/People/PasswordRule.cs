namespace FleetWake.Logbook.People;

/// <summary>What a password must be: long, and not what anybody would try first. No rule about digits or signs, which only make people write it down (NIST SP 800-63B, 5.1.1).</summary>
public static class PasswordRule
{
    /// <summary>Characters at least.</summary>
    public const int Least = 12;

    /// <summary>Characters at most: hashing much longer ones is work that anybody could ask for.</summary>
    public const int Most = 128;

    private const int LeastDifferent = 5;
    private const int ShortestWord = 3;
    private const int LeastOwn = 8;

    /// <summary>Why a password will not do, or null.</summary>
    /// <param name="password">The password.</param>
    /// <param name="known">What others know of the person: name, address, operator.</param>
    public static PasswordFault? Of(string password, params IEnumerable<string?> known)
    {
        if (password.Length < Least) return PasswordFault.Short;
        if (password.Length > Most) return PasswordFault.Long;
        if (password.Distinct().Count() < LeastDifferent) return PasswordFault.Monotonous;

        // What is left beside the known words has to be most of a password by itself.
        var rest = known.OfType<string>().SelectMany(Words).OrderByDescending(w => w.Length)
            .Aggregate(password, (text, word) => text.Replace(word, "", StringComparison.OrdinalIgnoreCase));
        return rest.Length < LeastOwn ? PasswordFault.Known : null;
    }

    private static IEnumerable<string> Words(string text) =>
        text.Split([' ', '.', '@', '-', '_', ','], StringSplitOptions.RemoveEmptyEntries).Append(text).Where(w => w.Length >= ShortestWord);
}

/// <summary>Why a password will not do.</summary>
public enum PasswordFault
{
    /// <summary>Too few characters.</summary>
    Short,

    /// <summary>Too many.</summary>
    Long,

    /// <summary>A few characters over and over.</summary>
    Monotonous,

    /// <summary>Little beside the person's or the operator's name.</summary>
    Known,
}
