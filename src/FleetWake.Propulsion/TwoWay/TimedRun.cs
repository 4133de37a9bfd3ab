namespace FleetWake.Propulsion;

/// <summary>One run of a speed trial: a steady speed held on a heading, in the order in which the runs were made.</summary>
public sealed record TimedRun
{
    /// <summary>Takes one run.</summary>
    /// <param name="Speed">Speed over ground along the heading.</param>
    /// <param name="HeadingDegrees">Heading [degrees], any finite number; 350, -10 and 710 are one heading.</param>
    /// <exception cref="ArgumentOutOfRangeException">The heading is not finite.</exception>
    public TimedRun(Speed Speed, double HeadingDegrees)
    {
        this.Speed = Speed;
        this.HeadingDegrees = Reject.NotFinite(HeadingDegrees, HeadingDegrees);
    }

    /// <summary>Speed over ground along the heading.</summary>
    public Speed Speed { get; }

    /// <summary>Heading [degrees], as given.</summary>
    public double HeadingDegrees { get; }
}
