using System.Globalization;

namespace FleetWake.Propulsion.Fastening;

/// <summary>
/// A slotted nut on a drilled shaft: where its pin fits, and how far it must be turned on to get there. Plain geometry,
/// computed here. A nut is turned on to the next slot and never back, because backing off loosens what the torque had set
/// (owners' manuals of outboards; common practice).
/// </summary>
public sealed record CastleNut
{
    /// <summary>Takes a nut.</summary>
    /// <param name="slots">
    /// Number of slots, even from 4 to 12, so that a straight pin finds two that face each other. Six on nuts of this size
    /// (ISO 7035, from memory).
    /// </param>
    /// <param name="holes">How the shaft is drilled.</param>
    /// <param name="threadPitch">Thread pitch, the advance a turn; above 0 up to 6 mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public CastleNut(int slots, CrossHoles holes, Length threadPitch)
    {
        if (slots is < 4 or > 12 || slots % 2 != 0)
            throw new ArgumentOutOfRangeException(nameof(slots), slots, "Must be even and from 4 to 12.");
        if (!Enum.IsDefined(holes))
            throw new ArgumentOutOfRangeException(nameof(holes), holes, "Must be a declared way of drilling.");
        if (threadPitch.Millimetres is not (> 0 and <= 6))
            throw new ArgumentOutOfRangeException(
                nameof(threadPitch), threadPitch, "Must be above 0 up to 6 mm; threads to the inch are given as 1/n in.");

        (Slots, Holes, ThreadPitch) = (slots, holes, threadPitch);
    }

    /// <summary>Number of slots.</summary>
    public int Slots { get; }

    /// <summary>How the shaft is drilled.</summary>
    public CrossHoles Holes { get; }

    /// <summary>Thread pitch.</summary>
    public Length ThreadPitch { get; }

    /// <summary>
    /// The turn from one place where the pin fits to the next [degrees]: 360/slots; half of it with two holes when 90 degrees
    /// fall between two slots, as with six, and no less when they fall on one, as with eight.
    /// </summary>
    public double StepDegrees => Holes == CrossHoles.TwoAtRightAngles && Slots % 4 == 2 ? 180.0 / Slots : 360.0 / Slots;

    /// <summary>How much further it must be turned, tightening, until the pin fits.</summary>
    /// <param name="degreesPastSlot">How far it stands past the last place where the pin fitted [degrees], 0 to 360.</param>
    /// <returns>The extra turn [degrees]: 0 where the pin fits already, else up to but never all of a step.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public double DegreesToNextSlot(double degreesPastSlot)
    {
        var past = Reject.Outside(0, 360, "degrees", degreesPastSlot, nameof(degreesPastSlot)) % StepDegrees;
        return past < 1e-9 ? 0 : StepDegrees - past; // nobody reads a nut finer, and a step less almost nothing is a step
    }

    /// <summary>
    /// The extra turn [degrees] when nobody looked where the nut stood: anywhere from none to a step with equal chance, so
    /// half a step with a standard deviation of step/12^0.5.
    /// </summary>
    public Uncertain UnseenDegreesToNextSlot => new(StepDegrees / 2, StepDegrees / Math.Sqrt(12));

    /// <summary>How far the nut moves along the shaft in a turn: pitch times turn over 360 degrees.</summary>
    /// <param name="turnDegrees">The turn [degrees], 0 to 360.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public Length Advance(double turnDegrees) => Length.FromMetres(
        ThreadPitch.Metres * Reject.Outside(0, 360, "degrees", turnDegrees, nameof(turnDegrees)) / 360);

    /// <summary>The nut in words, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"castle nut, {Slots} slots, a pin fits every {StepDegrees:0.#} degrees");
}
