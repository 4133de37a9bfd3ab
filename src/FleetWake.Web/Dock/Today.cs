using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;

namespace FleetWake.Web.Dock;

/// <summary>
/// What a phone carries away from the dock's signal. What is null is left out. The tag is of everything but the two
/// times, so that a quiet hour costs a 304; the header <c>FleetWake-Made-At</c> stands on both answers, and a copy is as
/// fresh as the last one that was seen.
/// </summary>
/// <param name="MadeAt">When it was made, by the server's clock.</param>
/// <param name="Now">The server's clock.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Dock">The dock that the phone was given to.</param>
/// <param name="StaleAfterHours">A card older than this says of no boat that it is in hire: ask the office.</param>
/// <param name="PhotoLimits">What a photo may be.</param>
/// <param name="People">Who may sign.</param>
/// <param name="Policy">Rules and hire table.</param>
/// <param name="Boats">Every boat of the dock.</param>
/// <param name="Others">Boats of other docks, in short.</param>
/// <param name="Spares">Spare props of every dock.</param>
/// <param name="Parts">Small parts, with how many lie at this dock.</param>
internal sealed record Today(
    DateTimeOffset MadeAt, DateTimeOffset Now, TodayOperator Operator, DockPlace Dock, double StaleAfterHours, PhotoLimits PhotoLimits,
    IReadOnlyList<TodayPerson> People, FleetPolicy Policy, IReadOnlyList<Card> Boats, IReadOnlyList<BoatName> Others,
    IReadOnlyList<SpareProp> Spares, IReadOnlyList<PartHere> Parts);

/// <summary>The operator.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Zone">IANA zone of its office.</param>
internal sealed record TodayOperator(string Id, string Name, string Zone);

/// <summary>What a photo may be; the phone makes it smaller before it sends it.</summary>
/// <param name="Bytes">Bytes at the most.</param>
/// <param name="Pixels">Pixels at the most.</param>
internal sealed record PhotoLimits(int Bytes, int Pixels);

/// <summary>Somebody who may sign at the dock.</summary>
/// <param name="Person">Pseudonymous id, as it stands in records.</param>
/// <param name="Name">Name.</param>
/// <param name="Role">What the person does.</param>
/// <param name="HasPin">Whether the person has set a PIN.</param>
internal sealed record TodayPerson(string Person, string Name, Role Role, bool HasPin);

/// <summary>A boat in short.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Dock">Name of its dock; left out while it is not registered.</param>
internal sealed record BoatName(string Boat, string Name, string? Dock);

/// <summary>A spare prop.</summary>
/// <param name="Prop">Its tag.</param>
/// <param name="Size">Diameter and pitch in words; left out while they are not known.</param>
/// <param name="Material">Material.</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Rotation">Which way it turns.</param>
/// <param name="Dock">Name of the dock where it lies; left out when nobody said, or while it is at a shop.</param>
/// <param name="Standing">Spare, or at a shop.</param>
internal sealed record SpareProp(string Prop, string? Size, PropMaterial? Material, int? Blades, Rotation? Rotation, string? Dock, PropStanding Standing);

/// <summary>A small part.</summary>
/// <param name="Part">Its id.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name.</param>
/// <param name="AtDock">Pieces at this dock; left out while no record speaks of it here.</param>
internal sealed record PartHere(string Part, PartKind? Kind, string? Name, int? AtDock);
