namespace FleetWake.Propulsion.Trials;

/// <summary>What widens the doubt of a trial, or narrows what it may be used for.</summary>
public enum TrialDoubt
{
    /// <summary>One run only: the current is still in its speed.</summary>
    SingleRun,

    /// <summary>The headings were not opposed.</summary>
    HeadingsNotOpposed,

    /// <summary>RPM of the headings differed by more than 0.5 % and more than the tachometer's step.</summary>
    RpmSplit,

    /// <summary>The limiter held the engine: the RPM is a lower bound.</summary>
    LimiterReached,

    /// <summary>The prop drew air during a run.</summary>
    Ventilation,

    /// <summary>Water so shallow that it changes resistance.</summary>
    ShallowWater,

    /// <summary>A run too short to settle.</summary>
    ShortRun,

    /// <summary>The speed scattered within a run.</summary>
    SpeedNoise,

    /// <summary>The RPM scattered within a run.</summary>
    RpmNoise,

    /// <summary>The tachometer's step is coarse against what drift does in a season.</summary>
    CoarseTachometer,

    /// <summary>The tachometer was found off and the reading was brought right by what was found.</summary>
    TachometerCorrected,

    /// <summary>Trim unlike the baseline's.</summary>
    TrimUnlike,

    /// <summary>Load unlike the baseline's.</summary>
    LoadUnlike,

    /// <summary>Water unlike the baseline's.</summary>
    WaterUnlike,

    /// <summary>So high, or in such low pressure, that the correction is large; told only where one was made.</summary>
    Altitude,

    /// <summary>The power correction is outside 0.93 to 1.07: nothing was corrected.</summary>
    OutsideValidity,

    /// <summary>Nobody read the pressure: the standard one was assumed and the doubt says so.</summary>
    PressureMissing,

    /// <summary>Nobody read the temperature.</summary>
    TemperatureMissing,

    /// <summary>Nobody read the humidity.</summary>
    HumidityMissing,

    /// <summary>The engine's control hides the air: nothing was corrected.</summary>
    NotCorrectable,

    /// <summary>Slip came out negative: a cupped or mis-stated pitch, a current, or a wrong reading.</summary>
    NegativeSlip,

    /// <summary>Faster than the prop could go by more than 15 %: one of speed, RPM, ratio or pitch is not what it seems.</summary>
    AboveTheoretical,

    /// <summary>Part throttle: shows slip, never the band.</summary>
    PartThrottle,

    /// <summary>RPM of the runs differed by more than 20 %, which no weather makes: one was mistyped, or was no full throttle.</summary>
    RpmImplausible,
}
