namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>The priors that the draws of a fleet's wear come to.</summary>
internal sealed record FleetWear(SlopePrior[] Members, Dictionary<(string, string), SlopePrior> Groups, SlopePrior Unseen)
{
    public static FleetWear Of(
        FleetMember[] members, int[] boats, int boatCount, WearTable table, WearExpectation expectation, int learning, int rounds)
    {
        int[] Where(Func<int, bool> test) => [.. Enumerable.Range(0, members.Length).Where(test)];
        var effects = new List<WearSampler.Effect> { new(expectation.Reference, Where(_ => true), false) };
        var materials = Named(members.Select(m => m.Material), expectation.Materials, expectation.Unknown);
        var waters = Named(members.Select(m => m.Water), expectation.Waters, expectation.Unknown);
        var pairs = members.Select(m => (m.Material, m.Water)).Distinct().ToArray();
        effects.AddRange(materials.Select(x => new WearSampler.Effect(x.Value, Where(i => members[i].Material == x.Key), false)));
        effects.AddRange(waters.Select(x => new WearSampler.Effect(x.Value, Where(i => members[i].Water == x.Key), false)));
        var pairEffects = pairs.ToDictionary(p => p, p => new WearSampler.Effect(new(0, expectation.PairSd), Where(i => (members[i].Material, members[i].Water) == p), false));
        effects.AddRange(pairEffects.Values);
        // A boat with one mounting has an effect too: it widens what is held possible of that mounting.
        var ofBoat = Enumerable.Range(0, boatCount).Select(b => new WearSampler.Effect(new(0, 1), Where(i => boats[i] == b), true)).ToArray();
        effects.AddRange(ofBoat);

        var sampler = new WearSampler(table, expectation, [.. effects], members.Length);
        var sums = members.Select(_ => table.NewSum()).ToArray();
        var groups = pairs.ToDictionary(p => p, _ => table.NewSum());
        var unseen = table.NewSum();
        for (var round = 0; round < learning + rounds; round++)
        {
            sampler.Round(round < learning);
            if (round < learning || round % 2 == 0) continue;
            // Without a mounting's own trials its prior is that of each draw divided by their likelihood in it.
            for (var m = 0; m < members.Length; m++)
                WearTable.Collect(sums[m], sampler.Shape, sampler.LogMean(m), sampler.Sound, 1 / (sampler.Likelihood(m) + 1e-200));
            foreach (var (pair, sum) in groups)
            {
                var one = pairEffects[pair].Members[0];
                var group = sampler.LogMean(one) - (boats[one] < 0 ? 0 : ofBoat[boats[one]].Value);
                WearTable.Collect(sum, sampler.Shape, group + (sampler.BoatSd * sampler.Dice.Normal()), sampler.Sound, 1);
            }

            var any = effects[0].Value + expectation.Unknown.Mean + Draw(expectation.Unknown.Sd) + Draw(expectation.Unknown.Sd) + Draw(sampler.BoatSd);
            WearTable.Collect(unseen, sampler.Shape, any, sampler.Sound, 1);
        }

        double Draw(double sd) => sd * sampler.Dice.Normal();
        return new([.. sums.Select(table.Prior)], groups.ToDictionary(g => g.Key, g => table.Prior(g.Value)), table.Prior(unseen));
    }

    private static Dictionary<string, LogEffect> Named(IEnumerable<string> names, IReadOnlyDictionary<string, LogEffect> known, LogEffect unknown) =>
        names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToDictionary(n => n, n => known.GetValueOrDefault(n, unknown), StringComparer.Ordinal);
}
