namespace FleetWake.Reports.Pictures;

/// <summary>Brings names into the room they have: people give boats and docks names of any length.</summary>
internal static class Fitting
{
    /// <summary>Most characters of a name in a sentence; what is longer would drown it. Judgement.</summary>
    private const int MostOfAName = 48;

    /// <summary>A text as it stands, or its beginning with an ellipsis.</summary>
    /// <param name="text">The text.</param>
    /// <param name="width">Width of a text [px].</param>
    /// <param name="room">What it may take [px].</param>
    public static string To(string text, Func<string, float> width, float room)
    {
        if (width(text) <= room) return text;
        // By halves: a name of a hundred thousand letters is measured seventeen times, not a hundred thousand.
        var (fits, over) = (0, text.Length);
        while (over - fits > 1)
        {
            var middle = (fits + over) / 2;
            if (width(Begin(text, middle) + "…") <= room) fits = middle;
            else over = middle;
        }

        return Begin(text, Math.Max(fits, 1)) + "…";
    }

    /// <summary>A name for a sentence.</summary>
    public static string Name(string name) => name.Length <= MostOfAName ? name : Begin(name, MostOfAName) + "…";

    /// <summary>Some names, the rest counted.</summary>
    /// <param name="names">The names as <see cref="Name"/> gives them, the first ones first.</param>
    /// <param name="most">How many are told.</param>
    public static string List(IReadOnlyList<string> names, int most)
    {
        var told = names.Take(most).ToList();
        if (names.Count > most) return $"{string.Join(", ", told)} and {names.Count - most} more";
        return told.Count < 2 ? string.Concat(told) : $"{string.Join(", ", told.SkipLast(1))} and {told[^1]}";
    }

    // Never half of a pair that stands for one sign.
    private static string Begin(string text, int length) => text[..(length > 0 && char.IsHighSurrogate(text[length - 1]) ? length - 1 : length)].TrimEnd();
}
