using System.Text.Json;

namespace FleetWake.Logbook.Tests.Entries;

public class Kinds_of_record
{
    [Fact]
    public void The_names_on_the_wire_are_pinned() => Assert.Equal(
        [
            "boat_registered", "engine_registered", "engine_fitted", "hours_read", "meter_replaced", "tachometer_checked", "engine_removed",
            "boat_rehomed", "hull_cleaned", "rig_changed", "prop_planned", "contradiction_settled",
            "engine_fit_stated", "fastening_stated", "engine_serviced",
            "prop_registered", "prop_acquired", "prop_fit_stated", "prop_sent_to_shop", "repitched", "prop_repaired", "prop_back_from_shop",
            "prop_measured", "prop_cost_told", "prop_stored", "loaner_taken", "loaner_returned", "prop_retired",
            "prop_mounted", "found_fitted", "prop_removed", "prop_cleaned", "hub_replaced", "strike_reported", "inspected", "trial_run", "normalised_rpm_read",
            "inspection_rule_set", "hire_states_set", "looked_over", "nut_retorqued", "duty_taken", "duty_done", "out_of_hire", "back_in_hire",
            "laid_up", "boat_relaunched", "boat_retired",
            "dock_opened", "person_invited", "role_given", "device_enrolled", "device_revoked", "schedule_set", "digest_timed", "holidays_set", "alerts_set", "price_set", "quarantined_entry_released",
            "part_stocked", "part_counted", "part_used", "claim_opened", "claim_costed", "claim_closed",
            "retracted",
        ],
        RecordKind.All.Select(k => k.Name));

    [Fact]
    public void Each_is_found_by_its_name_and_by_no_other()
    {
        Assert.All(RecordKind.All, k => Assert.Same(k, RecordKind.Find(k.Name)));
        Assert.Null(RecordKind.Find("Boat_Registered"));
        Assert.Null(RecordKind.Find(null));
    }

    [Fact]
    public void Each_has_the_stored_name_of_its_main_fact_and_a_sentence() => Assert.All(RecordKind.All, k =>
    {
        Assert.Contains(k.Name, LogbookJson.StoredNames.Values);
        Assert.EndsWith(".", k.Summary, StringComparison.Ordinal);
    });

    [Fact]
    public void Each_has_an_example_of_its_own_that_is_kept_and_speaks_of_things_that_an_example_registers()
    {
        string[] registered = ["boat/linnet", "engine/engine-7", "prop/lin-13"];
        Assert.All(RecordKind.All, k =>
        {
            var keep = Assert.IsType<Decision.Keep>(k.Decide(k.Example, Dock.Arrived));
            Assert.All(keep.References, r => Assert.Contains(r.Stream, registered));
        });
        Assert.Equal(RecordKind.All.Count, RecordKind.All.Select(k => k.Example.Entry!.Id).Distinct().Count());
    }

    [Fact]
    public void An_empty_record_of_any_kind_is_refused_and_never_throws() => Assert.All(RecordKind.All, k =>
    {
        var empty = (ICommand)JsonSerializer.Deserialize("{}", k.CommandType, LogbookJson.Options)!;
        var refusals = Assert.IsType<Decision.Refuse>(k.Decide(empty, Dock.Arrived)).Refusals;
        Assert.Equal("/entry", refusals[0].Field);
        Assert.Equal(refusals.Count, refusals.Select(r => r.Field).Distinct().Count());
    });
}
