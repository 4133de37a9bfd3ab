namespace FleetWake.Store.Servers;

/// <param name="DataFolder">Kept when the server stops, and taken up again at the next start; null for a temporary one.</param>
/// <param name="Durable">False only in tests: a committed record may then be lost with the machine's power.</param>
public sealed record LocalServerOptions(string? DataFolder, bool Durable)
{
    /// <summary>Room for several whole programs at once, as the tests run them: each has a pool for its work, one for its ticks and one for its beats.</summary>
    internal const int Connections = 600;

    internal static readonly string[] Safeguards = ["fsync", "synchronous_commit", "full_page_writes"];
}
