using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>The answers that people gave to questions; of several to one question the last counts.</summary>
/// <param name="facts">The facts that count of every boat that may have asked, in any order.</param>
/// <param name="order">The order of things.</param>
internal sealed class Settled(IEnumerable<IFact> facts, IComparer<Entry> order)
{
    private readonly List<ContradictionSettled> answers = [.. facts.OfType<ContradictionSettled>().OrderByDescending(a => a.Entry, order)];

    /// <summary>Entries whose reading looked wrong, and that somebody says was right.</summary>
    /// <param name="question">The kind of question that was answered: of one trial the RPM may be right and the hours wrong.</param>
    public IReadOnlySet<Guid> Believed(ContradictionKind question) => answers
        .Where(a => a.Contradiction == question)
        .DistinctBy(a => Key(a.Entries), StringComparer.Ordinal)
        .Where(a => a.Answer == SettlementAnswer.BothStand)
        .SelectMany(a => a.Entries).ToHashSet();

    /// <summary>Whether a question is still to be asked: nobody answered it for exactly these entries.</summary>
    public bool IsOpen(Contradiction question) => !answers.Exists(a => a.Contradiction == question.Kind && Key(a.Entries) == Key(question.Entries));

    private static string Key(IEnumerable<Guid> entries) => string.Join(' ', entries.Order());
}
