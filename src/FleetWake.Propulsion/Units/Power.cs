using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>A power, held in watts. Valid from zero up: an engine gives it, a prop takes it. <c>default</c> is zero.</summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the W.</remarks>
public readonly record struct Power
{
    private readonly double _watts;

    private Power(double watts) => _watts = watts;

    /// <summary>The value [W].</summary>
    public double Watts => _watts;

    /// <summary>The value [kW]; exact (SI prefix).</summary>
    public double Kilowatts => _watts / ExactUnits.WattsPerKilowatt;

    /// <summary>The value [hp]; 550 ft.lbf/s, exact by definition.</summary>
    public double Horsepower => _watts / ExactUnits.WattsPerHorsepower;

    /// <summary>The value [metric hp]; 75 kgf.m/s, exact by definition.</summary>
    public double MetricHorsepower => _watts / ExactUnits.WattsPerMetricHorsepower;

    /// <summary>Takes a value in W.</summary>
    /// <param name="watts">The value [W], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Power FromWatts(double watts) => new(Reject.NotFiniteOrNegative(watts, watts));

    /// <summary>Takes a value in kW.</summary>
    /// <param name="kilowatts">The value [kW], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Power FromKilowatts(double kilowatts) =>
        new(Reject.NotFiniteOrNegative(kilowatts, kilowatts * ExactUnits.WattsPerKilowatt));

    /// <summary>Takes a value in hp.</summary>
    /// <param name="horsepower">The value [hp], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Power FromHorsepower(double horsepower) =>
        new(Reject.NotFiniteOrNegative(horsepower, horsepower * ExactUnits.WattsPerHorsepower));

    /// <summary>Takes a value in metric hp.</summary>
    /// <param name="metricHorsepower">The value [metric hp], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Power FromMetricHorsepower(double metricHorsepower) =>
        new(Reject.NotFiniteOrNegative(metricHorsepower, metricHorsepower * ExactUnits.WattsPerMetricHorsepower));

    /// <summary>The value in kW to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kilowatts:0.###} kW");
}
