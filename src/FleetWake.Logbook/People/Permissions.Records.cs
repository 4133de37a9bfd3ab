using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.People;

/// <content>What sending a record is, as verb and matter: the same question for a page and for a phone.</content>
public static partial class Permissions
{
    private static readonly Dictionary<string, (Verb Verb, Matter Matter)> Records = Spread(
        (Verb.Record, Matter.DockWork,
            "hours_read meter_replaced tachometer_checked engine_serviced engine_fitted engine_removed hull_cleaned rig_changed "
            + "prop_mounted found_fitted prop_removed prop_cleaned hub_replaced strike_reported inspected looked_over nut_retorqued "
            + "trial_run normalised_rpm_read prop_measured prop_repaired repitched duty_taken duty_done laid_up boat_relaunched retracted"),
        (Verb.Record, Matter.Hire, "out_of_hire"),

        // A mechanic at the dock may lift a block: nobody else has seen the boat.
        (Verb.Decide, Matter.Hire, "back_in_hire"),
        (Verb.Record, Matter.Register,
            "boat_registered boat_rehomed boat_retired engine_registered engine_fit_stated fastening_stated prop_registered prop_fit_stated prop_planned dock_opened"),
        (Verb.Record, Matter.Stock,
            "prop_acquired prop_sent_to_shop prop_back_from_shop prop_stored prop_retired loaner_taken loaner_returned part_stocked part_counted part_used"),
        (Verb.Record, Matter.Money, "prop_cost_told claim_opened claim_costed"),
        (Verb.Decide, Matter.Money, "price_set claim_closed"),
        (Verb.Decide, Matter.Questions, "contradiction_settled"),
        (Verb.Decide, Matter.Rules, "inspection_rule_set hire_states_set"),
        (Verb.Decide, Matter.Reports, "schedule_set digest_timed holidays_set alerts_set"),
        (Verb.Decide, Matter.People, "person_invited role_given"),
        (Verb.Decide, Matter.Devices, "device_enrolled device_revoked"),
        (Verb.Decide, Matter.Quarantine, "quarantined_entry_released"));

    /// <summary>What sending a record of this kind is. Every kind has a row; a new one without fails its test, and is refused to everybody till then.</summary>
    public static (Verb Verb, Matter Matter) Of(RecordKind kind) =>
        Records.TryGetValue(kind.Name, out var needed) ? needed : throw new ArgumentException($"Who may send \"{kind.Name}\" is not told.", nameof(kind));

    /// <summary>The same for a record that is at hand: what of the office is taken back is no dock work.</summary>
    public static (Verb Verb, Matter Matter) Of(RecordKind kind, ICommand command) =>
        command is Retract { Office: true } ? (Verb.Decide, Matter.Rules) : Of(kind);

    /// <summary>Whether a role may send a record.</summary>
    public static bool Allow(Role role, RecordKind kind, ICommand command)
    {
        var (verb, matter) = Of(kind, command);
        return Allow(role, verb, matter);
    }

    /// <summary>What somebody is told whose role may not send a record.</summary>
    public static Refusal NotForThisRole { get; } = new("", "not_for_this_role", "this is not for your role to record: ask somebody whose it is");

    private static Dictionary<string, (Verb Verb, Matter Matter)> Spread(params (Verb Verb, Matter Matter, string Kinds)[] rows) =>
        rows.SelectMany(r => r.Kinds.Split(' '), (r, kind) => (kind, (r.Verb, r.Matter))).ToDictionary(r => r.kind, r => r.Item2, StringComparer.Ordinal);
}
