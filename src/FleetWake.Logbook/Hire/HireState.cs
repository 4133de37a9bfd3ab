using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Hire;

/// <summary>Whether a boat may go out on hire, and why not. A decision aid: "in hire" says that nothing on record keeps it, not that it is sound.</summary>
/// <param name="Word">The strictest of the reasons.</param>
/// <param name="Reasons">What keeps it, strictest first; empty when nothing does.</param>
public sealed record HireState(HireWord Word, IReadOnlyList<HireReason> Reasons);

/// <summary>One thing that keeps a boat from hire.</summary>
/// <param name="Word">What it means for hire.</param>
/// <param name="Position">The engine position, where it is about one.</param>
/// <param name="Sentence">What it is.</param>
/// <param name="ReleasedBy">What releases the boat.</param>
public sealed record HireReason(HireWord Word, Position? Position, string Sentence, string ReleasedBy);
