using System.Collections.Immutable;

namespace FleetWake.Logbook.Entries;

/// <summary>
/// The fold of one stream: its facts in the order of things, each entry once. Whatever order facts
/// arrive in, and however often, the log comes out the same.
/// </summary>
/// <param name="Id">The stream.</param>
/// <param name="Facts">The facts, ordered by <see cref="EntryOrder"/>.</param>
public sealed record FactLog(string Id, ImmutableList<IFact> Facts)
{
    private static readonly IComparer<IFact> Order = Comparer<IFact>.Create((x, y) => EntryOrder.Instance.Compare(x.Entry, y.Entry));

    /// <summary>The log of a stream that holds nothing.</summary>
    public static FactLog Empty(string stream) => new(stream, []);

    /// <summary>The log with one more fact; the same log when the entry is in it already.</summary>
    public FactLog Evolve(IFact fact)
    {
        var at = Facts.BinarySearch(fact, Order);
        return at >= 0 ? this : this with { Facts = Facts.Insert(~at, fact) };
    }

    /// <summary>The thing's registration, amendments counted and retractions taken off; null while it is not known.</summary>
    public IRegistration? Registration() => Effective.Of(Facts).Facts.OfType<IRegistration>().FirstOrDefault();
}
