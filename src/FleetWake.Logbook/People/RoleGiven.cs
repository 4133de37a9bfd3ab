using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.People;

/// <summary>A person does something else from now on.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Person">Pseudonymous id of the person.</param>
/// <param name="Role">What the person does now.</param>
[StoredAs("role_given", 1)]
public sealed record RoleGiven(Entry Entry, string Person, Role Role) : IFact;

/// <summary>Gives a person a role.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Person">Pseudonymous id of the person.</param>
/// <param name="Role">What the person does now.</param>
public sealed record GiveRole(Stamp? Entry, string? Person, [property: OneOf(typeof(Role))] string? Role) : ICommand<GiveRole>
{
    /// <inheritdoc/>
    public static string Kind => "role_given";

    /// <inheritdoc/>
    public static GiveRole Example => new(Examples.At(242, "2026-06-01T08:00:00"), "mech-2", "manager");

    /// <inheritdoc/>
    public static string Summary => "Gives a person another role.";

    /// <inheritdoc/>
    public static Decision Decide(GiveRole command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var person = check.Id(command.Person, "/person");
        var role = check.OneOf<Role>(command.Role, "/role");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new RoleGiven(entry!, person, role))], []));
    }
}
