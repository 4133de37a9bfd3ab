namespace FleetWake.Propulsion.Trials;

/// <summary>Short words for doubts, as files and programs read them.</summary>
public static class TrialDoubts
{
    private static readonly string[] s_codes = [.. Enum.GetNames<TrialDoubt>().Select(SnakeCase)];

    /// <summary>The code of a doubt: its name in lower case with an underscore between words, as <c>single_run</c>.</summary>
    /// <param name="doubt">The doubt.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a declared doubt.</exception>
    public static string Code(TrialDoubt doubt) => Enum.IsDefined(doubt)
        ? s_codes[(int)doubt]
        : throw new ArgumentOutOfRangeException(nameof(doubt), doubt, "Must be a declared doubt.");

    private static string SnakeCase(string name) => string.Concat(name.Select((letter, i) =>
        char.IsUpper(letter) && i > 0 ? $"_{char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));
}
