using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop was worked on, at a shop or at the dock. What it showed before no longer stands for it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Work">What was done to it.</param>
/// <param name="PitchAfterInches">Pitch after [in], when it was measured or changed.</param>
[StoredAs("prop_repaired", 1)]
public sealed record PropRepaired(Entry Entry, string Prop, IReadOnlyList<RepairWork> Work, double? PitchAfterInches) : IFact;

/// <summary>What is done to a prop.</summary>
public enum RepairWork
{
    /// <summary>Blades straightened.</summary>
    Straightened,

    /// <summary>Missing metal welded on.</summary>
    Welded,

    /// <summary>Blades polished.</summary>
    Polished,

    /// <summary>Balanced.</summary>
    Balanced,

    /// <summary>Nicks dressed out of an edge.</summary>
    EdgeDressed,
}

/// <summary>Records work on a prop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Work">What was done to it.</param>
/// <param name="PitchAfterInches">Pitch after [in].</param>
public sealed record RepairProp(
    Stamp? Entry,
    string? Prop,
    [property: OneOf(typeof(RepairWork))] IReadOnlyList<string>? Work,
    double? PitchAfterInches = null) : ICommand<RepairProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_repaired";

    /// <inheritdoc/>
    public static RepairProp Example => new(Examples.At(205, "2026-06-20T16:10:00"), Examples.Prop, ["edge_dressed", "balanced"]);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop was straightened, welded, polished, balanced or dressed.";

    /// <inheritdoc/>
    public static Decision Decide(RepairProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var named = check.List(command.Work, "/work", 1, 5);
        var work = named.Select((word, i) => check.OneOf<RepairWork>(word, $"/work/{i}")).ToList();
        check.Once(named, "/work", "name each piece of work once");
        var pitch = check.Maybe(command.PitchAfterInches, "/pitchAfterInches", 3, 40, "in");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropRepaired(entry!, prop, work, pitch))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
