using System.Globalization;

namespace FleetWake.Logbook.Tests.Figures;

/// <summary>The tables in Reference, less their heads.</summary>
internal static class RTables
{
    public static IEnumerable<string[]> Rows(string file) => File.ReadLines(Path.Combine(Folder(), file)).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));

    /// <summary>A number; null where R has none.</summary>
    public static double? Number(string cell) => cell is "NA" or "" ? null : double.Parse(cell, CultureInfo.InvariantCulture);

    private static string Folder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "FleetWake.sln"))) return Path.Combine(folder.FullName, "tests", "Logbook", "Fleet", "Figures", "Reference");
        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
