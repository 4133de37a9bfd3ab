namespace FleetWake.Propulsion.Advice;

/// <summary>
/// What other changes of a prop do, as ranges and no more: low confidence, for the series disagree, or nobody has measured. Good for
/// choosing what to try, never for leaving out the trial.
/// </summary>
public static class RoughAdvice
{
    /// <summary>
    /// An inch of diameter over an inch of pitch [1]: 0.85 to 1.26 at planing slip over three series (computed). That one is worth two
    /// or three (common practice, no source) no series reproduces.
    /// </summary>
    private const double LeastRatio = 0.85;
    private const double MostRatio = 1.26;

    /// <summary>RPM gained by one inch more of diameter at the same pitch [rev/min], as lowest and highest; both below zero.</summary>
    /// <param name="question">The question.</param>
    public static (double Lowest, double Highest) RpmOfAnInchOfDiameter(PitchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        var perInch = question.CorrectedRpm.Value / question.FittedPitch.Inches; // [rev/min per in], at an elasticity of one
        var eta = question.PitchElasticity;
        return (perInch * eta.Low(1) * MostRatio, perInch * Math.Min(0, eta.High(1)) * LeastRatio);
    }

    /// <summary>RPM gained by a fourth blade at the same area, pitch and diameter [rev/min]: -1.1 to -2.9 % (computed; 50 to 150 rpm less is common practice, no source).</summary>
    /// <param name="rpm">RPM with three blades [rev/min], above zero.</param>
    /// <param name="blades">Blades of the prop; null when not known, then three.</param>
    /// <returns>Null for a prop that does not have three blades: there is no fourth one to add.</returns>
    public static (double Lowest, double Highest)? RpmOfAFourthBlade(double rpm, int? blades) =>
        blades is null or 3 ? Share(rpm, -0.029, -0.011) : null;

    /// <summary>RPM gained by stainless steel for aluminium of the same stamp [rev/min]: -3 to +1 %, for it flexes less and is often cupped otherwise (common practice, no source).</summary>
    /// <param name="rpm">RPM with aluminium [rev/min], above zero.</param>
    public static (double Lowest, double Highest) RpmOfStainless(double rpm) => Share(rpm, -0.03, 0.01);

    private static (double Lowest, double Highest) Share(double rpm, double low, double high) => rpm is > 0 and <= 12_000
        ? (rpm * low, rpm * high)
        : throw new ArgumentOutOfRangeException(nameof(rpm), rpm, "Must be above 0 to 12000 rpm.");
}
