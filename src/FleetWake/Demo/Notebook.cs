using FleetWake.Logbook.Entries;

namespace FleetWake.Demo;

/// <summary>A record as it was typed, before its device counted and sent it.</summary>
/// <param name="Id">Its entry id.</param>
/// <param name="Pen">Who typed it on what.</param>
/// <param name="Happened">When it happened, by a right clock.</param>
/// <param name="TypedAt">When it was typed, by a right clock.</param>
/// <param name="Amends">The entry it replaces.</param>
/// <param name="Make">Makes the record from its stamp.</param>
internal sealed record Typed(Guid Id, Pen Pen, DateTimeOffset Happened, DateTimeOffset TypedAt, Guid? Amends, Func<Stamp, ICommand> Make);

/// <summary>Everything that is told, in any order; the outbox puts it in order.</summary>
internal sealed class Notebook(DockCalendar days)
{
    private readonly List<Typed> written = [];
    private readonly HashSet<Guid> ids = [];
    private readonly HashSet<Guid> sentTwice = [];
    private readonly List<(string Boat, DateOnly From, DateOnly Until)> ashore = [];
    private readonly List<(string Engine, DateTimeOffset At, double Ran)> newMeters = [];

    public DockCalendar Days { get; } = days;

    public IReadOnlyList<Typed> Written => written;

    /// <summary>Records whose answer was lost on the way, so that the phone sent them again.</summary>
    public IReadOnlySet<Guid> SentTwice => sentTwice;

    /// <summary>Writes one record and returns its entry id.</summary>
    /// <param name="pen">Who types it on what.</param>
    /// <param name="happened">When it happened.</param>
    /// <param name="about">What it is about; with the time it makes the entry id.</param>
    /// <param name="make">Makes the record from its stamp.</param>
    /// <param name="typed">When it was typed; at once when not given.</param>
    /// <param name="amends">The entry it replaces.</param>
    public Guid Write(
        Pen pen, DateTimeOffset happened, string about, Func<Stamp, ICommand> make, DateTimeOffset? typed = null, Guid? amends = null)
    {
        var typedAt = typed ?? happened;
        var key = $"{about} {DockCalendar.Text(happened)} {DockCalendar.Text(typedAt)}";
        while (!ids.Add(EntryId.Of(key))) key += " again";
        if (typedAt > Days.LastEvening || happened > typedAt) throw new InvalidOperationException($"Out of time: {about} at {happened}, typed {typedAt}.");
        var id = EntryId.Of(key);
        written.Add(new Typed(id, pen, happened, typedAt, amends, make));
        return id;
    }

    /// <summary>The phone sends this record once more with its next batch.</summary>
    public void SendTwice(Guid id) => sentTwice.Add(id);

    /// <summary>The boat does not run from one day to another: its rounds stop, and so do its hours.</summary>
    public void KeepAshore(BoatLine boat, DateOnly from, DateOnly until) => ashore.Add((boat.Id, from, until));

    /// <summary>Whether it lies ashore on a day.</summary>
    public bool IsAshore(BoatLine boat, DateOnly day) => ashore.Any(a => a.Boat == boat.Id && a.From <= day && day < a.Until);

    /// <summary>The engine gets a new hour meter, which begins at zero.</summary>
    public void ReplaceMeter(BoatLine boat, string position, DateTimeOffset at) => newMeters.Add((boat.Engine(position), at, Ran(boat, position, at)));

    /// <summary>What the hour meter shows [h].</summary>
    public double Meter(BoatLine boat, string position, DateTimeOffset at) => Math.Round(
        Ran(boat, position, at) - newMeters.Where(m => m.Engine == boat.Engine(position) && m.At <= at).Sum(m => m.Ran), 1);

    /// <summary>What its engine has run, whatever the meter shows [h].</summary>
    public double Ran(BoatLine boat, string position, DateTimeOffset at)
    {
        var start = boat.HoursAtStart + (position == "starboard" ? 3.4 : 0);
        var missed = ashore.Where(a => a.Boat == boat.Id)
            .Sum(a => Season.Hours(boat.YearHours, DockCalendar.At(a.From, 0, 0), Earlier(at, DockCalendar.At(a.Until, 0, 0))));
        return Math.Round(start + Season.Hours(boat.YearHours, DockCalendar.At(Days.Start, 0, 0), at) - missed, 1);
    }

    private static DateTimeOffset Earlier(DateTimeOffset one, DateTimeOffset other) => one < other ? one : other;
}
