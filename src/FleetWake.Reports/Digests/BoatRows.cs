using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>Where every engine with a trial stands: a row for those that drift or stand near an edge, a sentence for the many that do not.</summary>
internal static class BoatRows
{
    /// <summary>Nearer to an edge than this a boat is told of although nothing is forecast [RPM]; judgement, a step or two of a usual gauge.</summary>
    public const int NearRpm = 50;

    /// <summary>Likelier to leave its band within the next 100 engine hours than this a boat is told of [1]; judgement.</summary>
    private const double LeastChance = 0.05;

    private const int MostNames = 8;

    /// <summary>The rows, smallest margin first, without the boats that a decision tells of.</summary>
    public static IReadOnlyList<BoatRow> Of(IReadOnlyList<BoatFinding> findings, IReadOnlySet<string> decided, WearNews news) =>
        [.. Standing(findings).Where(s => !decided.Contains(s.Finding.Boat) && Tells(s)).Select(s => Row(s, news))];

    /// <summary>The others in a sentence; null when there is none.</summary>
    public static string? Others(IReadOnlyList<BoatFinding> findings, IReadOnlySet<string> decided)
    {
        var others = Standing(findings).Where(s => !decided.Contains(s.Finding.Boat) && !Tells(s)).ToList();
        if (others.Count == 0) return null;
        var known = others.Where(s => s.Standing.MarginRpm is not null).ToList();
        var unlike = known.Where(s => s.Position.Mounting is { Trials.Count: > 0, FleetOnly: true }).ToList();
        var nearest = known.Count == 0 ? "" : $"; the nearest to an edge is {Phrases.Name(known[0].Finding, known[0].Position)} with {known[0].Standing.MarginRpm:0} RPM";
        var fleets = unlike.Count == 0 ? "" : $" Of {(unlike.Count == 1 ? "one" : $"{unlike.Count}")} the trials say next to nothing of a drift yet.";
        var unknown = others.Count == known.Count ? "" : $" Of {Phrases.Count(others.Count - known.Count, "engine")} the trials do not tell where in the band: no band on record, or no wide-open reading.";
        return known.Count == 0 ? unknown.TrimStart() : $"{Phrases.Count(known.Count, "engine")} {(known.Count == 1 ? "is" : "are")} inside the band without a drift alarm{nearest}.{fleets}{unknown}";
    }

    /// <summary>Engines that run without a trial, by name; null when there is none. What has no engine or no prop is told of elsewhere.</summary>
    public static string? WithoutTrials(IReadOnlyList<BoatFinding> findings)
    {
        var names = findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .SelectMany(f => f.Positions.Where(p => p is { NotOnBoat: false, Engine: not null, Mounting.Trials.Count: 0 }).Select(p => Phrases.Name(f, p))).ToList();
        return names.Count == 0 ? null : $"No trial of the present prop yet, so nothing is said of the RPM: {string.Join(", ", names.Take(MostNames))}{(names.Count > MostNames ? $" and {names.Count - MostNames} more" : "")}.";
    }

    private static IEnumerable<(BoatFinding Finding, PositionFinding Position, Standing Standing)> Standing(IReadOnlyList<BoatFinding> findings) =>
        findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .SelectMany(f => f.Positions.Where(p => p.Mounting is { Trials.Count: > 0 }).Select(p => (Finding: f, Position: p, Standing: Standings.Of(p))))
            .OrderBy(r => r.Standing.MarginRpm ?? double.MaxValue);

    private static bool Tells((BoatFinding Finding, PositionFinding Position, Standing Standing) of) =>
        of.Standing.Outside || of.Standing.MarginRpm < NearRpm || of.Position.Mounting!.Watch?.RaisedOn is not null || of.Position.Mounting.Exit.Within100HoursChance >= LeastChance;

    private static BoatRow Row((BoatFinding Finding, PositionFinding Position, Standing Standing) of, WearNews news)
    {
        var (mounting, engine) = (of.Position.Mounting!, of.Position.Engine);
        return new BoatRow(
            Phrases.Name(of.Finding, of.Position),
            of.Standing.Sign,
            of.Standing.Word,
            of.Standing.Outside,
            of.Standing.LeastRpm is { } rpm && engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? Standings.Place(rpm, low, high) : "margin not known",
            mounting switch { { Drift: null } => "", { FleetOnly: true } => "drift mostly what its fleet makes likely", { Drift: { } d } => $"{d.Value:+0;-0;0} RPM per 100 h ({d.Low:+0;-0;0} to {d.High:+0;-0;0})" },
            mounting.Exit.State == BandExitState.Forecast ? Phrases.Outlook(mounting.Exit) ?? "" : "",
            mounting.Watch?.RaisedOn is { } on ? $"drift alarm since {on:yyyy-MM-dd}" : "",
            news.BoatLink(of.Finding.Boat));
    }
}
