using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>What the water and the baseline's conditions leave open about a trial, as relative variances [1].</summary>
/// <param name="Rpm">Variance of ln N.</param>
/// <param name="Speed">Variance of ln V.</param>
/// <param name="Both">Their covariance: a heavier boat is slower and turns slower.</param>
internal readonly record struct Unlikeness(double Rpm, double Speed, double Both)
{
    private const double g_n = 9.80665; // [m/s2]

    internal static Unlikeness Of(TrialReading reading, double? knots, ref DoubtSet doubts)
    {
        var (here, there) = (reading.Conditions, reading.Baseline);
        var all = default(Unlikeness);

        // What only one of the two trials wrote down cannot be held against the other, and is within the usual noise.
        if (Math.Abs((here.TrimDegrees - there?.TrimDegrees) ?? 0) > TrialLimits.TrimDegrees)
        {
            doubts.Add(TrialDoubt.TrimUnlike, true);
            all += new Unlikeness(
                TrialNoise.TrimRpm * TrialNoise.TrimRpm, TrialNoise.TrimSpeed * TrialNoise.TrimSpeed, 0);
        }

        var load = Math.Abs((here.Load?.Kilograms - there?.Load?.Kilograms) ?? 0); // [kg]
        if (load > TrialLimits.LoadKilograms)
        {
            doubts.Add(TrialDoubt.LoadUnlike, true);
            var whole = reading.Displacement?.Kilograms ?? TrialNoise.UnknownDisplacementKilograms; // [kg]
            var rpm = TrialNoise.LoadRpm * load / whole;                                            // [1]
            all += Together(rpm, TrialNoise.LoadSpeedByRpm * rpm);
        }

        if (here.Water is { } water && there?.Water is { } before && water != before)
        {
            // Brackish water lies between the two, so the step to either is half of the whole one.
            var part = water == Water.Brackish || before == Water.Brackish ? 0.5 : 1; // [1]
            doubts.Add(TrialDoubt.WaterUnlike, true);
            all += Together(part * TrialNoise.WaterRpm, part * TrialNoise.WaterSpeed);
        }

        if (IsShallow(here.WaterDepth, knots))
        {
            doubts.Add(TrialDoubt.ShallowWater, true);
            all += new Unlikeness(
                TrialNoise.ShallowRpm * TrialNoise.ShallowRpm, TrialNoise.ShallowSpeed * TrialNoise.ShallowSpeed, 0);
        }

        return all;
    }

    public static Unlikeness operator +(Unlikeness a, Unlikeness b) => new(a.Rpm + b.Rpm, a.Speed + b.Speed, a.Both + b.Both);

    private static Unlikeness Together(double rpm, double speed) => new(rpm * rpm, speed * speed, rpm * speed);

    private static bool IsShallow(Length? depth, double? knots)
    {
        if (depth is not { Metres: < TrialLimits.CriticalMetres and var h }) // [m]
            return false;
        if (h < TrialLimits.ShallowMetres)
            return true;

        var V = (knots ?? 0) * ExactUnits.KnotInMetresPerSecond; // [m/s]
        var Fr_h = V / Math.Sqrt(g_n * h);                       // [1]
        return Fr_h is > TrialLimits.LowestCriticalFroude and < TrialLimits.HighestCriticalFroude;
    }
}
