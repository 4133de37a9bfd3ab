using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Policies;

/// <summary>The operator set its hire-state table. It replaces the one before as a whole.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Rows">The rows; the first that fits counts, and where none fits the usual table does.</param>
[StoredAs("hire_states_set", 1)]
public sealed record HireStatesSet(Entry Entry, IReadOnlyList<HireRow> Rows) : IFact;

/// <summary>One row as sent: exactly one of severity and verdict.</summary>
/// <param name="State">What follows for hire.</param>
/// <param name="Severity">The severity of a strike.</param>
/// <param name="Verdict">The verdict of an inspection.</param>
/// <param name="Material">Material of the prop; left out for any.</param>
public sealed record HireRowSent(
    [property: OneOf(typeof(HireWord))] string? State,
    [property: OneOf(typeof(StrikeSeverity))] string? Severity = null,
    [property: OneOf(typeof(Verdict))] string? Verdict = null,
    [property: OneOf(typeof(PropMaterial))] string? Material = null);

/// <summary>Sets the hire-state table.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Rows">The rows, in order; the first that fits counts.</param>
public sealed record SetHireStates(Stamp? Entry, IReadOnlyList<HireRowSent>? Rows) : ICommand<SetHireStates>
{
    private const int MostRows = 60;

    /// <inheritdoc/>
    public static string Kind => "hire_states_set";

    /// <inheritdoc/>
    public static SetHireStates Example => new(
        Examples.At(310, "2026-05-01T07:05:00"),
        [new("out", "scuffed", null, "stainless"), new("look_first", "scuffed"), new("look_first", null, "watch"), new("out", null, "take_off")]);

    /// <inheritdoc/>
    public static string Summary => "Sets the operator's table of which strikes and verdicts keep a boat out of hire.";

    /// <inheritdoc/>
    public static Decision Decide(SetHireStates command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var sent = check.List(command.Rows, "/rows", 1, MostRows);
        var rows = sent.Select((row, i) => Row(check, row, $"/rows/{i}")).ToList();
        check.Once(sent.Select(r => r is null ? null : $"{r.Severity}/{r.Verdict}/{r.Material}"), "/rows", "two rows are about the same thing, and only the first would count: keep one");
        for (var i = 0; i < sent.Count; i++) ThatCanAct(check, sent, i);
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new HireStatesSet(entry!, rows))], []));
    }

    private static HireRow Row(Check check, HireRowSent? row, string field)
    {
        var state = check.OneOf<HireWord>(row?.State, field + "/state");
        var severity = check.MaybeOneOf<StrikeSeverity>(row?.Severity, field + "/severity");
        var verdict = check.MaybeOneOf<Verdict>(row?.Verdict, field + "/verdict");
        var material = check.MaybeOneOf<PropMaterial>(row?.Material, field + "/material");
        if ((row?.Severity is null) == (row?.Verdict is null))
            check.Refuse(field, "one_subject", "give exactly one of severity and verdict: a row is about a strike or about an inspection");
        else if (row is { Verdict: "take_off", State: "in_hire" })
            check.Refuse(field + "/state", "take_off_in_hire", "a prop that has to come off before the boat moves cannot be in hire: give look_first or out");
        return new HireRow(verdict, severity, material, state);
    }

    /// <summary>A row that can never act would be taken for a rule that holds.</summary>
    private static void ThatCanAct(Check check, IReadOnlyList<HireRowSent?> sent, int i)
    {
        if (sent[i] is not { } row) return;
        if (row.Severity == "no_mark")
            check.Refuse($"/rows/{i}/severity", "never_acts", "a touch without a mark never keeps a boat, else nobody reports one: leave this row out");
        if (row.Verdict == "fit")
            check.Refuse($"/rows/{i}/verdict", "never_acts", "an inspection that says fit never keeps a boat: leave this row out");
        if (row.Material is not null && sent.Take(i).Any(r => r is { Material: null } && (r.Severity, r.Verdict) == (row.Severity, row.Verdict)))
            check.Refuse($"/rows/{i}", "never_acts", "an earlier row is about the same for any material, and the first that fits counts: put this row before it");
    }
}
