namespace FleetWake.Journey.Tests.Docs;

/// <summary>
/// The docs that are made from the code. <c>FLEETWAKE_WRITE_DOCS=1 dotnet test tests/Journey --filter "FullyQualifiedName~Docs"</c>
/// writes them; without it, a test compares.
/// </summary>
internal static class DocsFolder
{
    private static readonly string Root = Find();

    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, "docs", file));

    public static IEnumerable<string> Examples() =>
        Directory.EnumerateFiles(Path.Combine(Root, "docs", "examples"), "*.http").Order(StringComparer.Ordinal);

    /// <summary>Holds a whole file against what the code makes of it.</summary>
    public static void Hold(string file, string made)
    {
        var path = Path.Combine(Root, "docs", file);
        if (Environment.GetEnvironmentVariable("FLEETWAKE_WRITE_DOCS") == "1") File.WriteAllText(path, made);
        Assert.True(File.Exists(path) && File.ReadAllText(path) == made, $"docs/{file} is not what the code makes: run this test with FLEETWAKE_WRITE_DOCS=1, and look at the difference");
    }

    /// <summary>Holds the part of a file between its two marks against what the code makes of it.</summary>
    public static void HoldPart(string file, string part, string made)
    {
        var text = Read(file);
        var (begin, end) = ($"<!-- {part}: made from the code -->\n", $"<!-- end of {part} -->");
        var (from, to) = (text.IndexOf(begin, StringComparison.Ordinal), text.IndexOf(end, StringComparison.Ordinal));
        Assert.True(from >= 0 && to > from, $"docs/{file} lacks the marks of {part}");
        Hold(file, text[..(from + begin.Length)] + made + text[to..]);
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "FleetWake.sln"))) return folder.FullName;
        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
