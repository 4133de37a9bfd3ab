using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mountings;

/// <summary>A prop was fitted at an engine position, with the mounting sheet. A null on the sheet means that nobody said, not that it was not done.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">The prop's tag.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
/// <param name="SealClearOfLine">Seal and shaft looked at and clear of line and debris.</param>
/// <param name="ShaftGreased">Shaft greased.</param>
/// <param name="HardwareInOrder">Thrust washer and hardware in their order.</param>
/// <param name="Torque">Torque reached, in <paramref name="TorqueUnit"/>.</param>
/// <param name="TorqueUnit">Unit of the torque.</param>
/// <param name="SlotsAdvanced">Slots the nut was tightened on to line up; never backed off.</param>
/// <param name="NewCotterPin">A new cotter pin was fitted.</param>
[StoredAs("prop_mounted", 1)]
public sealed record PropMounted(
    Entry Entry,
    string Boat,
    Position Position,
    string Prop,
    double? Hours,
    bool? SealClearOfLine,
    bool? ShaftGreased,
    bool? HardwareInOrder,
    double? Torque,
    TorqueUnit? TorqueUnit,
    int? SlotsAdvanced,
    bool? NewCotterPin) : IMetered;
