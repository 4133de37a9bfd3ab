namespace FleetWake.Propulsion.Advice;

/// <summary>A prop of a plan and what it is for.</summary>
/// <param name="Pitch">Its pitch.</param>
/// <param name="Uses">The uses that it is the surest prop of the plan for, each with its chance of landing in the band.</param>
public sealed record PlannedProp(Length Pitch, IReadOnlyList<PitchLanding> Uses)
{
    /// <summary>The other uses that it must come off before: left on, it may exceed the band's top there.</summary>
    public required IReadOnlyList<string> ComesOffBefore { get; init; }
}

/// <summary>Which props a boat needs so that every use lies in its band.</summary>
/// <param name="Props">The fewest that do, lowest pitch first.</param>
/// <param name="NotKept">Uses that no pitch to be had keeps in the band surely enough.</param>
public sealed record PropPlan(IReadOnlyList<PlannedProp> Props, IReadOnlyList<string> NotKept)
{
    /// <summary>Chance of landing in the band that counts as keeping a use in it [1]; judgement.</summary>
    public const double SureEnough = 0.9;

    /// <summary>
    /// The plan. A pitch keeps a use when it lands in the band with <see cref="SureEnough"/> and stays within the band's top there by the
    /// rule of <see cref="PitchAdvice"/>. Every set is looked at, the small ones first, so that none smaller exists; of sets of one size
    /// the one that over-revs least, to the per cent, when the wrong prop of it is left on, and of those alike in this the one whose
    /// least sure use is surest.
    /// </summary>
    /// <param name="question">The question; its loads are the uses.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of the question is outside its range; names it.</exception>
    public static PropPlan Of(PitchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        var pitches = PitchAdvice.Pitches(question).ToList();
        var landings = pitches.ConvertAll(pitch => question.Loads.Select(use => PitchAdvice.Landing(question, pitch, use)).ToList());
        var top = question.BandHigh.RevolutionsPerMinute;
        var keeps = landings.ConvertAll(row => row.ConvertAll(l => l.InBand >= SureEnough && l.HighestRpm <= top));
        var wanted = Enumerable.Range(0, question.Loads.Count).Where(use => keeps.Exists(row => row[use])).ToList();
        var set = Enumerable.Range(0, pitches.Count + 1).Select(size => Best(size, pitches.Count, wanted, keeps, landings)).First(found => found is not null)!;
        var props = set.Select(p =>
        {
            var own = wanted.Where(use => Surest(set, use, keeps, landings) == p).Select(use => landings[p][use]).ToList();
            return new PlannedProp(pitches[p], own) { ComesOffBefore = [.. landings[p].Except(own).Where(l => l.HighestRpm > top).Select(l => l.Use)] };
        }).ToList();
        return new PropPlan(props, [.. question.Loads.Where((_, use) => !wanted.Contains(use)).Select(use => use.Name)]);
    }

    /// <summary>The best set of one size that keeps all uses; null when none does.</summary>
    private static List<int>? Best(int size, int count, List<int> wanted, List<List<bool>> keeps, List<List<PitchLanding>> landings)
    {
        List<int>? best = null;
        var bestScore = (Over: double.PositiveInfinity, Unsure: double.PositiveInfinity);
        foreach (var set in Sets(size, 0, count))
        {
            if (!wanted.TrueForAll(use => set.Exists(p => keeps[p][use])))
                continue;
            var right = wanted.ToDictionary(use => use, use => Surest(set, use, keeps, landings));
            var wrong = set.SelectMany(p => landings[p].Where((_, use) => !right.TryGetValue(use, out var at) || at != p));
            var score = (
                Over: Math.Round(wrong.Select(l => l.AboveTop).DefaultIfEmpty(0).Max(), 2),
                Unsure: 1 - right.Select(pair => landings[pair.Value][pair.Key].InBand).DefaultIfEmpty(0).Min());
            if (score.CompareTo(bestScore) < 0) (best, bestScore) = (set, score);
        }

        return best;
    }

    private static int Surest(List<int> set, int use, List<List<bool>> keeps, List<List<PitchLanding>> landings) =>
        set.Where(p => keeps[p][use]).MaxBy(p => landings[p][use].InBand);

    private static IEnumerable<List<int>> Sets(int size, int from, int count)
    {
        if (size == 0) yield return [];
        for (var first = from; size > 0 && first < count; first++)
            foreach (var rest in Sets(size - 1, first + 1, count))
                yield return [first, .. rest];
    }
}
