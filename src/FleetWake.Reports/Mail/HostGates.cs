namespace FleetWake.Reports.Mail;

/// <summary>How mail is sent side by side.</summary>
/// <param name="Senders">Messages under way at once.</param>
/// <param name="PerHost">Of these, to one receiving host.</param>
/// <param name="PerMinute">Messages begun to one receiving host within a minute; 0 for no limit.</param>
/// <param name="FirstPause">How long a host is left alone that asked for it; doubling each further time, up to five minutes.</param>
public sealed record SendingSettings(int Senders, int PerHost, int PerMinute, TimeSpan FirstPause)
{
    /// <summary>Six at once, two to a host.</summary>
    public static SendingSettings Usual { get; } = new(6, 2, 0, TimeSpan.FromSeconds(5));
}

/// <summary>
/// A gate for each receiving host: a host that is slow, or that asked to be left alone, keeps its own mail waiting and
/// nobody else's. Each process has gates of its own. Not for several threads at once.
/// </summary>
public sealed class HostGates(SendingSettings settings, TimeProvider time)
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan LongestPause = TimeSpan.FromMinutes(5);
    private readonly Dictionary<string, Gate> gates = new(StringComparer.Ordinal);
    private readonly Gate server = new();

    /// <summary>Whether nothing can be sent just now.</summary>
    public bool AllClosed => server.ClosedUntil > time.GetUtcNow();

    /// <summary>Hosts to which nothing is begun just now.</summary>
    public IReadOnlyList<string> Closed()
    {
        var now = time.GetUtcNow();
        foreach (var idle in gates.Where(g => g.Value.IsIdle(now)).Select(g => g.Key).ToList()) gates.Remove(idle);
        return [.. gates.Where(g => IsClosed(g.Value, now)).Select(g => g.Key)];
    }

    /// <summary>A message to a host begins.</summary>
    public void Enter(string host)
    {
        if (!gates.TryGetValue(host, out var gate)) gates[host] = gate = new Gate();
        gate.UnderWay++;
        gate.Begun.Enqueue(time.GetUtcNow());
    }

    /// <summary>A message to a host has ended so.</summary>
    public void Leave(string host, Delivery how)
    {
        var gate = gates[host];
        gate.UnderWay--;
        if (how is Delivery.Deferred { Waits: Waits.Everything }) Pause(server);
        else server.Pauses = 0;
        if (how is Delivery.Deferred { Waits: Waits.Host } or Delivery.Unclear) Pause(gate);
        else if (how is Delivery.Sent) gate.Pauses = 0;
    }

    private bool IsClosed(Gate gate, DateTimeOffset now)
    {
        while (gate.Begun.TryPeek(out var begun) && (now - begun >= Minute || begun > now)) gate.Begun.Dequeue();

        // Who was just left alone is asked by one message first.
        var most = gate.Pauses > 0 ? 1 : settings.PerHost;
        return gate.ClosedUntil > now || gate.UnderWay >= most || (settings.PerMinute > 0 && gate.Begun.Count >= settings.PerMinute);
    }

    private void Pause(Gate gate)
    {
        var pause = settings.FirstPause * Math.Pow(2, Math.Min(gate.Pauses, 12));
        gate.ClosedUntil = time.GetUtcNow() + (pause < LongestPause ? pause : LongestPause);
        gate.Pauses++;
    }

    private sealed class Gate
    {
        public int UnderWay { get; set; }

        public int Pauses { get; set; }

        public DateTimeOffset ClosedUntil { get; set; } = DateTimeOffset.MinValue;

        public Queue<DateTimeOffset> Begun { get; } = new();

        // What it asked for counts for an hour; then it is a host like any other.
        public bool IsIdle(DateTimeOffset now) => UnderWay == 0 && (ClosedUntil == DateTimeOffset.MinValue || now - ClosedUntil > TimeSpan.FromHours(1)) && Begun.All(b => now - b >= Minute);
    }
}
