namespace FleetWake.Demo;

/// <summary>
/// Two years of a hire fleet's record, for showing the program at work.
/// ALL OF IT IS INVENTED: the operator, the place, its docks, boats, people, engine models, props and every reading.
/// Sizes are plausible, not measured; nothing here is evidence about any real engine or propeller.
/// Pure: the same day gives the same record, to the last digit.
/// </summary>
public static class InventedFleet
{
    /// <summary>The operator, who does not exist.</summary>
    public const string OperatorName = "Skerry Bay Hire";

    /// <summary>Writes the record as it stands on the morning of <paramref name="today"/>: nothing in it happened later than the evening before.</summary>
    /// <param name="today">The dock's date of the showing.</param>
    public static InventedRecord Write(DateOnly today)
    {
        var log = new Notebook(new DockCalendar(today));
        foreach (var story in Story.All) story.Tell(log);
        foreach (var boat in Fleet.All.Where(b => !Story.TellsYearsOf(b)))
            Usual.Years(log, Life.Healthy(log, boat));
        return new InventedRecord(OperatorName, DockCalendar.ZoneName, Outbox.Batches(log), Fleet.All.Count, Refusals.Of(log.Days));
    }
}
