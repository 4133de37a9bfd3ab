using System.Text.RegularExpressions;

namespace FleetWake.Store.Import;

/// <summary>
/// What a point and a comma within a number mean in one file, known from all of its numbers before the first row is
/// recorded: 5.800 may be 5800 to whoever typed it, and a row that was taken wrongly stands.
/// </summary>
/// <param name="delimiter">What separates the file's columns.</param>
internal sealed partial class NumberMarks(char delimiter)
{
    private bool points;
    private bool commas;

    /// <summary>Looks at a number; one that can only be a decimal shows what its mark means.</summary>
    public void Note(string text)
    {
        if (!NumberPattern().IsMatch(text) || MayBeThousands().IsMatch(text)) return;
        points |= text.Contains('.', StringComparison.Ordinal);
        commas |= text.Contains(',', StringComparison.Ordinal);
    }

    /// <summary>Why a text is not read as a number; null when it is.</summary>
    public string? Why(string text)
    {
        if (!NumberPattern().IsMatch(text)) return "is no number: write figures alone, without blanks, units or marks for the thousands";
        if (text.IndexOfAny(['.', ',']) is var at && at < 0) return null;
        var mark = text[at];

        // Where commas separate the columns, a spreadsheet writes its decimals with points.
        if (delimiter == ',') return mark == '.' ? null : "has a decimal comma where commas separate the columns: write a point";
        if (points && commas) return "stands in a file that has decimal commas and decimal points: write one of them throughout the file";
        if (mark == '.' ? commas : points) return $"is written with \"{mark}\" where other numbers of this file have \"{(mark == '.' ? ',' : '.')}\": write one of them throughout the file";
        return points || commas || !MayBeThousands().IsMatch(text) ? null
            : $"may be {text.Replace($"{mark}", "", StringComparison.Ordinal)} with a mark for the thousands, and no number of this file shows otherwise: write it without the mark, or {text}0 if it is a decimal";
    }

    [GeneratedRegex(@"\A[+-]?[0-9]+([.,][0-9]+)?\z")]
    private static partial Regex NumberPattern();

    [GeneratedRegex(@"\A[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}\z")]
    private static partial Regex MayBeThousands();
}
