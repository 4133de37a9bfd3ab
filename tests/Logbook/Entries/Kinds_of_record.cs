using System.Text.Json;

namespace FleetWake.Logbook.Tests.Entries;

public class Kinds_of_record
{
    [Fact]
    public void The_names_on_the_wire_are_pinned() => Assert.Equal(
        [
            "boat_registered", "engine_registered", "engine_fitted", "hours_read", "prop_registered", "prop_acquired", "repitched",
            "prop_mounted", "prop_removed", "strike_reported", "inspected", "trial_run", "retracted",
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
    public void An_empty_record_of_any_kind_is_refused_and_never_throws() => Assert.All(RecordKind.All, k =>
    {
        var empty = (ICommand)JsonSerializer.Deserialize("{}", k.CommandType, LogbookJson.Options)!;
        var refusals = Assert.IsType<Decision.Refuse>(k.Decide(empty, Dock.Arrived)).Refusals;
        Assert.Equal("/entry", refusals[0].Field);
        Assert.Equal(refusals.Count, refusals.Select(r => r.Field).Distinct().Count());
    });
}
