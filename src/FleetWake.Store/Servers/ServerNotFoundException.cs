namespace FleetWake.Store.Servers;

/// <summary>There is no PostgreSQL to use. The message is one line for a person: it names the command that helps.</summary>
public sealed class ServerNotFoundException(string message) : Exception(message);
