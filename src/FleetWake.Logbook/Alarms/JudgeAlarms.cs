using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Alarms;

/// <summary>Holds a mounting's finding against its open alarms. Pure: the same finding judged twice says nothing new.</summary>
public static class JudgeAlarms
{
    /// <summary>Alarms to raise and to lift.</summary>
    /// <param name="finding">The boat's finding.</param>
    /// <param name="position">The position with the mounting.</param>
    /// <param name="told">The mounting's alarm log.</param>
    /// <param name="at">Time of the finding.</param>
    public static IReadOnlyList<IFact> Of(BoatFinding finding, PositionFinding position, FactLog told, DateTimeOffset at)
    {
        if (position.Mounting is not { } mounting) return [];
        var now = mounting.Band.State switch
        {
            BandState.AboveTop => AlarmKind.AboveBand,
            BandState.BelowBottom => AlarmKind.BelowBand,
            _ => (AlarmKind?)null,
        };
        var facts = new List<IFact>();
        foreach (var kind in Enum.GetValues<AlarmKind>())
        {
            var (episodes, open) = Episodes(told, kind);
            if (now == kind && !open)
                facts.Add(new AlarmRaised(Stamp(mounting.Mounting, kind, episodes + 1, "raised", finding, at), finding.Boat, position.Position, mounting.Mounting, kind, episodes + 1, mounting.Band.PresentRpm!.Value));
            else if (now != kind && open)
                facts.Add(new AlarmLifted(Stamp(mounting.Mounting, kind, episodes, "lifted", finding, at), mounting.Mounting, kind, episodes));
        }

        return facts;
    }

    /// <summary>Alarms to lift because the mounting is over.</summary>
    /// <param name="finding">The boat's finding.</param>
    /// <param name="mounting">Id of the mounting.</param>
    /// <param name="told">The mounting's alarm log.</param>
    /// <param name="at">Time of the finding.</param>
    public static IReadOnlyList<IFact> Ended(BoatFinding finding, string mounting, FactLog told, DateTimeOffset at) =>
    [
        .. Enum.GetValues<AlarmKind>().Select(k => (Kind: k, Told: Episodes(told, k))).Where(k => k.Told.Open)
            .Select(k => new AlarmLifted(Stamp(mounting, k.Kind, k.Told.Count, "lifted", finding, at), mounting, k.Kind, k.Told.Count)),
    ];

    private static (int Count, bool Open) Episodes(FactLog told, AlarmKind kind)
    {
        var raised = told.Facts.OfType<AlarmRaised>().Count(a => a.Kind == kind);
        return (raised, raised > told.Facts.OfType<AlarmLifted>().Count(a => a.Kind == kind));
    }

    private static Entry Stamp(string mounting, AlarmKind kind, int episode, string what, BoatFinding finding, DateTimeOffset at)
    {
        var id = new Guid(SHA256.HashData(Encoding.UTF8.GetBytes($"{mounting}/{kind}/{episode}/{what}")).AsSpan(0, 16));
        return new Entry(id, "fleetwake", "worker", episode, at, finding.Registered?.DockZone ?? "UTC", at, at, 0, null);
    }
}
