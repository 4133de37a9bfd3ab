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
        foreach (var read in engineFacts.OfType<HoursRead>()) yield return new MeterPoint(read.Entry, read.Hours);
        foreach (var serviced in engineFacts.OfType<EngineServiced>())
        {
            if (serviced.Hours is { } hours) yield return new MeterPoint(serviced.Entry, hours);
        }

        foreach (var span in spans.Where(s => s.Engine == engine))
        {
            foreach (var fact in boatFacts[span.Boat].Where(f => span.Holds(f.Entry)))
            {
                if (HoursIn(fact, span.Position) is { } hours) yield return new MeterPoint(fact.Entry, hours);
            }
        }
    }

    private static double? HoursIn(IFact fact, Position position) => fact switch
    {
        IMetered metered when metered.Position == position => metered.Hours,
        DutyDone done when done.Position == position => done.Hours,
        TrialRun trial => trial.Meters.FirstOrDefault(m => m.Position == position)?.Hours,
        _ => null,
    };
}
