namespace FleetWake.Reports.Digests.Templates;

/// <summary>Template files by name, from wherever they come: a folder, or what an operator saved in the office.</summary>
public sealed class TemplateFiles
{
    /// <summary>Longest file [characters].</summary>
    public const int MostCharacters = 200_000;

    private readonly Func<string, string?> read;

    private TemplateFiles(string origin, Func<string, string?> read) => (Origin, this.read) = (origin, read);

    /// <summary>The templates that come with the program.</summary>
    public static TemplateFiles Shipped { get; } = Folder(Path.Combine(AppContext.BaseDirectory, "reports-templates"), "the shipped layout");

    /// <summary>Names of the shipped files: each of them can be changed, and no other is asked for.</summary>
    public static IReadOnlyList<string> ShippedNames { get; } =
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "reports-templates")).Select(f => Path.GetFileName(f)).Where(f => f == TemplateText.Styles || f.EndsWith(".liquid", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>Whose they are, in words.</summary>
    public string Origin { get; }

    /// <summary>The files of a folder. They are read each time: an edit holds from the next digest on.</summary>
    public static TemplateFiles Folder(string folder, string origin = "the layout of the templates folder") => new(origin, name =>
    {
        var file = Path.Combine(folder, name);
        return !File.Exists(file) ? null : new FileInfo(file).Length <= 4 * MostCharacters ? File.ReadAllText(file) : throw new TemplateRefused("the file is too long");
    });

    /// <summary>Files that are held in memory.</summary>
    public static TemplateFiles Of(IReadOnlyDictionary<string, string> files, string origin) => new(origin, files.GetValueOrDefault);

    /// <summary>These before those: what is missing here is taken from there.</summary>
    public TemplateFiles Over(TemplateFiles others) => new(Origin, name => Read(name) ?? others.Read(name));

    /// <summary>A file, or null when there is none.</summary>
    public string? Read(string name) => IsName(name) ? read(name) : null;

    /// <summary>Whether a text can be the name of a template file: no path can be built of one.</summary>
    public static bool IsName(string name) =>
        name.Length is > 0 and <= 80 && name[0] != '.' && name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '_' or '.') && !name.Contains("..", StringComparison.Ordinal);
}
