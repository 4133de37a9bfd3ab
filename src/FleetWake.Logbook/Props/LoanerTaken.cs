using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop is somebody else's and runs here for a while, mostly while one of ours is at the shop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag of the loaner.</param>
/// <param name="Lender">Id of whom it belongs to.</param>
/// <param name="DueBackOn">Date by which they want it back.</param>
[StoredAs("loaner_taken", 1)]
public sealed record LoanerTaken(Entry Entry, string Prop, string Lender, DateOnly? DueBackOn) : IFact;

/// <summary>A loaner went back to whom it belongs to.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag of the loaner.</param>
[StoredAs("loaner_returned", 1)]
public sealed record LoanerReturned(Entry Entry, string Prop) : IFact;

/// <summary>Takes a prop on loan.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag of the loaner.</param>
/// <param name="Lender">Id of whom it belongs to.</param>
/// <param name="DueBackOn">Date by which they want it back, e.g. <c>2026-10-19</c>.</param>
public sealed record TakeLoaner(Stamp? Entry, string? Prop, string? Lender, string? DueBackOn = null) : ICommand<TakeLoaner>
{
    /// <inheritdoc/>
    public static string Kind => "loaner_taken";

    /// <inheritdoc/>
    public static TakeLoaner Example => new(Examples.At(210, "2026-10-05T09:00:00"), Examples.Prop, "fjord-props", "2026-10-19");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop is on loan from somebody, and until when.";

    /// <inheritdoc/>
    public static Decision Decide(TakeLoaner command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var lender = check.Id(command.Lender, "/lender");
        var due = check.DueDate(command.DueBackOn, entry, "/dueBackOn");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new LoanerTaken(entry!, prop, lender, due))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}

/// <summary>Gives a loaner back.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag of the loaner.</param>
public sealed record ReturnLoaner(Stamp? Entry, string? Prop) : ICommand<ReturnLoaner>
{
    /// <inheritdoc/>
    public static string Kind => "loaner_returned";

    /// <inheritdoc/>
    public static ReturnLoaner Example => new(Examples.At(211, "2026-10-19T16:00:00"), Examples.Prop);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop on loan went back to whom it belongs to.";

    /// <inheritdoc/>
    public static Decision Decide(ReturnLoaner command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new LoanerReturned(entry!, prop))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
