using System.Text.RegularExpressions;
using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Advice;

namespace FleetWake.Trials;

/// <summary>Reads the option that names the uses of a boat: <c>light=-150kg,usual=0,heavy=+300kg</c>.</summary>
internal static partial class LoadOption
{
    /// <summary>The option's name.</summary>
    public const string Name = "--load";

    /// <summary>What the option takes, for its help.</summary>
    public const string Syntax =
        "Uses of the boat against the load that the RPM was read at: NAME=KG or NAME=PER CENT of the displacement, separated by commas, such as "
        + "\"light=-150kg,usual=0,heavy=+300kg\" (with --mass) or \"light=-8%,heavy=+15%\". The load of 0 is the usual one, and is added when left out.";

    private const int Most = 12;

    /// <summary>The uses, the usual one first.</summary>
    /// <param name="text">What was typed; null for the usual load alone.</param>
    /// <param name="displacement">Displacement of the boat at the trial; null when not given.</param>
    /// <exception cref="CommandException">It cannot be read; says which part and how to mend it.</exception>
    public static IReadOnlyList<LoadCase> Read(string? text, Mass? displacement)
    {
        if (text is null) return [LoadCase.Usual];
        var loads = text.Split(',', StringSplitOptions.TrimEntries).Select(part => One(part, displacement)).ToList();
        if (loads.Count > Most) throw new CommandException($"{Name} names {loads.Count} uses: give at most {Most}.");
        if (loads.GroupBy(load => load.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(same => same.Count() > 1) is { } twice)
            throw new CommandException($"{Name}: \"{twice.Key}\" is given twice: leave one of them out.");
        if (loads.Find(load => load.LnRpm.Value == 0) is not { } usual)
            return loads.Exists(load => load.Name.Equals(LoadCase.Usual.Name, StringComparison.OrdinalIgnoreCase))
                ? throw new CommandException($"{Name}: the usual load is that of the trial, so write usual=0 and the others against it.")
                : [LoadCase.Usual, .. loads];
        loads.Remove(usual);
        return [usual, .. loads];
    }

    private static LoadCase One(string part, Mass? displacement)
    {
        var match = Pattern().Match(part);
        if (!match.Success || OptionParts.ReadNumber(match.Groups[2].Value) is not { } value)
            throw new CommandException($"{Name}: \"{part}\" is no use of a boat: write NAME=0, NAME=+300kg or NAME=-8%, decimals with a point.");
        var (name, unit) = (match.Groups[1].Value, match.Groups[3].Value.ToUpperInvariant());
        if (value == 0) return new LoadCase(name, default);
        var share = (unit, displacement) switch
        {
            ("%", _) => value / 100,
            ("KG", { } whole) => value / whole.Kilograms,
            ("LB", { } whole) => Mass.FromPounds(Math.Abs(value)).Kilograms * Math.Sign(value) / whole.Kilograms,
            ("", _) => throw new CommandException($"{Name}: \"{part}\" has no unit: write kg, lb or %."),
            _ => throw new CommandException($"{Name}: \"{part}\" needs the boat's displacement: add --mass 1800kg, or write the load in per cent of it, {name}={(value < 0 ? "-" : "+")}10%."),
        };
        return share is >= -0.5 and <= 1
            ? LoadCase.OfDisplacement(name, share)
            : throw new CommandException($"{Name}: \"{part}\" changes the displacement by {OptionParts.Show(100 * share)} %, which is not -50 to 100 %: check it and --mass.");
    }

    [GeneratedRegex(@"\A([\p{L}][\p{L}\p{N} _-]{0,30}?)\s*=\s*([+-]?[0-9.]+)\s*(kg|lb|%)?\z", RegexOptions.IgnoreCase)]
    private static partial Regex Pattern();
}
