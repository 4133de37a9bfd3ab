using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Parts;

/// <summary>Small parts came to a dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part: what is on the bag, not one piece.</param>
/// <param name="Name">Its name for people; null when it was told before.</param>
/// <param name="PartKind">What it is.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Quantity">How many pieces, tubes or sets came.</param>
[StoredAs("part_stocked", 1)]
public sealed record PartStocked(Entry Entry, string Part, string? Name, PartKind PartKind, string Dock, int Quantity) : IFact;

/// <summary>What a small part is.</summary>
public enum PartKind
{
    /// <summary>Cotter pin.</summary>
    CotterPin,

    /// <summary>Thrust washer.</summary>
    ThrustWasher,

    /// <summary>Hub kit.</summary>
    HubKit,

    /// <summary>Nut.</summary>
    Nut,

    /// <summary>Tube of grease.</summary>
    Grease,

    /// <summary>Anode.</summary>
    Anode,

    /// <summary>Shear pin.</summary>
    ShearPin,

    /// <summary>Tab washer.</summary>
    TabWasher,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Records that small parts came to a dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="PartKind">What it is.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Quantity">How many came, 1 to 10000.</param>
/// <param name="Name">Its name for people.</param>
public sealed record StockPart(
    Stamp? Entry,
    string? Part,
    [property: OneOf(typeof(PartKind))] string? PartKind,
    string? Dock,
    int? Quantity,
    string? Name = null) : ICommand<StockPart>
{
    /// <inheritdoc/>
    public static string Kind => "part_stocked";

    /// <inheritdoc/>
    public static StockPart Example => new(Examples.At(220, "2026-05-01T07:30:00"), "pin-3x25", "cotter_pin", "north-pier", 50, "Cotter pin 3 x 25 mm");

    /// <inheritdoc/>
    public static string Summary => "Records that small parts came to a dock.";

    /// <inheritdoc/>
    public static Decision Decide(StockPart command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var part = check.Id(command.Part, "/part");
        var kind = check.OneOf<PartKind>(command.PartKind, "/partKind");
        var dock = check.Id(command.Dock, "/dock");
        var quantity = check.Whole(command.Quantity, "/quantity", 1, PartsUsed.MostPieces, "pieces");
        var name = command.Name is null ? null : check.Name(command.Name, "/name");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Part(part), new PartStocked(entry!, part, name, kind, dock, quantity))], []));
    }
}
