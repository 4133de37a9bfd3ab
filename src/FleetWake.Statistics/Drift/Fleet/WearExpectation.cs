namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// What the trade expects of wear before a fleet has shown anything: the logarithm of the mean drift is that of aluminium in
/// fresh water, plus an effect of the material, plus one of the water, plus what is particular to the pair, plus what is
/// particular to the boat.
/// </summary>
/// <remarks>
/// No wear rates of small propellers are published. The ratio of aluminium to stainless is an engineer's judgement (0.5 %
/// against 0.2 % per 100 h), taken at four fifths of its logarithm; that silt grinds more than clear water is common practice
/// without a source. All are wide enough for twenty mountings to overrule. Shapes, spreads and the belief about sound props
/// were chosen on invented fleets of five kinds (log-normal, uniform and gamma wear, with and without effects of water). Immutable.
/// </remarks>
public sealed record WearExpectation
{
    /// <summary>The expectation described.</summary>
    public static WearExpectation Trade { get; } = new()
    {
        Materials = new Dictionary<string, LogEffect>(StringComparer.OrdinalIgnoreCase)
        {
            ["aluminium"] = new(0, 0.01),
            ["stainless"] = new(-0.7, 0.5),
            ["composite"] = new(0, 0.5),
            ["plastic"] = new(0, 0.5),
        },
        Waters = new Dictionary<string, LogEffect>(StringComparer.OrdinalIgnoreCase)
        {
            ["fresh"] = new(0, 0.01),
            ["coastal"] = new(0.2, 0.5),
            ["salt"] = new(0.2, 0.5),
            ["brackish"] = new(0.2, 0.5),
            ["silty"] = new(0.6, 0.6),
        },
    };

    /// <summary>Mean drift of the reference, aluminium in fresh water: median 10 rpm per 100 h.</summary>
    public LogEffect Reference { get; init; } = new(Math.Log(10), 0.8);

    /// <summary>Effects of materials.</summary>
    public IReadOnlyDictionary<string, LogEffect> Materials { get; init; } = new Dictionary<string, LogEffect>();

    /// <summary>Effects of waters.</summary>
    public IReadOnlyDictionary<string, LogEffect> Waters { get; init; } = new Dictionary<string, LogEffect>();

    /// <summary>The effect of a material or a water that nobody has said anything of.</summary>
    public LogEffect Unknown { get; init; } = new(0.2, 0.7);

    /// <summary>Standard deviation of what is particular to a pair of material and water [1].</summary>
    public double PairSd { get; init; } = 0.25;

    /// <summary>Standard deviations held possible of what is particular to a boat [1].</summary>
    public IReadOnlyList<double> BoatSds { get; init; } = [0.05, 0.15, 0.3, 0.45];

    /// <summary>Shapes held possible of the gamma distribution of the mountings of one boat and group [1].</summary>
    public IReadOnlyList<double> Shapes { get; init; } = [1.5, 2, 3, 4.5];

    /// <summary>The belief about the share of props that do not wear: Beta(a, b).</summary>
    public (double A, double B) Sound { get; init; } = (2, 13);

    /// <summary>
    /// The share of mountings held possible to fall instead, by growth on the hull or roughness of the blades [1], 0 to 0.5:
    /// judgement, no source. It is given to every prior of a fleet and not fitted.
    /// </summary>
    public double FallingShare { get; init; } = 0.005;

    /// <summary>Shape of the gamma distribution of their fall [1]: judgement.</summary>
    public double FallingShape { get; init; } = 2;

    /// <summary>Its mean [rpm per 100 h]: judgement.</summary>
    public double FallingMean { get; init; } = 8;

    /// <summary>The drifts of those that fall.</summary>
    internal SlopePrior Falling()
    {
        Span<double> rising = stackalloc double[SlopeGrid.Count];
        Span<double> falling = stackalloc double[SlopeGrid.Count];
        SlopePrior.Wearing(rising, FallingShape, FallingMean);
        falling.Clear();
        for (var k = 0; k <= SlopeGrid.Zero; k++) falling[SlopeGrid.Zero - k] = rising[SlopeGrid.Zero + k];
        return SlopePrior.Of(falling);
    }
}

/// <summary>A belief about an effect on the logarithm of the mean drift.</summary>
/// <param name="Mean">Its mean [1].</param>
/// <param name="Sd">Its standard deviation [1], above 0.</param>
public readonly record struct LogEffect(double Mean, double Sd);
