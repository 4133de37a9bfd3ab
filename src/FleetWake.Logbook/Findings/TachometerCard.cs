using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Findings;

/// <summary>The last check of an engine's tachometer. RPM as read stays as read; RPM at reference conditions is brought right by it.</summary>
/// <param name="CheckedOn">Dock's date of the check.</param>
/// <param name="ErrorPercent">By how much it shows too much [% of the true RPM]; negative when it shows too little.</param>
public sealed record TachometerCard(DateOnly CheckedOn, double ErrorPercent)
{
    internal static TachometerCard? Of(BoatHistory history, string engine) =>
        history.EngineFacts.GetValueOrDefault(engine)?.OfType<TachometerChecked>().LastOrDefault() is { } last
            ? new TachometerCard(last.Entry.Date(), 100 * (last.ShownRpm - last.TrueRpm) / last.TrueRpm)
            : null;
}
