using Npgsql;

namespace FleetWake.Store.Servers;

internal static class Databases
{
    public static Task CreateAsync(string connection, string name, string? template, CancellationToken ct) =>
        RunAsync(connection, $"CREATE DATABASE {Quoted(name)}{(template is null ? "" : $" TEMPLATE {Quoted(template)}")}", ct);

    /// <summary>Ends the connections to it first.</summary>
    public static Task DropAsync(string connection, string name, CancellationToken ct) =>
        RunAsync(connection, $"DROP DATABASE IF EXISTS {Quoted(name)} WITH (FORCE)", ct);

    public static async Task<string> AskAsync(string connection, string question, CancellationToken ct)
    {
        await using NpgsqlConnection opened = await OpenAsync(connection, ct);
        await using var command = new NpgsqlCommand(question, opened);
        return (string)(await command.ExecuteScalarAsync(ct))!;
    }

    private static async Task RunAsync(string connection, string statement, CancellationToken ct)
    {
        await using NpgsqlConnection opened = await OpenAsync(connection, ct);
        await using var command = new NpgsqlCommand(statement, opened);
        await command.ExecuteNonQueryAsync(ct);
    }

    // Not pooled: an idle connection would outlive its use, and keep a template from being copied.
    private static async Task<NpgsqlConnection> OpenAsync(string connection, CancellationToken ct)
    {
        var opened = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString);
        try
        {
            await opened.OpenAsync(ct);
            return opened;
        }
        catch
        {
            await opened.DisposeAsync();
            throw;
        }
    }

    private static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
