using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Logs;

/// <summary>Means of the air's readings over a log: a trial is short against how the weather changes.</summary>
internal sealed class AirMeans
{
    private Mean _celsius, _hectopascals, _humidity;

    /// <summary>Takes a temperature; returns why not when it cannot be one of the air.</summary>
    internal string? Celsius(double value) => Plausible.Celsius(value) ?? _celsius.Take(value);

    internal string? Hectopascals(double value) => Plausible.Hectopascals(value) ?? _hectopascals.Take(value);

    internal string? HumidityFraction(double value) => Plausible.HumidityFraction(value) ?? _humidity.Take(value);

    internal AirState? State() => _celsius.Value is null && _hectopascals.Value is null && _humidity.Value is null
        ? null
        : new AirState(
            _celsius.Value is { } t ? Temperature.FromCelsius(t) : null,
            _hectopascals.Value is { } p ? Pressure.FromHectopascals(p) : null,
            _humidity.Value);

    private struct Mean
    {
        private double _sum;
        private int _count;

        internal readonly double? Value => _count == 0 ? null : _sum / _count;

        internal string? Take(double value)
        {
            _sum += value;
            _count++;
            return null;
        }
    }
}
