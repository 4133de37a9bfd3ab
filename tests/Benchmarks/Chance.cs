namespace FleetWake.Benchmarks;

/// <summary>Draws from a fixed beginning: the same cases on every machine.</summary>
internal sealed class Chance(int beginning)
{
#pragma warning disable CA5394 // repeatable cases are wanted here, not secrets
    private readonly Random _source = new(beginning);

    internal double Uniform(double low, double high) => low + ((high - low) * _source.NextDouble());

    internal int Whole(int low, int high) => _source.Next(low, high + 1);
#pragma warning restore CA5394

    internal bool Happens(double chance) => Uniform(0, 1) < chance;

    /// <summary>Standard normal (Box and Muller 1958).</summary>
    internal double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform(0, 1))) * Math.Cos(2 * Math.PI * Uniform(0, 1));

    internal double Weibull(double shape, double scale) => scale * Math.Pow(-Math.Log(1 - Uniform(0, 1)), 1 / shape);
}
