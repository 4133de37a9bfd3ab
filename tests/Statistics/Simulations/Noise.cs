namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>Normal noise from a fixed beginning, so that a simulation gives the same count on every machine.</summary>
internal sealed class Noise(int beginning)
{
#pragma warning disable CA5394 // repeatable noise is wanted here, not secrets
    private readonly Random _uniform = new(beginning);

    /// <summary>One standard normal number (Box and Muller 1958).</summary>
    internal double Next() =>
        Math.Sqrt(-2 * Math.Log(1 - _uniform.NextDouble())) * Math.Cos(2 * Math.PI * _uniform.NextDouble());
#pragma warning restore CA5394
}
