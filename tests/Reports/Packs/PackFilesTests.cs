using System.Globalization;
using System.Text;
using FleetWake.Reports.Digests.AnalystPack;
using nietras.SeparatedValues;
using Parquet;

namespace FleetWake.Reports.Tests.Packs;

/// <summary>Tables of the analyst's pack as files: read back by readers that did not write them where there is one.</summary>
public class PackFilesTests
{
    private static readonly PackTable Table = new(
        "odd", "a row of odd cells",
        [new("text", PackType.Text, "", ""), new("number", PackType.Number, "h", ""), new("whole", PackType.Whole, "", ""), new("truth", PackType.Truth, "", ""), new("day", PackType.Day, "", "")],
        [
            ["plain", 1.5, 3, true, new DateOnly(2026, 2, 28)],
            ["with, comma and \"quotes\"", -0.25, -7, false, new DateOnly(1999, 12, 31)],
            ["two\r\nlines", null, null, null, null],
            ["=HYPERLINK(\"http://x\")", 1e-7, 0, null, null],
            ["Å ø 船", 12345678.901234, int.MaxValue, true, DateOnly.MaxValue],
            [null, 0.0, null, null, null],
        ]);

    [Theory]
    [InlineData("2026-10", "2026-11-01", "2026-10-01")]
    [InlineData("2026-10", "2026-12-01", "2026-10-01")] // made up for later
    [InlineData("2026-11", "2026-11-02", "2026-10-01")] // out of season
    [InlineData("2026-W45", "2026-11-02", "2026-10-01")]
    [InlineData("2026-11-30", "2026-11-30", "2026-10-01")]
    [InlineData("2026-01-01", "2026-01-01", "2025-12-01")]
    public void A_pack_is_of_a_month_that_has_ended_whatever_its_rhythm(string period, string day, string first) =>
        Assert.Equal(DateOnly.Parse(first, CultureInfo.InvariantCulture), AnalystPackKind.MonthOf(period, DateOnly.Parse(day, CultureInfo.InvariantCulture)));

    [Fact]
    public void Csv_is_as_RFC_4180_has_it()
    {
        var text = Encoding.UTF8.GetString(CsvFile.Of(Table));
        Assert.StartsWith("text,number,whole,truth,day\r\nplain,1.5,3,true,2026-02-28\r\n", text, StringComparison.Ordinal); // section 2, rules 1 to 4
        Assert.Contains("\"with, comma and \"\"quotes\"\"\",-0.25,-7,false,1999-12-31\r\n", text, StringComparison.Ordinal); // rules 5 to 7
        Assert.Contains("\"two\r\nlines\",,,,\r\n", text, StringComparison.Ordinal);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
    }

    // The leading signs are those of OWASP's "CSV Injection" page.
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\tx")]
    [InlineData("\rx")]
    public void A_cell_that_a_spreadsheet_would_run_is_text(string cell)
    {
        var text = Encoding.UTF8.GetString(CsvFile.Of(new PackTable("t", "", [new("a", PackType.Text, "", "")], [[cell]])));
        Assert.Equal($"'{cell}", text["a\r\n".Length..].Trim('"', '\n').TrimEnd('\r').TrimEnd('"'));
    }

    [Fact]
    public void Another_reader_reads_the_csv_back()
    {
        using var reader = Sep.Reader(o => o with { Unescape = true }).From(CsvFile.Of(Table));
        var rows = new List<string[]>();
        foreach (var row in reader) rows.Add([row["text"].ToString(), row["number"].ToString(), row["day"].ToString()]);
        Assert.Equal(Table.Rows.Count, rows.Count);
        Assert.Equal(["with, comma and \"quotes\"", "-0.25", "1999-12-31"], rows[1]);
        Assert.Equal("two\r\nlines", rows[2][0]);
    }

    // Read by the library that wrote it; what another reader makes of it is written down in docs/templates.md.
    [Fact]
    public async Task Parquet_holds_the_same_with_its_types()
    {
        var ct = TestContext.Current.CancellationToken;
        using var file = new MemoryStream(await ParquetFile.OfAsync(Table, ct));
        await using var reader = await ParquetReader.CreateAsync(file, cancellationToken: ct);
        var fields = reader.Schema.GetDataFields();
        Assert.Equal(["text", "number", "whole", "truth", "day"], fields.Select(f => f.Name));
        using var group = reader.OpenRowGroupReader(0);
        var (texts, numbers, wholes) = (new string?[6], new double?[6], new int?[6]);
        await group.ReadAsync(fields[0], texts.AsMemory()!, cancellationToken: ct);
        await group.ReadAsync<double>(fields[1], numbers.AsMemory(), cancellationToken: ct);
        await group.ReadAsync<int>(fields[2], wholes.AsMemory(), cancellationToken: ct);
        Assert.Equal(Table.Rows.Select(r => (string?)r[0]), texts); // a formula is no formula there
        Assert.Equal(Table.Rows.Select(r => (double?)r[1]), numbers);
        Assert.Equal(Table.Rows.Select(r => (int?)r[2]), wholes);
    }
}
