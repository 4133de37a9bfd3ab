using Npgsql;

namespace FleetWake.Store.Schema;

/// <summary>Statements on plain tables.</summary>
internal static class Rows
{
    /// <summary>Runs a statement; returns how many rows it touched.</summary>
    public static async Task<int> RunAsync(this NpgsqlDataSource source, string sql, CancellationToken ct, params object?[] values)
    {
        await using var command = source.With(sql, values);
        return await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Reads rows.</summary>
    public static async Task<IReadOnlyList<T>> ReadAsync<T>(this NpgsqlDataSource source, string sql, Func<NpgsqlDataReader, T> read, CancellationToken ct, params object?[] values)
    {
        await using var command = source.With(sql, values);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var rows = new List<T>();
        while (await reader.ReadAsync(ct)) rows.Add(read(reader));
        return rows;
    }

    /// <summary>A text that may be null.</summary>
    public static string? Text(this NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.GetString(column);

    /// <summary>A moment.</summary>
    public static DateTimeOffset Moment(this NpgsqlDataReader reader, int column) => reader.GetFieldValue<DateTimeOffset>(column);

    /// <summary>A moment that may be null.</summary>
    public static DateTimeOffset? MaybeMoment(this NpgsqlDataReader reader, int column) => reader.IsDBNull(column) ? null : reader.Moment(column);

    private static NpgsqlCommand With(this NpgsqlDataSource source, string sql, object?[] values)
    {
        var command = source.CreateCommand(sql);
        foreach (var value in values)
        {
            // PostgreSQL keeps moments without their zone; a null has no type of its own, and columns give it theirs.
            var stored = value switch { null => DBNull.Value, DateTimeOffset moment => moment.ToUniversalTime(), _ => value };
            command.Parameters.Add(new NpgsqlParameter { Value = stored });
        }

        return command;
    }
}
