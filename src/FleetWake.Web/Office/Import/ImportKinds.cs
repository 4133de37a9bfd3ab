using System.Security.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Web.SignIn;

namespace FleetWake.Web.Office.Import;

/// <summary>
/// What somebody may bring in as a table: by the one table of permissions, so that whoever may not set a price on its page may not
/// by a table either. Who keeps the record and with which phone is settled on its own pages alone.
/// </summary>
internal static class ImportKinds
{
    private static readonly Matter[] Apart = [Matter.People, Matter.Devices, Matter.Quarantine];

    /// <summary>The kinds, in the order of all.</summary>
    public static IEnumerable<RecordKind> Of(ClaimsPrincipal user) => RecordKind.All.Where(k => Allows(user, k));

    /// <summary>Whether somebody may bring in records of a kind.</summary>
    public static bool Allows(ClaimsPrincipal user, RecordKind kind)
    {
        var (verb, matter) = Permissions.Of(kind);
        return !Apart.Contains(matter) && user.May(verb, matter);
    }

    /// <summary>Whether somebody may bring in a record: of one kind, some may be another matter than the others.</summary>
    public static bool Allows(ClaimsPrincipal user, RecordKind kind, ICommand command) =>
        Allows(user, kind) && user.RoleOf() is { } role && Permissions.Allow(role, kind, command);
}
