using MathNet.Numerics;

namespace FleetWake.Statistics.Use;

/// <summary>
/// What is believed of one boat's use: a gamma distribution of its rate, the fleet's season, and lumps. Immutable.
/// </summary>
/// <remarks>
/// The season days (days that count as much as their month's share) that a boat of rate r needs for h hours are gamma
/// distributed with shape h/L + 1/2 and mean (h + L/2)/r, L being the lump. That is the Poisson law of lumps read the other way, with its
/// continuity correction: at whole lumps and a half it gives the negative binomial of gamma-Poisson counts exactly,
/// between them it runs on, and the gamma belief stays a gamma belief.
/// </remarks>
public sealed record UsePosterior
{
    private const double Level = 0.8;
    private const double YearDoubt = 0.1; // of a boat's next year by its last ones, sd over mean: judgement, no source
    private const double DaysInFebruary = 28.2425; // over four hundred years

    private readonly SeasonOfUse _season;
    private readonly double _shape;
    private readonly double _seasonDays; // the belief's rate times the lump

    private UsePosterior(SeasonOfUse season, double lumps, double ownDays)
    {
        _season = season;
        var before = season.Shape * season.OutingHours / season.MeanHoursPerDay;
        _shape = season.Shape + lumps;
        _seasonDays = before + ownDays;
        OwnShare = ownDays / _seasonDays;
    }

    /// <summary>
    /// How much of the rate is the boat's own record, the rest being the season's belief [1]: 0 without a stretch, near 1 after
    /// long.
    /// </summary>
    public double OwnShare { get; }

    /// <summary>Hours a day over the whole year [h/d], with 80 % limits.</summary>
    public Estimate HoursPerDay => Times(1);

    /// <summary>The fleet's belief after a boat's own stretches.</summary>
    /// <param name="season">The fleet's, or <see cref="SeasonOfUse.Trade"/>.</param>
    /// <param name="own">
    /// The boat's stretches, in any order, all counting alike: leave out what no longer tells of it (common practice, no source:
    /// more than three years old). Those that cannot be are left aside.
    /// </param>
    /// <exception cref="ArgumentException">The season has not twelve shares, or a figure that no fit gives.</exception>
    public static UsePosterior Of(SeasonOfUse season, IReadOnlyList<UseStretch> own)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(own);
        season.Check(nameof(season));
        double hours = 0, days = 0;
        foreach (var stretch in own)
        {
            if (!stretch.CanBe)
                continue;
            hours += stretch.EngineHours;
            days += SeasonDays.Between(season.MonthShares, stretch.From, stretch.To);
        }

        // Of relative variance v, n lumps are worth n / (1 + n v): a record tells other days than those to come.
        var lumps = hours / season.OutingHours;
        var worth = 1 / (1 + (lumps * ((YearDoubt * YearDoubt) + (season.SeasonDoubt * season.SeasonDoubt))));
        return new UsePosterior(season, lumps * worth, days * worth);
    }

    /// <summary>Hours to be expected in a month [h], with 80 % limits of the expectation: a single month scatters more.</summary>
    /// <param name="month">1 to 12.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a month.</exception>
    public Estimate HoursPerMonth(int month)
    {
        if (month is < 1 or > 12)
            throw new ArgumentOutOfRangeException(nameof(month), month, "Must lie within 1 and 12.");
        return Times(_season.MonthShares[month - 1] * (month == 2 ? DaysInFebruary : DateTime.DaysInMonth(2001, month)));
    }

    /// <summary>Hours to be expected after one date up to another [h]; 0 when the second is not later.</summary>
    /// <param name="from">The first date, whose own hours are not in it.</param>
    /// <param name="to">The second date, whose hours are.</param>
    public double MeanHours(DateOnly from, DateOnly to) => MeanRate * SeasonDays.Between(_season.MonthShares, from, to);

    /// <summary>The chance that it runs so many hours or more after one date up to another [1].</summary>
    /// <param name="from">The first date, whose own hours are not in it.</param>
    /// <param name="to">The second date, whose hours are.</param>
    /// <param name="hours">The hours [h]; 1 for 0, fewer, or what is not a number.</param>
    public double ChanceRunAtLeast(DateOnly from, DateOnly to, double hours) =>
        ChanceRunAtLeast(SeasonDays.Between(_season.MonthShares, from, to), hours);

    internal IReadOnlyList<double> MonthShares => _season.MonthShares;

    internal double MeanRate => _shape * _season.OutingHours / _seasonDays;

    /// <summary>Standard deviation over mean of the season days that so many hours need, about.</summary>
    internal double RelativeDoubt(double hours) => Math.Sqrt((1 / _shape) + (1 / ((hours / _season.OutingHours) + 0.5)));

    /// <summary>The chance of having run so many hours, for many times.</summary>
    internal RunChance Run(double hours) => new((hours / _season.OutingHours) + 0.5, _shape);

    /// <summary>Logarithms of the x at which that is asked, and of 1 - x.</summary>
    internal (double LogX, double LogRest) Odds(double seasonDays) =>
        (-Math.Log(1 + (_seasonDays / seasonDays)), -Math.Log(1 + (seasonDays / _seasonDays)));

    internal double ChanceRunAtLeast(double seasonDays, double hours)
    {
        if (!(hours > 0))
            return 1;
        if (!(seasonDays > 0) || double.IsPositiveInfinity(hours))
            return 0;
        return SpecialFunctions.BetaRegularized(
            (hours / _season.OutingHours) + 0.5, _shape, seasonDays / (seasonDays + _seasonDays));
    }

    private Estimate Times(double seasonDays)
    {
        var scale = seasonDays * _season.OutingHours / _seasonDays;
        var mean = _shape * scale;
        var (low, high) = (GammaQuantile.Lower(_shape, 0.1) * scale, GammaQuantile.Upper(_shape, 0.1) * scale);
        return new Estimate(mean, Math.Sqrt(_shape) * scale, Math.Min(mean, low), Math.Max(mean, high), Level);
    }
}
