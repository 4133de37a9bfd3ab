namespace FleetWake.Commands;

/// <summary>Things looked at one after the other, each told on a line.</summary>
internal sealed class Checks
{
    public bool AllWell { get; private set; } = true;

    /// <summary>Looks at something that rests on what came before; nothing is told of it when that was wrong.</summary>
    public async Task ThenAsync(string name, Func<Task<string>> look)
    {
        if (AllWell) await RunAsync(name, look);
        else Skip(name);
    }

    /// <summary>Looks at several things that do not rest on each other, but all on what came before.</summary>
    public async Task ThenEachAsync(params (string Name, Func<Task<string>> Look)[] looks)
    {
        var ready = AllWell;
        foreach (var (name, look) in looks)
        {
            if (ready) await RunAsync(name, look);
            else Skip(name);
        }
    }

    public async Task RunAsync(string name, Func<Task<string>> look)
    {
        try
        {
            Console.WriteLine($"ok    {name,-10} {await look()}");
        }
        catch (NoteException note)
        {
            Console.WriteLine($"note  {name,-10} {note.Message}");
        }
        catch (Exception e) when (e is CommandException or IOException || Outcome.Database(e) is not null)
        {
            AllWell = false;
            Console.WriteLine($"WRONG {name,-10} {(Outcome.Database(e) is { } database ? Outcome.Mend(database) : e.Message)}");
        }
    }

    private static void Skip(string name) => Console.WriteLine($"-     {name,-10} not looked at: mend the above first");
}

/// <summary>Something a person should know of, though nothing is wrong.</summary>
internal sealed class NoteException(string message) : Exception(message);
