using Parquet;
using Parquet.Schema;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>Writes a table as Apache Parquet: the same names as in the CSV, with types. Nothing is guarded there, for nothing reads a cell as a formula.</summary>
public static class ParquetFile
{
    /// <summary>The file.</summary>
    public static async Task<byte[]> OfAsync(PackTable table, CancellationToken ct)
    {
        var fields = table.Columns.Select(c => new DataField(c.Name, TypeOf(c.Type), isNullable: true)).ToArray();
        using var file = new MemoryStream();
        await using (var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), file, cancellationToken: ct))
        {
            using var group = writer.CreateRowGroup();
            for (var i = 0; i < fields.Length; i++) await WriteAsync(group, fields[i], table.Columns[i].Type, [.. table.Rows.Select(r => r[i])]);
        }

        return file.ToArray();
    }

    private static Task WriteAsync(ParquetRowGroupWriter group, DataField field, PackType type, object?[] cells) => type switch
    {
        PackType.Number => group.WriteAsync<double>(field, Array.ConvertAll(cells, c => (double?)c)),
        PackType.Whole => group.WriteAsync<int>(field, Array.ConvertAll(cells, c => (int?)c)),
        PackType.Truth => group.WriteAsync<bool>(field, Array.ConvertAll(cells, c => (bool?)c)),
        PackType.Day => group.WriteAsync<DateOnly>(field, Array.ConvertAll(cells, c => (DateOnly?)c)),
        _ => group.WriteAsync(field, Array.ConvertAll(cells, c => (string?)c)),
    };

    private static Type TypeOf(PackType type) => type switch
    {
        PackType.Number => typeof(double),
        PackType.Whole => typeof(int),
        PackType.Truth => typeof(bool),
        PackType.Day => typeof(DateOnly),
        _ => typeof(string),
    };
}
