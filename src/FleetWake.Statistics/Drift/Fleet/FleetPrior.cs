namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// What a fleet has shown about itself: the noise of its trials, the share of gross errors, and how props wear by material,
/// water and boat; parameters integrated over their posterior, none plugged in.
/// </summary>
/// <remarks>Immutable. The same members in any order give the same result.</remarks>
public sealed class FleetPrior
{
    private const int Learning = 600;
    private const int Rounds = 2000;
    private const double SoundSd = 1.5;

    private readonly Dictionary<string, (SlopePrior Prior, NoiseNodes Noise)> _members;
    private readonly Dictionary<(string, string), SlopePrior> _groups;
    private readonly SlopePrior _unseen;
    private readonly DriftSettings _settings;

    private FleetPrior(
        Dictionary<string, (SlopePrior Prior, NoiseNodes Noise)> members, Dictionary<(string, string), SlopePrior> groups, SlopePrior unseen, DriftSettings settings) =>
        (_members, _groups, _unseen, _settings) = (members, groups, unseen, settings);

    /// <summary>What is taken for granted of a mounting on a boat that the fleet has not seen.</summary>
    public DriftSettings Settings => _settings;

    /// <summary>The pairs of material and water that the fleet has seen.</summary>
    public IReadOnlyCollection<(string Material, string Water)> Groups => _groups.Keys;

    /// <summary>Prior of a mounting of a group that the fleet has not seen.</summary>
    public SlopePrior Unseen => _unseen;

    /// <summary>Prior of a new boat's mounting by its group; one of a group that the fleet has not seen is the fleet's.</summary>
    public SlopePrior Group(string material, string water) => _groups.GetValueOrDefault((material, water), _unseen);

    /// <summary>Prior of a member from all others, and its settings with the noise of its boat's other mountings.</summary>
    public (SlopePrior Prior, DriftSettings Settings) Member(FleetMember member) =>
        _members.TryGetValue(member.Id, out var own) ? (own.Prior, _settings with { Noise = own.Noise }) : (Group(member.Material, member.Water), _settings);

    /// <summary>Fits a fleet.</summary>
    /// <param name="members">Its mountings, those without trials among them or not.</param>
    /// <param name="expectation">What the trade expects.</param>
    /// <param name="settings">Levels, steps and weather; noise and gross errors are fitted.</param>
    /// <exception cref="ArgumentException">Two members of one name.</exception>
    public static FleetPrior Fit(IReadOnlyList<FleetMember> members, WearExpectation expectation, DriftSettings settings)
    {
        ArgumentNullException.ThrowIfNull(expectation);
        ArgumentNullException.ThrowIfNull(settings);
        var sorted = members.OrderBy(m => m.Id, StringComparer.Ordinal).ToArray();
        for (var i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].Id == sorted[i - 1].Id) throw new ArgumentException($"\"{sorted[i].Id}\" is there twice.", nameof(members));
        }

        var open = settings with { Noise = NoiseNodes.Of(NoiseFit.Shares, [.. NoiseFit.Shares.Select(_ => 1.0)]) };
        var mixtures = sorted.Select(m => Mix(m, open)).ToArray();
        var boats = Index(sorted.Select(m => m.Boat), out var boatCount);
        var noise = NoiseFit.Of(mixtures, boats, boatCount);
        var likelihoods = mixtures.Select((m, i) => Likelihood(m, noise.Others[i], noise.GrossChance)).ToArray();
        var table = new WearTable(likelihoods, expectation.Shapes, SoundSd);
        var wear = FleetWear.Of(sorted, boats, boatCount, table, expectation, Learning, Rounds);
        var fitted = settings with { GrossChance = noise.GrossChance, Noise = NoiseFit.Nodes(noise.Unseen) };
        var own = sorted.Select((m, i) => (m.Id, (wear.Members[i], NoiseFit.Nodes(noise.Others[i]))));
        return new(own.ToDictionary(x => x.Id, x => x.Item2, StringComparer.Ordinal), wear.Groups, wear.Unseen, fitted);
    }

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
}
