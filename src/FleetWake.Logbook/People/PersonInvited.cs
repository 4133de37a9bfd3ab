using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.People;

/// <summary>Somebody was asked to keep the record with us. The name and address lie elsewhere, erasable; here is the id alone.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Person">Pseudonymous id of the person.</param>
/// <param name="Role">What the person does.</param>
[StoredAs("person_invited", 1)]
public sealed record PersonInvited(Entry Entry, string Person, Role Role) : IFact;

/// <summary>What a person does here.</summary>
public enum Role
{
    /// <summary>Works on the boats, at the dock.</summary>
    Mechanic,

    /// <summary>Sends boats out, in the office.</summary>
    Operator,

    /// <summary>Decides what is bought, sent to the shop and charged.</summary>
    Manager,

    /// <summary>Reads the whole record.</summary>
    Analyst,

    /// <summary>Lets people and devices in.</summary>
    Administrator,
}

/// <summary>Invites a person.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Person">Pseudonymous id of the person.</param>
/// <param name="Role">What the person does.</param>
public sealed record InvitePerson(Stamp? Entry, string? Person, [property: OneOf(typeof(Role))] string? Role) : ICommand<InvitePerson>
{
    /// <inheritdoc/>
    public static string Kind => "person_invited";

    /// <inheritdoc/>
    public static InvitePerson Example => new(Examples.At(241, "2026-05-01T07:05:00"), "mech-2", "mechanic");

    /// <inheritdoc/>
    public static string Summary => "Records that a person was invited, by id, and as what.";

    /// <inheritdoc/>
    public static Decision Decide(InvitePerson command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var person = check.Id(command.Person, "/person");
        var role = check.OneOf<Role>(command.Role, "/role");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new PersonInvited(entry!, person, role))], []));
    }
}
