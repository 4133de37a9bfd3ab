using FleetWake.Settings;
using FleetWake.Store.Import;
using FleetWake.Store.Servers;
using Npgsql;

namespace FleetWake.Commands;

/// <summary>Turns what a person can mend into one line on the error stream and an exit code, without a stack trace.</summary>
internal static class Outcome
{
    public const int Wrong = 1;
    public const int Interrupted = 130;

    public static async Task<int> OfAsync(Func<Task<int>> run)
    {
        try
        {
            return await run();
        }
        catch (OperationCanceledException)
        {
            return Interrupted;
        }
        catch (Exception e) when (e is SettingsException or ServerNotFoundException or ServerStartException or CommandException or TableException)
        {
            return Say(e.Message);
        }
        catch (Exception e) when (Database(e) is { } database)
        {
            return Say(Mend(database));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Say(e.Message);
        }
    }

    /// <summary>The database's own error within whatever a library wrapped it in; null when there is none.</summary>
    public static NpgsqlException? Database(Exception e) => e as NpgsqlException ?? (e.InnerException is { } inner ? Database(inner) : null);

    /// <summary>What a database's error means to the person at the command line, and how to mend it.</summary>
    public static string Mend(NpgsqlException e) => e is PostgresException pg
        ? pg.SqlState switch
        {
            "42P01" or "3F000" => "The database does not have this version's tables: run \"fleetwake schema\".",
            "42501" => $"The database user may not do that: {pg.MessageText}. The schema needs a user that owns the database; the demo one with CREATEDB (or leave FLEETWAKE_DB unset for it).",
            "28P01" or "28000" => $"The database refuses the user of FLEETWAKE_DB: {pg.MessageText}.",
            "3D000" => $"FLEETWAKE_DB names a database that is not there: {pg.MessageText}.",
            _ => $"The database answers: {pg.MessageText} ({pg.SqlState}).",
        }
        : $"The database does not answer: {e.Message}. Check FLEETWAKE_DB and that the server runs.";

    private static int Say(string message)
    {
        Console.Error.WriteLine($"fleetwake: {message}");
        return Wrong;
    }
}

/// <summary>A command cannot do what it was asked; the message says why and how to mend it.</summary>
public sealed class CommandException(string message) : Exception(message);
