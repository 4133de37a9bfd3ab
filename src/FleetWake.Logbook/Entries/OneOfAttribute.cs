namespace FleetWake.Logbook.Entries;

/// <summary>Says which words a text field takes, for the API description. The check itself is <see cref="Check.OneOf{T}"/>.</summary>
/// <param name="words">The enumeration whose names, in lower snake case, are the words.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class OneOfAttribute(Type words) : Attribute
{
    /// <summary>The enumeration.</summary>
    public Type Words { get; } = words;
}
