using System.Globalization;
using System.Text;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Figures;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>Puts a month into a pack for an analyst: figures with their pictures, tables as CSV and Parquet.</summary>
public static class AnalystPackDigest
{
    /// <summary>Name of the digest in subscriptions, ledgers and headers.</summary>
    public const string Digest = "analyst-pack";

    /// <summary>Most bytes of all files together: many mail servers refuse more than some 10 MB, and base64 makes a third more (common practice, no source).</summary>
    public const int MostBytes = 7_000_000;

    /// <summary>Tables that are written as Parquet as well: the long ones.</summary>
    private static readonly string[] AsParquet = ["records", "findings", "trials", "forecasts"];

    /// <summary>The draft.</summary>
    /// <param name="operatorName">The operator's name.</param>
    /// <param name="month">The month.</param>
    /// <param name="office">Address of the web room; null when it is not set.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<DigestDraft> DraftAsync(string operatorName, AnalystMonth month, Uri? office, CancellationToken ct)
    {
        var name = Phrases.Plain(operatorName);
        var period = $"{month.First:yyyy-MM}";
        var files = await FilesAsync(month, ct);
        var taken = new List<DigestAttachment>();
        foreach (var file in files.OrderBy(f => f.Bytes.Length))
            if (taken.Sum(t => (long)t.Bytes.Length) + file.Bytes.Length <= MostBytes) taken.Add(file);
        List<DigestAttachment> shown = [.. files.Where(taken.Contains)];
        var left = files.Except(shown).Select(f => f.FileName).ToList();
        var link = office is null ? "" : new Uri(office, $"office/analyst/{period}").AbsoluteUri;
        var records = Table(month, "records").Rows.Count;
        var trials = Table(month, "trials").Rows.Count;
        var said = string.Create(CultureInfo.InvariantCulture, $"{records:N0}");
        var content = new AnalystPackContent(
            name, period, month.Last,
            $"{name}, {month.First.ToString("MMMM yyyy", CultureInfo.InvariantCulture)}: records and figures",
            $"{said} records and {Phrases.Count(trials, "trial")} in {month.First.ToString("MMMM yyyy", CultureInfo.InvariantCulture)}, of {Phrases.Count(month.Findings.Count, "boat")}.",
            [.. Figures(month)],
            [.. shown.Select(f => new PackFile(f.FileName, What(month, f.FileName)))],
            left.Count == 0 ? "" : $"Too large for a mail: {string.Join(", ", left)}. {(link.Length > 0 ? "They are in the office" : "They are in the office, under the month's pack")}.",
            link,
            Method,
            ["These figures are a decision aid. The owner's manual, local rules and a licensed technician come first.", "People stand in the tables by pseudonymous ids; hires by their ids. Whoever passes the files on passes those on too."]);
        return Draft(content, [.. Pictures(month)], shown);
    }

    /// <summary>The draft of a content that was put together already.</summary>
    internal static DigestDraft Draft(AnalystPackContent content, IReadOnlyList<DraftPicture> pictures, IReadOnlyList<DigestAttachment> files) =>
        new(Digest, content.Subject, content, [.. Sections(content)]) { Pictures = pictures, Attachments = files };

    /// <summary>Every file of the pack.</summary>
    public static async Task<IReadOnlyList<DigestAttachment>> FilesAsync(AnalystMonth month, CancellationToken ct)
    {
        var files = new List<DigestAttachment>();
        foreach (var table in month.Tables)
        {
            files.Add(new DigestAttachment($"{table.Name}.csv", "text/csv; charset=utf-8; header=present", CsvFile.Of(table)));
            if (AsParquet.Contains(table.Name)) files.Add(new DigestAttachment($"{table.Name}.parquet", "application/vnd.apache.parquet", await ParquetFile.OfAsync(table, ct)));
        }

        files.Add(new DigestAttachment("methods.txt", "text/plain; charset=utf-8", Encoding.UTF8.GetBytes(string.Join("\n\n", Method) + "\n")));
        return files;
    }

    internal static readonly IReadOnlyList<string> Method =
    [
        "The tables hold the record as it was known when the pack was made: what happened in the month by each dock's calendar, with corrections that came later. \"counts\" tells what was replaced or taken back.",
        "Findings stand as of the month's last day. RPM at reference air is at 25 deg C and 99 kPa of dry air; a drift is RPM per 100 engine hours, its interval holds the truth eight times in ten.",
        "Lives: the share that outlives an age is by Kaplan and Meier (1958); a prop still in use counts as long as it was watched.",
        "Strikes: counted over engine hours, with exact limits by Garwood (1936).",
        "Forecasts: made again as of each month's end from what was known of the time until then, and held against what came by the end of this month. What is open is told as open. A strike or work on the prop ends the stretch, for it was not foretold.",
        "dictionary.csv says what each column means and its unit. An empty cell was not told, or does not apply. CSV is RFC 4180 in UTF-8; text that a spreadsheet would run as a formula begins there with an apostrophe, and not in Parquet.",
    ];

    private static IEnumerable<string> Figures(AnalystMonth month)
    {
        yield return PropLives.Of(month.Fleet).Sentence;
        yield return StrikeRates.Of(month.Fleet).Sentence;
        foreach (var calibration in month.Calibrations.Take(1)) yield return calibration.Sentence;
    }

    private static IEnumerable<DraftPicture> Pictures(AnalystMonth month)
    {
        var pictures = new (string Key, Picture? Picture)[]
        {
            ("calibration", CalibrationPicture.Of(month.Calibrations)),
            ("lives", LifeCurves.ByMaterial(month.Fleet)),
            ("lives", LifeCurves.ByWater(month.Fleet)),
            ("strikes", StrikeRatePicture.Of(StrikeRates.Of(month.Fleet))),
        };
        foreach (var (key, picture) in pictures)
            if (picture is not null) yield return new DraftPicture(key, picture.Title, picture.Statement, r => r.Render(picture));
    }

    private static PackTable Table(AnalystMonth month, string name) => month.Tables.First(t => t.Name == name);

    private static string What(AnalystMonth month, string file) =>
        month.Tables.FirstOrDefault(t => t.Name == Path.GetFileNameWithoutExtension(file)) is { } table ? $"{Phrases.Count(table.Rows.Count, "row")}: {table.Meaning}" : "how the numbers came about";

    private static IEnumerable<PlainSection> Sections(AnalystPackContent content)
    {
        yield return new("", [$"{content.OperatorName}, analyst's pack {content.Period}", content.Headline]);
        yield return new("Figures", content.Figures);
        yield return new("Files", [.. content.Files.Select(f => $"{f.Name}: {f.What}"), .. content.FilesLeftOut.Length > 0 ? [content.FilesLeftOut] : Array.Empty<string>()]);
        yield return new("", [.. content.Caution, .. content.Method], Small: true);
    }
}
