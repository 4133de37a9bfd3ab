using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>What the air did to RPM and speed: factors CF^g and CF^(kappa g), and what they leave open.</summary>
/// <param name="Correction">CF; null when the air has no say.</param>
/// <param name="Applied">Whether the factors were applied.</param>
/// <param name="RpmFactor">CF^g [1]; 1 when not applied.</param>
/// <param name="SpeedFactor">CF^(kappa g) [1]; 1 when not applied.</param>
/// <param name="Left">Relative variances that it leaves.</param>
internal readonly record struct AirCorrection(
    PowerCorrection? Correction, bool Applied, double RpmFactor, double SpeedFactor, Unlikeness Left)
{
    private static readonly double s_lowPressure =
        StandardAtmosphere.PressureAt(Length.FromMetres(TrialLimits.AltitudeMetres)).Pascals; // [Pa]

    internal static AirCorrection Of(TrialReading reading, ref DoubtSet doubts)
    {
        // At part throttle the hand on the lever gives back what the air takes.
        if (reading.PartThrottle)
            return new AirCorrection(null, false, 1, 1, default);

        var air = reading.Conditions.Air ?? AirState.Unknown;
        var correction = PowerCorrections.Of(air);
        var breathes = reading.Engine.Breathing == AirResponse.NaturallyAspirated;
        doubts.Add(TrialDoubt.TemperatureMissing, air.Temperature is null);
        doubts.Add(TrialDoubt.PressureMissing, air.StationPressure is null);
        doubts.Add(TrialDoubt.HumidityMissing, air.RelativeHumidityFraction is null);
        doubts.Add(TrialDoubt.Altitude, breathes && correction.InValidity && AirAssumptions.Of(air).Pascals.Value < s_lowPressure);
        doubts.Add(TrialDoubt.NotCorrectable, !breathes);
        doubts.Add(TrialDoubt.OutsideValidity, breathes && !correction.InValidity);

        var (g, kappa) = (reading.Response.Gain, reading.Response.Kappa);
        var L = Math.Log(correction.Factor.Value);                                                // [1] ln CF
        var varL = Square(correction.Factor.StandardDeviation / correction.Factor.Value);         // [1]
        if (!breathes || !correction.InValidity)
            return new AirCorrection(correction, false, 1, 1, NotCorrected(g, kappa, Square(L) + varL));

        // Variance of a product of independent numbers, as ln N moves by g ln CF and ln V by kappa as much of that:
        // var(xy) = x^2 var y + y^2 var x + var x var y (Goodman 1960, eq. 2, from memory).
        var x = g.Value * L;                                                                      // [1]
        var varx = OfProduct(g.Value, Square(g.StandardDeviation), L, varL);                      // [1]
        var vary = OfProduct(kappa.Value, Square(kappa.StandardDeviation), x, varx);              // [1]
        return new AirCorrection(
            correction,
            true,
            Math.Exp(x),
            Math.Exp(kappa.Value * x),
            new Unlikeness(varx, vary, kappa.Value * varx));
    }

    /// <summary>Nothing was corrected, so the whole of what the correction might have been stays open: the mean squares of g ln CF and kappa g ln CF.</summary>
    private static Unlikeness NotCorrected(Uncertain g, Uncertain kappa, double meanSquareL)
    {
        var rpm = MeanSquare(g) * meanSquareL; // [1]
        return new Unlikeness(rpm, MeanSquare(kappa) * rpm, kappa.Value * rpm);
    }

    private static double MeanSquare(Uncertain x) => Square(x.Value) + Square(x.StandardDeviation);

    private static double OfProduct(double x, double varx, double y, double vary) =>
        (x * x * vary) + (y * y * varx) + (varx * vary);

    private static double Square(double x) => x * x;
}
