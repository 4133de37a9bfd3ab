using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>What a doubt means to the person who made the trial.</summary>
internal static class DoubtWords
{
    public static string Of(TrialDoubt doubt) => doubt switch
    {
        TrialDoubt.SingleRun => "one run only: the current is still in the speed; run back the other way too",
        TrialDoubt.HeadingsNotOpposed => "the headings are not opposed: the current is still in the speed",
        TrialDoubt.RpmSplit => "the RPM of the two ways differ by more than 0.5 %: wind, waves or trim were not the same",
        TrialDoubt.LimiterReached => "the limiter held the engine: the true RPM is higher",
        TrialDoubt.Ventilation => "the prop drew air: RPM without speed",
        TrialDoubt.ShallowWater => "shallow water changes resistance",
        TrialDoubt.ShortRun => "a run was too short to settle",
        TrialDoubt.SpeedNoise => "the speed scattered within a run",
        TrialDoubt.RpmNoise => "the RPM scattered within a run",
        TrialDoubt.CoarseTachometer => "the tachometer's step is coarse",
        TrialDoubt.TachometerCorrected => "the tachometer's known error was taken out",
        TrialDoubt.TrimUnlike => "trim unlike the baseline's",
        TrialDoubt.LoadUnlike => "load unlike the baseline's",
        TrialDoubt.WaterUnlike => "water unlike the baseline's",
        TrialDoubt.Altitude => "high water or low pressure: the correction is large",
        TrialDoubt.OutsideValidity => "the power correction lies outside 0.93 to 1.07: nothing was corrected",
        TrialDoubt.PressureMissing => "nobody read the pressure: it was assumed; a barometer reading narrows this",
        TrialDoubt.TemperatureMissing => "nobody read the temperature: it was assumed",
        TrialDoubt.HumidityMissing => "nobody read the humidity: it was assumed",
        TrialDoubt.NotCorrectable => "the engine's control hides the air: nothing was corrected",
        TrialDoubt.NegativeSlip => "negative slip: a cupped or mis-stated pitch, a current, or a wrong reading",
        TrialDoubt.AboveTheoretical => "faster than the prop could go by more than 15 %: check speed unit, RPM, gear ratio and pitch",
        TrialDoubt.PartThrottle => "part throttle: good for slip, never for the band; not corrected",
        _ => TrialDoubts.Code(doubt).Replace('_', ' '), // of a newer kind
    };
}
