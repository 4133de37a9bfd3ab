namespace FleetWake.Store.Servers;

/// <summary>PostgreSQL is here but does not run; the message ends with the last lines it wrote.</summary>
public sealed class ServerStartException(string message, string log) : Exception($"{message}. Its last lines:\n{log}")
{
    internal bool PortTaken { get; } = log.Contains("Address already in use", StringComparison.Ordinal);
}
