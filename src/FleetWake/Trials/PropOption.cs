using System.Text.RegularExpressions;
using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>Reads the option that describes a prop: <c>13x19</c>, <c>13x19x3</c>, <c>13 1/4 x 17</c> or <c>330x483mm</c>.</summary>
internal static partial class PropOption
{
    /// <summary>The option's name.</summary>
    public const string Name = "--prop";

    /// <summary>What the option takes, for its help.</summary>
    public const string Syntax =
        "The prop as DIAMETERxPITCH or DIAMETERxPITCHxBLADES in inches, such as 13x19, \"13 1/4x17\" or 14.5x19x4; "
        + "in millimetres with the unit at the end, 330x483mm.";

    /// <summary>Lowest pitch [in], as a record of a prop allows.</summary>
    public const double LeastPitch = 3;

    /// <summary>Highest pitch [in].</summary>
    public const double MostPitch = 40;

    private const double LeastDiameter = 5;  // [in], as a record of a prop allows
    private const double MostDiameter = 30;

    /// <summary>The prop that the text describes.</summary>
    /// <param name="text">What was typed.</param>
    /// <exception cref="CommandException">It cannot be read; says what, its range and how to mend it.</exception>
    public static PropData Read(string text)
    {
        var match = PropPattern().Match(text.Trim());
        if (!match.Success || Inches(match.Groups["d"].Value) is not { } diameter || Inches(match.Groups["p"].Value) is not { } pitch)
            throw new CommandException($"{Name} \"{text}\" is no prop: write diameter x pitch in inches, such as 13x19 or 13x19x3, or in millimetres as 330x483mm.");
        var inMillimetres = match.Groups["unit"].Value.Equals("mm", StringComparison.OrdinalIgnoreCase);
        if (inMillimetres) (diameter, pitch) = (diameter / 25.4, pitch / 25.4);
        InRange("diameter", diameter, LeastDiameter, MostDiameter, text, inMillimetres);
        InRange("pitch", pitch, LeastPitch, MostPitch, text, inMillimetres);
        return new PropData(Length.FromInches(pitch))
        {
            Diameter = Length.FromInches(diameter),
            Blades = match.Groups["z"].Success ? Blades(match.Groups["z"].Value, text) : null,
        };
    }

    /// <summary>A pitch alone, as in a list of what is to be had: <c>17</c>, <c>17in</c> or <c>432mm</c>.</summary>
    /// <param name="option">The option that it stands in.</param>
    /// <param name="text">What was typed.</param>
    /// <exception cref="CommandException">It cannot be read.</exception>
    public static Length ReadPitch(string option, string text)
    {
        var match = PitchPattern().Match(text.Trim());
        if (!match.Success || Inches(match.Groups["p"].Value) is not { } pitch)
            throw new CommandException($"{option}: \"{text}\" is no pitch: write inches such as 19 or 19.5, or millimetres as 483mm.");
        var inMillimetres = match.Groups["unit"].Value.Equals("mm", StringComparison.OrdinalIgnoreCase);
        if (inMillimetres) pitch /= 25.4;
        InRange("pitch", pitch, LeastPitch, MostPitch, text, inMillimetres, option);
        return Length.FromInches(pitch);
    }

    private static int Blades(string figures, string text) => int.Parse(figures) is var blades and >= 2 and <= 7
        ? blades
        : throw new CommandException($"{Name} \"{text}\": {figures} blades is not 2 to 7; write diameter x pitch x blades, such as 13x19x3.");

    private static void InRange(string name, double inches, double least, double most, string text, bool inMillimetres, string option = Name)
    {
        if (inches >= least && inches <= most) return;
        var mend = inMillimetres
            ? "without \"mm\" the figures are inches"
            : name == "diameter" && inches < least ? "write the diameter first and the number of blades last, 13x19x3" : "for millimetres write the unit at the end, 330x483mm";
        throw new CommandException(
            $"{option} \"{text}\": a {name} of {OptionParts.Show(inches)} in is not {OptionParts.Show(least)} to {OptionParts.Show(most)} in ({OptionParts.Show(least * 25.4)} to {OptionParts.Show(most * 25.4)} mm); {mend}.");
    }

    /// <summary>A number with decimals or with a fraction, as sizes are stamped: 13.25, 13 1/4, 13-1/4; null when it is none.</summary>
    private static double? Inches(string text)
    {
        var match = FractionPattern().Match(text);
        if (!match.Success) return OptionParts.ReadNumber(text);
        var (whole, over, under) = (double.Parse(match.Groups[1].Value), double.Parse(match.Groups[2].Value), double.Parse(match.Groups[3].Value));
        return over < under ? whole + (over / under) : null;
    }

    private const string Size = @"[0-9]{1,4}(?:\.[0-9]{1,4}|[ -][0-9]{1,2}/[0-9]{1,2})?";

    [GeneratedRegex($@"\A(?<d>{Size})\s*(?:""|in|mm)?\s*[x\u00D7]\s*(?<p>{Size})\s*(?<unit>mm|in|"")?\s*(?:[x\u00D7]\s*(?<z>[0-9]{{1,2}})\s*(?<unit>mm|in)?)?\z", RegexOptions.IgnoreCase)]
    private static partial Regex PropPattern();

    [GeneratedRegex($@"\A(?<p>{Size})\s*(?<unit>mm|in|"")?\z", RegexOptions.IgnoreCase)]
    private static partial Regex PitchPattern();

    [GeneratedRegex(@"\A([0-9]+)[ -]([0-9]+)/([0-9]+)\z")]
    private static partial Regex FractionPattern();
}
