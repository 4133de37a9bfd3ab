using System.Text.RegularExpressions;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Inspections;

/// <summary>Somebody gave a prop the short look of a handover: two taps, no tools. It gives no verdict, and is no inspection.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Moment">When in a hire.</param>
/// <param name="Hire">Id of the hire; null when there was none, or nobody said.</param>
/// <param name="Seen">What was seen, against the look before.</param>
/// <param name="Photo">SHA-256 of the photo as it left the camera, in hexadecimal digits; null when none was taken.</param>
[StoredAs("looked_over", 1)]
public sealed record LookedOver(Entry Entry, string Boat, Position Position, LookMoment Moment, string? Hire, LookSeen Seen, string? Photo) : IAtPosition;

/// <summary>When a short look was given.</summary>
public enum LookMoment
{
    /// <summary>Before the boat went out on hire.</summary>
    BeforeHire,

    /// <summary>When it came back.</summary>
    AfterHire,

    /// <summary>At the dock, in no hire.</summary>
    AtDock,
}

/// <summary>What a short look saw.</summary>
public enum LookSeen
{
    /// <summary>Nothing that was not there before.</summary>
    NothingNew,

    /// <summary>A new mark.</summary>
    Mark,

    /// <summary>Damage.</summary>
    Damage,
}

/// <summary>Records the short look of a handover.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Moment">When in a hire.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="Hire">Id of the hire.</param>
/// <param name="Photo">SHA-256 of the photo as it left the camera, 64 hexadecimal digits.</param>
public sealed partial record LookOver(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    [property: OneOf(typeof(LookMoment))] string? Moment,
    [property: OneOf(typeof(LookSeen))] string? Seen,
    string? Hire = null,
    string? Photo = null) : ICommand<LookOver>
{
    /// <inheritdoc/>
    public static string Kind => "looked_over";

    /// <inheritdoc/>
    public static LookOver Example => new(Examples.At(300, "2026-05-20T15:30:00"), Examples.Boat, "single", "after_hire", "mark", "hire-0881");

    /// <inheritdoc/>
    public static string Summary => "Records the short look at a handover: nothing new, a mark or damage.";

    /// <inheritdoc/>
    public static Decision Decide(LookOver command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var moment = check.OneOf<LookMoment>(command.Moment, "/moment");
        var seen = check.OneOf<LookSeen>(command.Seen, "/seen");
        var hire = check.MaybeId(command.Hire, "/hire");
        if (command.Photo is { } photo && !HashPattern().IsMatch(photo))
            check.Refuse("/photo", "not_a_hash", "not a SHA-256: give the 64 hexadecimal digits of the photo's hash");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new LookedOver(entry!, boat, position, moment, hire, seen, command.Photo?.ToLowerInvariant()))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }

    [GeneratedRegex(@"\A[0-9A-Fa-f]{64}\z")]
    private static partial Regex HashPattern();
}
