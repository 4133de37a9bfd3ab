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
        var facts = new List<IFact>();
        foreach (var kind in Enum.GetValues<AlarmKind>())
        {
            var (episodes, open) = Episodes(told, kind);
            var now = Is(mounting, kind);
            var last = open && kind == AlarmKind.Drift ? LastRaised(told, kind) : null;
            // Work on the prop may have answered the open alarm and a new one have come since, both seen only now.
            var answered = last is not null && mounting.Watch?.Answered > last.Answered;
            // What the fleet shows moves from night to night: that alone lifts no alarm that its own trials raised.
            var stands = last is not null && !answered && mounting.Trials.Any(t => t.Entry == last.Trial && t.SetAside is null);
            if (open && !stands && (!now || answered)) facts.Add(Lifted(finding, mounting.Mounting, kind, episodes, at));
            if (now && (!open || answered)) facts.Add(Raised(finding, position, mounting, kind, episodes + 1, at));
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
            .Select(k => Lifted(finding, mounting, k.Kind, k.Told.Count, at)),
    ];

    private static bool Is(MountingFinding mounting, AlarmKind kind) => kind switch
    {
        AlarmKind.AboveBand => mounting.Band.State == BandState.AboveTop,
        AlarmKind.BelowBand => mounting.Band.State == BandState.BelowBottom,
        _ => mounting.Watch?.RaisedAt is not null,
    };

    private static AlarmRaised Raised(BoatFinding finding, PositionFinding position, MountingFinding mounting, AlarmKind kind, int episode, DateTimeOffset at)
    {
        var raised = new AlarmRaised(
            Stamp(mounting.Mounting, kind, episode, "raised", finding, at), finding.Boat, position.Position, mounting.Mounting, kind, episode,
            (kind == AlarmKind.Drift ? mounting.LevelRpm?.Value : null) ?? mounting.Band.PresentRpm ?? 0);
        return kind == AlarmKind.Drift && mounting.Watch is { } watch
            ? raised with { EvidenceToOne = watch.RaisedEvidenceToOne, AlarmAtToOne = watch.AlarmAtToOne, FalseAlarmsPerBoatYear = watch.FalseAlarmsPerBoatYear, Trial = watch.RaisedAt, Answered = watch.Answered, PriorNumber = finding.PriorNumber }
            : raised;
    }

    private static AlarmLifted Lifted(BoatFinding finding, string mounting, AlarmKind kind, int episode, DateTimeOffset at) =>
        new(Stamp(mounting, kind, episode, "lifted", finding, at), mounting, kind, episode);

    private static AlarmRaised? LastRaised(FactLog told, AlarmKind kind) => told.Facts.OfType<AlarmRaised>().Where(a => a.Kind == kind).MaxBy(a => a.Episode);

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
