using System.Text.Json.Nodes;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;

namespace FleetWake.Web.Dock;

/// <summary>
/// What a phone may record. It tells what happened at the dock; what the office decides (people, devices, rules, prices,
/// quarantine, whose word counts) is decided there, by somebody who signed in: a phone is shared, and may be in a stranger's hand.
/// </summary>
internal static class DockKinds
{
    /// <summary>Kinds that only the office records.</summary>
    public static IReadOnlySet<string> OfTheOffice { get; } = ((string[])
    [
        OpenDock.Kind, EnrolDevice.Kind, RevokeDevice.Kind, ReleaseQuarantinedEntry.Kind, SettleContradiction.Kind,

        // And whatever nobody who works at a dock may record anywhere: rules, prices, schedules, people, the end of a claim.
        .. RecordKind.All.Where(k => !Permissions.Allow(Role.Mechanic, k, k.Example) && !Permissions.Allow(Role.Operator, k, k.Example)).Select(k => k.Name),
    ]).ToHashSet(StringComparer.Ordinal);

    /// <summary>Why a phone may not record this; null when it may.</summary>
    public static Refusal? Refusal(RecordKind kind, JsonObject record) =>
        OfTheOffice.Contains(kind.Name) ? new Refusal("/kind", "office_only", $"{kind.Name} is recorded in the office, not on a dock's phone: ask somebody there")
        // Taking an office's record back would undo what only the office may do.
        : kind.Name == Retract.Kind && record["office"] is { } office && office.GetValueKind() != System.Text.Json.JsonValueKind.False
            ? new Refusal("/office", "office_only", "a record of the office is taken back in the office, not on a dock's phone: ask somebody there")
        : null;
}
