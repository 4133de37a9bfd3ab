using System.Security.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Web.SignIn;

namespace FleetWake.Web.Office.Import;

/// <summary>
/// Kinds of record that somebody may bring in as a table: whoever may not set a price on its page may not by a table either. Who
/// keeps the record and with which phone is settled on its own pages alone.
/// </summary>
internal static class ImportKinds
{
    private static readonly Dictionary<string, Need?> Apart = new(StringComparer.Ordinal)
    {
        ["person_invited"] = null,
        ["role_given"] = null,
        ["device_enrolled"] = null,
        ["device_revoked"] = null,
        ["quarantined_entry_released"] = null,
        ["inspection_rule_set"] = new(Verb.Decide, Matter.Rules),
        ["hire_states_set"] = new(Verb.Decide, Matter.Rules),
        ["schedule_set"] = new(Verb.Decide, Matter.Reports),
        ["price_set"] = new(Verb.Decide, Matter.Money),
        ["claim_closed"] = new(Verb.Decide, Matter.Money),
    };

    /// <summary>The kinds, in the order of all.</summary>
    public static IEnumerable<RecordKind> Of(ClaimsPrincipal user) => RecordKind.All.Where(k => Allows(user, k));

    /// <summary>Whether somebody may bring in records of a kind.</summary>
    public static bool Allows(ClaimsPrincipal user, RecordKind kind) => !Apart.TryGetValue(kind.Name, out var need) || (need is not null && user.May(need.Verb, need.Matter));
}
