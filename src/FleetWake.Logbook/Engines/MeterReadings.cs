using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Engines;

/// <summary>Gathers an engine's hour-meter readings: those on its own log, and those typed with something done on a boat it hung on.</summary>
public static class MeterReadings
{
    /// <summary>Every reading of an engine.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="engineFacts">The facts of its own log that count.</param>
    /// <param name="spans">Where it hung.</param>
    /// <param name="boatFacts">The facts that count of each boat it hung on, by boat id.</param>
    public static IEnumerable<MeterPoint> Of(
        string engine,
        IEnumerable<IFact> engineFacts,
        IEnumerable<EngineSpan> spans,
        IReadOnlyDictionary<string, IReadOnlyList<IFact>> boatFacts)
    {
        foreach (var fact in engineFacts)
        {
            if ((fact switch { HoursRead read => read.Hours, EngineServiced serviced => serviced.Hours, _ => null }) is { } hours)
                yield return new MeterPoint(fact.Entry, hours);
        }

        foreach (var span in spans.Where(s => s.Engine == engine))
        {
            foreach (var fact in boatFacts[span.Boat])
            {
                if (HoursIn(fact, span) is { } hours) yield return new MeterPoint(fact.Entry, hours);
            }
        }
    }

    private static double? HoursIn(IFact fact, EngineSpan span) => fact switch
    {
        // It ends the span, so the span does not hold it; and where another engine was named, nobody knows whose meter it was.
        EngineRemoved removed => span.EndedBy(removed) && (removed.Engine ?? span.Engine) == span.Engine ? removed.Hours : null,
        _ when !span.Holds(fact.Entry) => null,
        IMetered metered when metered.Position == span.Position => metered.Hours,
        DutyDone done when done.Position == span.Position => done.Hours,
        TrialRun trial => trial.Meters.FirstOrDefault(m => m.Position == span.Position)?.Hours,
        _ => null,
    };
}
