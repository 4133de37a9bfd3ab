namespace FleetWake.Demo;

/// <summary>How one engine goes with one prop, two aboard, on a standard morning.</summary>
/// <param name="NewRpm">Wide-open-throttle speed when the prop was fitted [RPM].</param>
/// <param name="Wear">What wear adds [RPM per 100 engine hours].</param>
/// <param name="NewSlip">Slip when the prop was fitted.</param>
/// <param name="Pitch">Pitch of the prop [in].</param>
/// <param name="Gear">Engine turns per prop turn.</param>
internal sealed record Going(double NewRpm, double Wear, double NewSlip, double Pitch, double Gear)
{
    /// <summary>Speed lost for RPM gained while pitch wears away: about a seventh, both in per cent.</summary>
    private const double SpeedLostToWear = 0.14;

    /// <summary>What happened to it since.</summary>
    public IReadOnlyList<Step> Steps { get; init; } = [];

    /// <summary>RPM and speed [kn] after some hours with the prop.</summary>
    public (double Rpm, double Knots) After(double hours, DateOnly day)
    {
        var worn = Wear * hours / 100 / NewRpm;
        var rpm = NewRpm * (1 + worn);
        var knots = Knots(NewRpm, NewSlip) * (1 - SpeedLostToWear * worn);
        foreach (var step in Steps.Where(s => s.From <= day))
        {
            rpm *= 1 + step.Rpm;
            knots *= 1 + step.Speed;
        }

        return (rpm, knots);
    }

    /// <summary>V = pitch x RPM / gear ratio x (1 - slip) [kn].</summary>
    private double Knots(double rpm, double slip) => Pitch * 0.0254 * rpm / Gear / 60 * (1 - slip) * 3600 / 1852;
}

/// <summary>A change from one day on: shares of RPM and speed, e.g. 0.01 for one per cent more.</summary>
internal sealed record Step(DateOnly From, double Rpm, double Speed);
