namespace FleetWake.Logbook.Entries;

/// <summary>
/// The name and version under which a fact is stored. It is explicit, so that renaming a class
/// never renames what years of records call it; the store refuses to start when one is missing.
/// </summary>
/// <param name="name">Stored name, past tense, lower snake case, e.g. <c>strike_reported</c>.</param>
/// <param name="version">Version of the fact's shape, from 1.</param>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
public sealed class StoredAsAttribute(string name, int version) : Attribute
{
    /// <summary>Stored name without the version.</summary>
    public string Name { get; } = name;

    /// <summary>Version of the fact's shape, from 1.</summary>
    public int Version { get; } = version;

    /// <summary>What stands in the event store: the bare name for version 1, else <c>name_v2</c> and so on.</summary>
    public string StoredName => Version == 1 ? Name : $"{Name}_v{Version}";
}
