namespace FleetWake.Reports.Tests;

/// <summary>Folders of the repository that the tests run in. The path of a source file is of no use for that: a deterministic build (CI) writes another.</summary>
internal static class RepositoryFolder
{
    /// <summary>A path below the folder of the solution.</summary>
    public static string Of(params string[] parts)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FleetWake.sln"))) folder = folder.Parent!;
        return Path.Combine([folder.FullName, .. parts]);
    }
}
