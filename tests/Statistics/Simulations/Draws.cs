using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>Draws from a fixed beginning, so that a simulation gives the same count on every machine.</summary>
internal sealed class Draws(int beginning)
{
    private readonly Random _source = new(beginning);

    internal double Normal() => MathNet.Numerics.Distributions.Normal.Sample(_source, 0, 1);

    internal double Uniform(double low, double high) => ContinuousUniform.Sample(_source, low, high);

    internal double Weibull(double shape, double scale) =>
        MathNet.Numerics.Distributions.Weibull.Sample(_source, shape, scale);

    internal double Gamma(double shape, double mean) =>
        MathNet.Numerics.Distributions.Gamma.Sample(_source, shape, shape / mean);

    internal int Poisson(double mean) => mean > 0 ? MathNet.Numerics.Distributions.Poisson.Sample(_source, mean) : 0;
}
