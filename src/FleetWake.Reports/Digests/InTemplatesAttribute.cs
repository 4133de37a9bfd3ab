namespace FleetWake.Reports.Digests;

/// <summary>
/// Marks a record whose members templates may see: texts, numbers, yes and no, days, and other marked records or lists of
/// such. A member <c>OtherBoats</c> is called <c>other_boats</c>, or by the name given here. Nothing else of the program can be reached.
/// </summary>
/// <param name="name">Another name of the member; on a record it means nothing.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Property)]
public sealed class InTemplatesAttribute(string? name = null) : Attribute
{
    /// <summary>Another name; null when the usual one holds.</summary>
    public string? Name => name;
}
