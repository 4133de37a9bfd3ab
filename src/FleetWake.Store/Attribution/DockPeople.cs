using FleetWake.Logbook.People;
using FleetWake.Store.People;
using Marten;

namespace FleetWake.Store.Attribution;

/// <summary>Who signs at the docks.</summary>
public sealed class DockPeople(IDocumentStore store, DockPins pins)
{
    /// <summary>People of an operator whose role may record work at a dock, by name; nobody who left.</summary>
    public async Task<IReadOnlyList<DockPerson>> OfAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        var people = await session.Query<PersonCard>().Where(p => p.Operator == @operator && p.LeftAt == null).ToListAsync(ct);
        var withPin = await pins.SetByAsync(@operator, ct);
        return
        [
            .. people.Where(p => Permissions.Allow(p.Role, Verb.Record, Matter.DockWork))
                .Select(p => new DockPerson(p.Person, p.Name, p.Role, withPin.Contains(p.Person)))
                .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase).ThenBy(p => p.Person, StringComparer.Ordinal),
        ];
    }
}

/// <summary>Somebody who may sign at a dock.</summary>
/// <param name="Person">Pseudonymous id, as it stands in records.</param>
/// <param name="Name">Name.</param>
/// <param name="Role">What the person does.</param>
/// <param name="HasPin">Whether the person has set a PIN.</param>
public sealed record DockPerson(string Person, string Name, Role Role, bool HasPin);
