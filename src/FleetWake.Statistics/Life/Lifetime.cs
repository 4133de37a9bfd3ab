namespace FleetWake.Statistics.Life;

/// <summary>
/// How long one thing lasted, or has lasted so far. Hours are engine hours here, but any one unit serves as long as all
/// lifetimes have the same.
/// </summary>
/// <param name="Hours">Its age when it ended or was last seen [h], above <see cref="FromHours"/>, at most
/// 1e12.</param>
/// <param name="HasEnded">
/// Whether it ended then. False says "still going when last seen": sold, lost sight of, in use today. The reason to stop
/// looking must have nothing to do with how worn it was; a prop taken off because it was nearly done has ended.
/// </param>
/// <remarks>
/// What counts as the end is the caller's question. To ask for wear alone, a prop that a rock took is one that was still
/// going; to ask when a new one is needed, it has ended.
/// </remarks>
public readonly record struct Lifetime(double Hours, bool HasEnded)
{
    /// <summary>
    /// Its age when it was first followed [h], zero or more, below <see cref="Hours"/>; 0 for one followed from new. A
    /// prop that had 200 hours when the record began could not have been seen to end before, and others like it that
    /// did are missing, so it counts as at risk from 200 h only (delayed entry, left truncation).
    /// </summary>
    public double FromHours { get; init; }

    private const double Longest = 1e12;

    internal static void Check(Lifetime life, string name)
    {
        if (!(life.FromHours >= 0) || !double.IsFinite(life.FromHours))
            throw new ArgumentOutOfRangeException(name, life.FromHours, "FromHours must be zero or more and finite.");
        if (!(life.Hours > life.FromHours && life.Hours <= Longest))
            throw new ArgumentOutOfRangeException(name, life.Hours, $"Hours must be above {life.FromHours} and at most {Longest}.");
    }
}
