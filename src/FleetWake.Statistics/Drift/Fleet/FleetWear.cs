namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>The priors that the draws of a fleet's wear come to.</summary>
internal sealed record FleetWear(SlopePrior[] Members, Dictionary<(string, string), SlopePrior> Groups, SlopePrior Unseen)
{
    public static FleetWear Of(
        FleetMember[] members, int[] boats, int boatCount, WearTable table, WearExpectation expectation, int learning, int rounds)
    {
        int[] Where(Func<int, bool> test) => [.. Enumerable.Range(0, members.Length).Where(test)];
        var effects = new List<WearSampler.Effect> { new(expectation.Reference, Where(_ => true), false) };
        var materials = Named(members.Select(m => m.Material), expectation.Materials, expectation.Unknown, name => Where(i => members[i].Material == name));
        var waters = Named(members.Select(m => m.Water), expectation.Waters, expectation.Unknown, name => Where(i => members[i].Water == name));
        effects.AddRange(materials.Select(m => m.Effect));
        effects.AddRange(waters.Select(w => w.Effect));
        var pairs = members.Select(m => (m.Material, m.Water)).Distinct().ToArray();
        var pairEffects = pairs.ToDictionary(p => p, p => new WearSampler.Effect(new(0, expectation.PairSd), Where(i => (members[i].Material, members[i].Water) == p), false));
        effects.AddRange(pairEffects.Values);
        // A boat with one mounting has an effect too: it widens what is held possible of that mounting.
        var ofBoat = Enumerable.Range(0, boatCount).Select(b => new WearSampler.Effect(new(0, 1), Where(i => boats[i] == b), true)).ToArray();
        effects.AddRange(ofBoat);

        var sampler = new WearSampler(table, expectation, [.. effects], members.Length);
        var sums = members.Select(_ => table.NewSum()).ToArray();
        // A pair that no boat has yet is told by its material and its water all the same.
        var groups = materials.SelectMany(m => waters.Select(w => (Pair: (m.Name, w.Name), Material: m.Effect, Water: w.Effect, Sum: table.NewSum()))).ToArray();
        var unseen = table.NewSum();
        for (var round = 0; round < learning + rounds; round++)
        {
            sampler.Round(round < learning);
            if (round < learning || round % 2 == 0) continue;
            // Without a mounting's own trials its prior is that of each draw divided by their likelihood in it.
            for (var m = 0; m < members.Length; m++)
                WearTable.Collect(sums[m], sampler.Shape, sampler.LogMean(m), sampler.Sound, 1 / (sampler.Likelihood(m) + 1e-200));
            foreach (var (pair, material, water, sum) in groups)
            {
                var ofPair = pairEffects.TryGetValue(pair, out var seen) ? seen.Value : Draw(expectation.PairSd);
                var group = effects[0].Value + material.Value + water.Value + ofPair + Draw(sampler.BoatSd);
                WearTable.Collect(sum, sampler.Shape, group, sampler.Sound, 1);
            }

            var any = effects[0].Value + expectation.Unknown.Mean + Draw(expectation.Unknown.Sd) + Draw(expectation.Unknown.Sd) + Draw(sampler.BoatSd);
            WearTable.Collect(unseen, sampler.Shape, any, sampler.Sound, 1);
        }

        double Draw(double sd) => sd * sampler.Dice.Normal();
        return new([.. sums.Select(table.Prior)], groups.ToDictionary(g => g.Pair, g => table.Prior(g.Sum)), table.Prior(unseen));
    }

    /// <summary>Names in the order in which members have them, then those that the trade speaks of besides: no result hangs on how things are called.</summary>
    private static (string Name, WearSampler.Effect Effect)[] Named(
        IEnumerable<string> names, IReadOnlyDictionary<string, LogEffect> known, LogEffect unknown, Func<string, int[]> members) =>
        [.. names.Concat(known.Keys).Distinct(StringComparer.Ordinal).Select(n => (n, new WearSampler.Effect(known.GetValueOrDefault(n, unknown), members(n), false)))];
}
