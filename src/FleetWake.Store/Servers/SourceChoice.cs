namespace FleetWake.Store.Servers;

/// <summary>From where PostgreSQL may come: anywhere, or only from the one that FLEETWAKE_PG_SOURCE names.</summary>
internal sealed record SourceChoice(string? Only)
{
    public const string Installed = "installed";
    public const string Npm = "npm";
    public const string Docker = "docker";

    public static SourceChoice Of(Machine machine) => machine.Variable("FLEETWAKE_PG_SOURCE") switch
    {
        null => new SourceChoice(Only: null),
        Installed or Npm or Docker => new SourceChoice(machine.Variable("FLEETWAKE_PG_SOURCE")),
        { } other => throw new ServerNotFoundException($"FLEETWAKE_PG_SOURCE is {other}; it can be {Installed}, {Npm} or {Docker}."),
    };

    public bool Allows(string source) => Only is null || Only == source;

    /// <summary>
    /// A source that gives nothing is told in passing while others are left. Whoever named it wants that one, so then
    /// it is an error: no other is taken in its place.
    /// </summary>
    public void PassOver(string source, string whyNot, Action<string> say)
    {
        if (Only == source)
            throw new ServerNotFoundException($"FLEETWAKE_PG_SOURCE asks for PostgreSQL from {source}, but {whyNot}.");
        say($"PostgreSQL from {source}: {whyNot}.");
    }
}
