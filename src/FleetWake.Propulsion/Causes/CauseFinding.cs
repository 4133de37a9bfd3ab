namespace FleetWake.Propulsion.Causes;

/// <summary>One explanation of a change.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Where">The prop or the boat that has it; null for <see cref="Cause.None"/> and <see cref="Cause.Several"/>.</param>
/// <param name="Probability">Its probability [1] among all.</param>
/// <param name="Size">Its size if it is the one, in the terms of <see cref="CauseResponse.Of"/> [1].</param>
public sealed record Suspect(Cause Cause, string? Where, double Probability, Uncertain Size);

/// <summary>What a case points to.</summary>
public sealed record CauseFinding
{
    /// <summary>Odds that a cause must have over every other explanation before it is named.</summary>
    public const double NamingOdds = 10;

    /// <summary>All explanations, the likeliest first.</summary>
    public required IReadOnlyList<Suspect> Suspects { get; init; }

    /// <summary>The likelier group of the two; <see cref="CauseGroup.None"/> when nothing was read.</summary>
    public required CauseGroup Group { get; init; }

    /// <summary>Probability that the engine turns faster for one cause [1].</summary>
    public required double RpmUpProbability { get; init; }

    /// <summary>Probability that it turns slower for one cause [1].</summary>
    public required double RpmDownProbability { get; init; }

    /// <summary>
    /// The single cause, when it has <see cref="NamingOdds"/> over every other cause and over none, and is likelier than several at
    /// once; else null.
    /// </summary>
    public required Suspect? Named { get; init; }

    /// <summary>
    /// The explanations that the readings cannot tell apart: those within <see cref="NamingOdds"/> of the likeliest; one when one
    /// stands alone. <see cref="Cause.Several"/> only when it is the likeliest.
    /// </summary>
    public required IReadOnlyList<Suspect> Tied { get; init; }

    /// <summary>What would part them, the cheapest first.</summary>
    public required IReadOnlyList<SeparatingTest> Tests { get; init; }
}
