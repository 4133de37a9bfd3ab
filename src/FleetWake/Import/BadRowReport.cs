using FleetWake.Store.Import;

namespace FleetWake.Import;

/// <summary>Tells bad rows: all of them in a file, the first few on the screen.</summary>
/// <param name="path">The file; there is none while every row is good.</param>
internal sealed class BadRowReport(string path) : IDisposable
{
    private const int MostOnScreen = 20;
    private StreamWriter? file;
    private int told;

    /// <summary>Something was told.</summary>
    public bool Any => told > 0;

    /// <summary>Takes away what an earlier run left: it would be taken for this one's.</summary>
    public void Clear() => File.Delete(path);

    /// <summary>Tells one complaint.</summary>
    public void Tell(BadCell bad)
    {
        if (file is null)
        {
            // With its mark of UTF-8: without it, a spreadsheet shows names with accents wrongly.
            file = new StreamWriter(path, append: false, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            file.WriteLine("file,line,column,value,why");
        }

        file.WriteLine(CsvText.Line([bad.File, $"{bad.Line}", bad.Column, CsvText.Harmless(bad.Value), bad.Why]));
        if (told++ < MostOnScreen) Console.WriteLine($"  {bad.File} line {bad.Line}{Where(bad)}: {bad.Why}");
    }

    /// <summary>Says on the screen where the rest is.</summary>
    public void Close()
    {
        file?.Dispose();
        file = null;
        if (told > MostOnScreen) Console.WriteLine($"  and {told - MostOnScreen} more");
        if (told > 0) Console.WriteLine($"  All of them stand in {path}. Mend those rows and import the same folder again: what is recorded is not recorded twice.");
    }

    /// <inheritdoc/>
    public void Dispose() => file?.Dispose();

    private static string Where(BadCell bad) =>
        (bad.Column.Length > 0 ? $", {bad.Column}" : "") + (bad.Value.Length > 0 ? $" \"{Short(bad.Value)}\"" : "");

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
