using System.Text;
using FleetWake.Import;
using FleetWake.Store.Import;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Import;

/// <summary>A folder of sheets as somebody saved them, taken away again.</summary>
public sealed class SheetFolder : IDisposable
{
    public const string Operator = RunningFleet.Operator;
    public const string Strikes = "strike_reported.csv";

    public string Path { get; } = Directory.CreateTempSubdirectory("fleetwake-import-test-").FullName;

    public string ReportPath => System.IO.Path.Combine(Path, "import-report.csv");

    public string[] Report => File.Exists(ReportPath) ? File.ReadAllLines(ReportPath) : [];

    /// <summary>What an import of the folder is asked, with a person and a zone for rows that name none.</summary>
    public ImportRequest Request => new(Path, Operator, new RowDefaults("office", RunningFleet.Zone));

    public SheetFolder With(string name, params string[] lines) => With(name, Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"));

    public SheetFolder With(string name, byte[] content)
    {
        File.WriteAllBytes(System.IO.Path.Combine(Path, name), content);
        return this;
    }

    /// <summary>Every row of the folder as it is read.</summary>
    internal IReadOnlyList<ReadRow> Read()
    {
        var folder = ImportFolder.Open(Request);
        folder.Survey(TestContext.Current.CancellationToken);
        return [.. folder.Rows()];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
