using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Commands;

namespace FleetWake.Trials;

/// <summary>
/// The parts of an option such as <c>band=5000-6000,gear=2.08</c>: each named once, separated by commas. A refusal names the
/// option, the part and how to mend it.
/// </summary>
internal sealed partial class OptionParts
{
    private readonly string _option;
    private readonly Dictionary<string, string> _parts = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Takes an option apart.</summary>
    /// <param name="option">The option's name, such as <c>--engine</c>.</param>
    /// <param name="text">What was typed after it.</param>
    /// <param name="names">The names that its parts may have.</param>
    /// <exception cref="CommandException">A part without a name, with an unknown one, without a value, or given twice.</exception>
    public OptionParts(string option, string text, params string[] names)
    {
        _option = option;
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            if (part.Length == 0)
                throw new CommandException($"{option} \"{text}\" has an empty part: write name=value, separated by commas, without a comma at the end.");
            var at = part.IndexOf('=', StringComparison.Ordinal);
            if (at < 0)
                throw new CommandException($"{option}: \"{part}\" has no name: write {names[0]}=..., and decimals with a point.");
            var (name, value) = (part[..at].Trim(), part[(at + 1)..].Trim());
            if (!names.Contains(name, StringComparer.OrdinalIgnoreCase))
                throw new CommandException($"{option} has no part \"{name}\": it takes {string.Join(", ", names)}.");
            if (value.Length == 0)
                throw new CommandException($"{option}: \"{name}\" has no value: write {name}=...");
            if (!_parts.TryAdd(name, value))
                throw new CommandException($"{option}: \"{name}\" is given twice: leave one of them out.");
        }
    }

    /// <summary>The part's text; null when it was not given.</summary>
    public string? this[string name] => _parts.GetValueOrDefault(name);

    /// <summary>A part that is a number, with or without one of some units; null when it was not given.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="least">Lowest value, in the unit that is meant when none is written.</param>
    /// <param name="most">Highest value, in that unit.</param>
    /// <param name="unit">That unit's name for people; empty for a pure number.</param>
    public double? Number(string name, double least, double most, string unit)
    {
        if (this[name] is not { } text) return null;
        var figures = unit.Length > 0 && text.EndsWith(unit, StringComparison.OrdinalIgnoreCase) ? text[..^unit.Length].TrimEnd() : text;
        return ReadNumber(figures) is { } value && value >= least && value <= most
            ? value
            : throw new CommandException(Told(name, text, $"a number from {Show(least)} to {Show(most)}{(unit.Length > 0 ? " " : "")}{unit}"));
    }

    /// <summary>What to say of a part that is not what it should be.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="given">What was typed.</param>
    /// <param name="wanted">What should have been.</param>
    public string Told(string name, string given, string wanted) => $"{_option}: {name}={given} is not {wanted}.";

    /// <summary>A plain finite number with a decimal point; null when the text is none.</summary>
    public static double? ReadNumber(string text) =>
        NumberPattern().IsMatch(text) && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    /// <summary>A number as people write it.</summary>
    public static string Show(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\A[+-]?[0-9]{1,9}(\.[0-9]{1,9})?\z")]
    private static partial Regex NumberPattern();
}
