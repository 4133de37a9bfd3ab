using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Response;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>What was typed for advice on pitch, read into the question that it asks.</summary>
/// <param name="Prop">The prop that the RPM was read with.</param>
/// <param name="Question">The question.</param>
/// <param name="TachometerChecked">Whether the tachometer was held against an instrument; else its own error is in the doubt.</param>
internal sealed record PitchRequest(PropData Prop, PitchQuestion Question, bool TachometerChecked)
{
    /// <summary>What <c>--rpm</c> takes, for its help.</summary>
    public const string RpmSyntax =
        "RPM at reference air at wide-open throttle with that prop, as \"trial\" prints it: 5950, or with its standard deviation 5950+-40; 0.75 % and the "
        + "tachometer's step when none is given. What \"trial\" prints was brought right by a known tacho= error and has its doubt inside: with tacho= given here too, "
        + "nothing of the gauge is added to your +-. Without tacho=, 1.5 % of a gauge that nobody checked is added in either case.";

    private const double DoubleRun = 0.0075; // [1]; scatter of a double run's RPM, common practice, no source

    /// <summary>Reads what was typed.</summary>
    /// <param name="engine">Of <c>--engine</c>.</param>
    /// <param name="prop">Of <c>--prop</c>.</param>
    /// <param name="rpm">Of <c>--rpm</c>.</param>
    /// <param name="available">Of <c>--available</c>; null for three inches up and down.</param>
    /// <param name="load">Of <c>--load</c>.</param>
    /// <param name="mass">Of <c>--mass</c>.</param>
    /// <param name="elasticity">Of <c>--elasticity</c>.</param>
    /// <exception cref="CommandException">Something cannot be read; says what, its range and how to mend it.</exception>
    public static PitchRequest Read(string engine, string prop, string rpm, string? available, string? load, string? mass, string? elasticity)
    {
        var (of, fitted) = (EngineOption.Read(engine), PropOption.Read(prop));
        if (of.BandLow is not { } low || of.BandHigh is not { } high)
            throw new CommandException($"{EngineOption.Name}: there is no advice without a rated band: add band=LOW-HIGH from the owner's manual, such as band=5000-6000.");
        return new PitchRequest(
            fitted,
            new PitchQuestion
            {
                FittedPitch = fitted.Pitch,
                CorrectedRpm = Rpm(rpm, of),
                BandLow = low,
                BandHigh = high,
                Available = Available(available, fitted.Pitch),
                Loads = LoadOption.Read(load, mass is null ? null : Measure.Displacement("--mass", mass)),
                PitchElasticity = elasticity is null ? LearnedResponse.Prior.PitchElasticity : Measure.WithDoubt("--elasticity", elasticity, -2, -0.1, 0.5, "-0.73+-0.15"),
            },
            of.TachometerError is not null);
    }

    private static Uncertain Rpm(string text, EngineData engine)
    {
        if (Measure.PlusMinus(text) is not ({ } rpm and >= Measure.LeastRpm and <= Measure.MostRpm, null or <= 1000) read)
            throw new CommandException($"--rpm \"{text}\" is not a number from {Measure.LeastRpm} to {Measure.MostRpm}, with or without its standard deviation: 5950 or 5950+-40.");
        if (rpm < 0.5 * engine.BandLow!.Value.RevolutionsPerMinute || rpm > 1.25 * engine.BandHigh!.Value.RevolutionsPerMinute)
            throw new CommandException($"--rpm {OptionParts.Show(rpm)} lies too far from the band to be a reading at wide-open throttle: check it and band=, it may be RPM of the prop.");
        var step = engine.TachometerStep?.RevolutionsPerMinute ?? 0;
        var own = read.Doubt ?? Math.Sqrt(Square(DoubleRun * rpm) + (step * step / 12));

        // A band is a rule from outside, so the gauge's own error counts, which comparisons of a boat with itself are free of.
        // What "trial" prints has the doubt of a checked gauge in it already, and never that of an unchecked one.
        var gauge = (engine.TachometerError, read.Doubt) switch
        {
            (null, _) => TrialNoise.UncheckedTachometer,
            ({ } error, null) => error.StandardDeviation,
            _ => 0,
        };
        return new Uncertain(rpm, Math.Sqrt(Square(own) + Square(gauge * rpm)));
    }

    private static List<Length> Available(string? text, Length fitted)
    {
        if (text is null)
            return [.. Enumerable.Range(-3, 7).Select(step => fitted.Inches + step).Where(inches => inches is >= PropOption.LeastPitch and <= PropOption.MostPitch).Select(Length.FromInches)];
        var pitches = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(one => PropOption.ReadPitch("--available", one)).ToList();
        return pitches.Count is >= 1 and <= 24
            ? pitches
            : throw new CommandException($"--available names {pitches.Count} pitches: give 1 to 24, such as 17,18,19,20,21.");
    }

    private static double Square(double x) => x * x;
}
