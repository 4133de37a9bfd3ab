using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>A boat became known to the record.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Dock">Id of its home dock.</param>
/// <param name="DockZone">IANA zone of the home dock; due dates are this dock's calendar dates.</param>
/// <param name="Water">Water it works in.</param>
/// <param name="Positions">Its engine positions.</param>
[StoredAs("boat_registered", 1)]
public sealed record BoatRegistered(
    Entry Entry,
    string Boat,
    string Name,
    string Dock,
    string DockZone,
    WaterType Water,
    IReadOnlyList<Position> Positions) : IRegistration;
