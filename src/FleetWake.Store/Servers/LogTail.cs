namespace FleetWake.Store.Servers;

/// <summary>The last lines that a program wrote: kept small however long it runs, and shown when it fails.</summary>
internal sealed class LogTail(int most = 40)
{
    private readonly Queue<string> _lines = new();

    /// <summary>Raised for every line, on the thread that reads.</summary>
    public event Action<string>? Read;

    /// <summary>Reads until the writer is gone: a full pipe would stop a server that nobody listens to.</summary>
    public async Task DrainAsync(TextReader from, CancellationToken ct)
    {
        while (await from.ReadLineAsync(ct) is { } line)
        {
            lock (_lines)
            {
                _lines.Enqueue(line);
                if (_lines.Count > most)
                    _lines.Dequeue();
            }
            Read?.Invoke(line);
        }
    }

    public override string ToString()
    {
        lock (_lines)
            return string.Join('\n', _lines);
    }
}
