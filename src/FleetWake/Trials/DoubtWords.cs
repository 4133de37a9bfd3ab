using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>What a doubt means to the person who made the trial.</summary>
internal static class DoubtWords
{
    public static string Of(TrialDoubt doubt) => doubt switch
    {
        TrialDoubt.SingleRun => "one run only: the current is still in the speed; run back the other way too",
        TrialDoubt.HeadingsNotOpposed => "the headings are not opposed: the current is still in the speed; run back on the opposite heading",
        TrialDoubt.RpmSplit => "the RPM of the two ways differ by more than 0.5 %: most often wind, waves or trim were not the same",
        TrialDoubt.LimiterReached => "the limiter held the engine in a run: without it the RPM would be higher",
        TrialDoubt.Ventilation => "the prop drew air in a run: its RPM is too high for its speed",
        TrialDoubt.ShallowWater => "the water was shallow, which changes resistance",
        TrialDoubt.ShortRun => "a run was held for less than 10 s and may not have settled",
        TrialDoubt.SpeedNoise => "the speed scattered by more than 2 % within a run",
        TrialDoubt.RpmNoise => "the RPM scattered by more than 1 % within a run",
        TrialDoubt.CoarseTachometer => "the tachometer's step is coarse against what wear does to RPM in a season",
        TrialDoubt.TachometerCorrected => "the tachometer's known error was taken out; how well it is known is part of the doubt",
        TrialDoubt.TrimUnlike => "the trim differs from the baseline's by more than 2 degrees",
        TrialDoubt.LoadUnlike => "the load differs from the baseline's by more than 50 kg",
        TrialDoubt.WaterUnlike => "the water, fresh or salt, is not the baseline's",
        TrialDoubt.Altitude => "high water or low pressure: the correction is large",
        TrialDoubt.OutsideValidity => "the power correction lies outside 0.93 to 1.07: nothing was corrected",
        TrialDoubt.PressureMissing => "nobody read the pressure, or not so that it could be used: it was assumed; a barometer reading narrows this",
        TrialDoubt.TemperatureMissing => "nobody read the temperature, or not so that it could be used: it was assumed",
        TrialDoubt.HumidityMissing => "nobody read the humidity, or not so that it could be used: it was assumed",
        TrialDoubt.NotCorrectable => "the engine's control hides the air: nothing was corrected",
        TrialDoubt.NegativeSlip => "negative slip: a cupped or mis-stated pitch, a current, or a wrong reading",
        TrialDoubt.AboveTheoretical => "faster than the prop could go by more than 15 %: check speed unit, RPM, gear ratio and pitch",
        TrialDoubt.PartThrottle => "part throttle: good for slip, never for the band; not corrected",
        TrialDoubt.RpmImplausible => "the RPM of the runs differ by more than 20 %, which no wind makes: check the RPM of each run, and that the throttle was wide open",
        _ => TrialDoubts.Code(doubt).Replace('_', ' '), // of a newer kind
    };
}
