namespace FleetWake.Store.Tests.Servers;

/// <summary>A place for a kept data folder, where the user who runs postgres gets through too.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fleetwake-test-");

    public TemporaryFolder()
    {
        if (!OperatingSystem.IsWindows())
            _folder.UnixFileMode |= UnixFileMode.OtherExecute;
    }

    public string In(string name) => Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);
}
