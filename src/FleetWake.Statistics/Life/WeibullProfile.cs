namespace FleetWake.Statistics.Life;

/// <summary>
/// The likelihood of groups with one shape, as a function of what is asked alone: everything else takes its likeliest
/// value. An interval holds what lies near enough to the top (Lawless 2003, 5.1.2, cited from memory), which keeps its
/// level with few ends far better than a multiple of the standard error.
/// </summary>
internal sealed class WeibullProfile(WeibullGroup[] groups)
{
    /// <summary>Lowest shape looked at [1].</summary>
    internal const double LowestShape = 0.02;

    /// <summary>Highest shape looked at [1]: ends within about 2 % of each other.</summary>
    internal const double HighestShape = 200;

    private const double LogStep = 0.05; // of the shape, in the search for the top

    internal WeibullGroup Group(int group) => groups[group];

    internal double OfShape(double k) => groups.Sum(group => group.BestLogLikelihood(k));

    internal double Curvature(double k) => groups.Sum(group => group.Curvature(k));

    /// <summary>The likeliest shape; null when the top lies outside the shapes looked at.</summary>
    internal double? BestShape() => Top(OfShape) is { IsInside: true } top ? Polished(top.Shape) : null;

    /// <summary>
    /// The greatest log-likelihood if the share exp(-exp(w)) of a group outlives the age exp(logHours). Logarithms,
    /// since a limit may lie where the numbers themselves overflow: w = k (log t - log eta).
    /// </summary>
    internal double OfAlive(int group, double logHours, double w) => Top(k =>
    {
        var sum = groups[group].LogLikelihood(k, logHours - (w / k));
        for (var g = 0; g < groups.Length; g++)
            sum += g == group ? 0 : groups[g].BestLogLikelihood(k);
        return sum;
    }).LogLikelihood;

    /// <summary>Where a profile that rises to <paramref name="top"/> has fallen by <paramref name="fall"/>.</summary>
    /// <param name="profile">The profile, on a scale that has no end in either direction.</param>
    /// <param name="from">The top's place.</param>
    /// <param name="top">The profile there.</param>
    /// <param name="fall">How far below the top.</param>
    /// <param name="step">First step, with its direction.</param>
    /// <returns>The place; infinite when a dozen steps, each longer than the one before, do not get there.</returns>
    internal static double Fallen(Func<double, double> profile, double from, double top, double fall, double step)
    {
        var inside = from;
        for (var i = 0; i < 12; i++)
        {
            var outside = inside + step;
            if (!(profile(outside) > top - fall))
                return Halved(inside, outside);
            inside = outside;
            step *= 1.6;
        }

        return Math.Sign(step) * double.PositiveInfinity;

        double Halved(double inside, double outside)
        {
            for (var i = 0; i < 36; i++)
            {
                var middle = (inside + outside) / 2;
                if (profile(middle) > top - fall)
                    inside = middle;
                else
                    outside = middle;
            }

            return (inside + outside) / 2;
        }
    }

    // A walk first, since with late entries there may be more than one top; then the golden section.
    private static (double Shape, double LogLikelihood, bool IsInside) Top(Func<double, double> profile)
    {
        double low = Math.Log(LowestShape), high = Math.Log(HighestShape);
        var (best, value) = (low, double.NegativeInfinity);
        for (var x = low; x <= high; x += LogStep * 4)
        {
            var here = profile(Math.Exp(x));
            if (here > value)
                (best, value) = (x, here);
        }

        var (a, b) = (Math.Max(low, best - (LogStep * 4)), Math.Min(high, best + (LogStep * 4)));
        var golden = (Math.Sqrt(5) - 1) / 2;
        var (x1, x2) = (b - (golden * (b - a)), a + (golden * (b - a)));
        var (f1, f2) = (profile(Math.Exp(x1)), profile(Math.Exp(x2)));
        for (var i = 0; i < 28; i++)
        {
            if (f1 > f2)
            {
                (b, x2, f2) = (x2, x1, f1);
                x1 = b - (golden * (b - a));
                f1 = profile(Math.Exp(x1));
            }
            else
            {
                (a, x1, f1) = (x1, x2, f2);
                x2 = a + (golden * (b - a));
                f2 = profile(Math.Exp(x2));
            }
        }

        var top = (a + b) / 2;
        return (Math.Exp(top), profile(Math.Exp(top)), top > low + LogStep && top < high - LogStep);
    }

    // The section finds a flat top only to half the digits; the score has them all.
    private double Polished(double k)
    {
        for (var i = 0; i < 20; i++)
        {
            var step = groups.Sum(group => group.Score(k)) / Curvature(k);
            k += step;
            if (Math.Abs(step) < 1e-14 * k)
                break;
        }

        return k;
    }
}
