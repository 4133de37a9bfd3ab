using FleetWake.Settings;
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
        catch (Exception e) when (e is SettingsException or ServerNotFoundException or ServerStartException or CommandException)
        {
            return Say(e.Message);
        }
        catch (NpgsqlException e)
        {
            return Say($"The database does not answer as it should: {e.Message}. Check FLEETWAKE_DB and that the server runs.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Say(e.Message);
        }
    }

    private static int Say(string message)
    {
        Console.Error.WriteLine($"fleetwake: {message}");
        return Wrong;
    }
}

/// <summary>A command cannot do what it was asked; the message says why and how to mend it.</summary>
public sealed class CommandException(string message) : Exception(message);
