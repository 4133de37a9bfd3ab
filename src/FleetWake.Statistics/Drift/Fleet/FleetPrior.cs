namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// What a fleet has shown about itself: the noise of its trials, the share of gross errors, and how props wear by material,
/// water and boat; parameters integrated over their posterior, none plugged in.
/// </summary>
/// <remarks>
/// Immutable. The same members in any order give the same result, and so do the same series under other names: neither the order
/// nor the numbers hang on how mountings, boats, materials of one expectation or waters of one are called.
/// </remarks>
public sealed class FleetPrior
{
    private const int Learning = 600;
    private const int Rounds = 2000;
    private const double SoundSd = 1.5;

    private readonly Dictionary<string, Known> _members;
    private readonly Dictionary<(string Material, string Water), Shared> _groups;
    private readonly CountedPrior _unseen;
    private readonly NoiseFigures _noise;
    private readonly DriftSettings _settings;

    private FleetPrior(IEnumerable<Known> members, Dictionary<(string, string), Shared> groups, CountedPrior unseen, double grossChance, NoiseFigures noise, DriftSettings settings)
    {
        _members = members.ToDictionary(m => m.Id, StringComparer.Ordinal);
        (_groups, _unseen, _noise) = (groups, unseen, noise);
        _settings = settings with { GrossChance = grossChance, Noise = Nodes(noise) };
    }

    /// <summary>What is taken for granted of a mounting on a boat that the fleet has not seen.</summary>
    public DriftSettings Settings => _settings;

    /// <summary>The pairs of material and water that it can tell of, with the mountings that the fleet has shown of each; none for a pair that only the trade speaks of.</summary>
    public IReadOnlyDictionary<(string Material, string Water), int> Groups => _groups.ToDictionary(g => g.Key, g => g.Value.Mountings);

    /// <summary>Prior of a mounting of a group that the fleet has not seen.</summary>
    public SlopePrior Unseen => _unseen.Prior;

    /// <summary>Prior of a new boat's mounting by its group; one of a material or a water of which nobody has said anything is the fleet's.</summary>
    public SlopePrior Group(string material, string water) => (_groups.GetValueOrDefault((material, water))?.Prior ?? _unseen).Prior;

    /// <summary>Prior of a member from all others, and its settings with the noise of its boat's other mountings.</summary>
    public (SlopePrior Prior, DriftSettings Settings) Member(FleetMember member) =>
        _members.TryGetValue(member.Id, out var own) ? (own.Prior.Prior, _settings with { Noise = own.Nodes }) : (Group(member.Material, member.Water), _settings);

    /// <summary>Fits a fleet.</summary>
    /// <param name="members">Its mountings; those without a usable trial teach nothing and are as new boats' of their group.</param>
    /// <param name="expectation">What the trade expects.</param>
    /// <param name="settings">Levels, steps and weather; noise and gross errors are fitted.</param>
    /// <exception cref="ArgumentException">Two members of one name.</exception>
    public static FleetPrior Fit(IReadOnlyList<FleetMember> members, WearExpectation expectation, DriftSettings settings)
    {
        ArgumentNullException.ThrowIfNull(expectation);
        ArgumentNullException.ThrowIfNull(settings);
        if (members.GroupBy(m => m.Id, StringComparer.Ordinal).FirstOrDefault(m => m.Skip(1).Any()) is { } twice)
            throw new ArgumentException($"\"{twice.Key}\" is there twice.", nameof(members));
        var sorted = members.Select(m => (Member: m, Rpm: SoundSeries.Of(m.Series).Trials.Select(t => t.Rpm).ToArray())).Where(m => m.Rpm.Length > 0)
            .OrderBy(m => m.Rpm, ByContent).ThenBy(m => m.Member.Id, StringComparer.Ordinal).Select(m => m.Member).ToArray();
        var open = settings with { Noise = NoiseNodes.Of(NoiseFit.Shares, [.. NoiseFit.Shares.Select(_ => 1.0)]) };
        var mixtures = sorted.Select(m => Mix(m, open)).ToArray();
        var boats = Index(sorted.Select(m => m.Boat), out var boatCount);
        var noise = NoiseFit.Of(mixtures, boats, boatCount);
        var likelihoods = mixtures.Select((m, i) => Likelihood(m, noise.Others[i], noise.GrossChance)).ToArray();
        var table = new WearTable(likelihoods, expectation.Shapes, SoundSd);
        var wear = FleetWear.Of(sorted, boats, boatCount, table, expectation, Learning, Rounds);
        var falling = expectation.Falling();
        CountedPrior Counted(SlopePrior rising) => CountedPrior.Of(rising, falling, expectation.FallingShare);
        return new(
            sorted.Select((m, i) => new Known(m.Id, Counted(wear.Members[i]), NoiseFit.LogNormal(noise.Others[i]))),
            wear.Groups.ToDictionary(g => g.Key, g => new Shared(Counted(g.Value), sorted.Count(m => (m.Material, m.Water) == g.Key))), Counted(wear.Unseen), noise.GrossChance, NoiseFit.LogNormal(noise.Unseen), settings);
    }

    /// <summary>A fitted prior as numbers to keep.</summary>
    /// <param name="members">Only these mountings are kept, the others are then as new boats' of their group; null keeps all.</param>
    public FleetPriorFigures Figures(IReadOnlySet<string>? members = null) => new(
        _settings.GrossChance,
        _noise,
        [.. _groups.OrderBy(g => g.Key.Material, StringComparer.Ordinal).ThenBy(g => g.Key.Water, StringComparer.Ordinal)
            .Select(g => new GroupFigures(g.Key.Material, g.Key.Water, g.Value.Mountings, g.Value.Prior.Counts))],
        _unseen.Counts,
        [.. _members.Values.Where(m => members?.Contains(m.Id) != false).OrderBy(m => m.Id, StringComparer.Ordinal)
            .Select(m => new MemberFigures(m.Id, m.Prior.Counts, m.Noise.MedianShare, m.Noise.LogSd))]);

    /// <summary>The prior that figures were taken of: it gives the same results to the last bit.</summary>
    /// <param name="figures">As <see cref="Figures"/> gives.</param>
    /// <param name="settings">The settings that it was fitted with; null for the recommended ones.</param>
    /// <exception cref="ArgumentException">Something is missing, named twice or outside its range.</exception>
    public static FleetPrior Of(FleetPriorFigures figures, DriftSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (figures is not { Noise: not null, Groups: not null, Unseen: not null, Members: not null }
            || figures.Groups.Any(g => g is not { Material: not null, Water: not null, Counts: not null })
            || figures.Members.Any(m => m is not { Id: not null, Counts: not null }))
            throw new ArgumentException("Noise, groups, unseen and members must be there, each with its names and counts.", nameof(figures));
        if (!(figures.GrossChance > 0 && figures.GrossChance <= 0.5)) throw new ArgumentException($"A chance of a gross error of {figures.GrossChance} does not lie above 0, at most 0.5.", nameof(figures));
        var groups = new Dictionary<(string, string), Shared>();
        foreach (var g in figures.Groups)
        {
            if (!groups.TryAdd((g.Material, g.Water), new(CountedPrior.Of(g.Counts, $"{g.Material} in {g.Water}"), g.Mountings)))
                throw new ArgumentException($"{g.Material} in {g.Water} is there twice.", nameof(figures));
        }

        if (figures.Members.GroupBy(m => m.Id, StringComparer.Ordinal).FirstOrDefault(m => m.Skip(1).Any()) is { } twice)
            throw new ArgumentException($"\"{twice.Key}\" is there twice.", nameof(figures));
        var members = figures.Members.Select(m => new Known(m.Id, CountedPrior.Of(m.Counts, m.Id), new(m.NoiseMedianShare, m.NoiseLogSd)));
        return new(members, groups, CountedPrior.Of(figures.Unseen, "unseen"), figures.GrossChance, figures.Noise, settings ?? DriftSettings.Recommended);
    }

    private static Comparer<double[]> ByContent { get; } = Comparer<double[]>.Create((x, y) => x.AsSpan().SequenceCompareTo(y));

    private static NoiseNodes Nodes(NoiseFigures noise) => NoiseNodes.LogNormal(noise.MedianShare, noise.LogSd);

    private static Mixture? Mix(FleetMember member, DriftSettings settings)
    {
        var sound = SoundSeries.Of(member.Series);
        return sound.Trials.Length == 0 ? null : Mixture.Of(Design.Of(sound, settings, sound.Trials.Length), settings);
    }

    private static double[] Likelihood(Mixture? mixture, double[] nodes, double gross)
    {
        var likelihood = new double[SlopeGrid.Count];
        if (mixture is null) Array.Fill(likelihood, 1);
        else SlopeLikelihood.Sum(mixture.Components, mixture.LogWeights(nodes, gross), likelihood);
        return likelihood;
    }

    private static int[] Index(IEnumerable<string?> names, out int count)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var index = names.Select(n => n is null ? -1 : known.TryGetValue(n, out var i) ? i : known[n] = known.Count).ToArray();
        count = known.Count;
        return index;
    }

    /// <summary>What is expected of a new boat's mounting of a group, and how many of it the fleet has shown.</summary>
    private sealed record Shared(CountedPrior Prior, int Mountings);

    /// <summary>What the fleet says of one of its mountings.</summary>
    private sealed record Known(string Id, CountedPrior Prior, NoiseFigures Noise)
    {
        public NoiseNodes Nodes { get; } = FleetPrior.Nodes(Noise);
    }
}
