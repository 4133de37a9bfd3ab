using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>
/// How far each prop's RPM and slip have moved since its baseline. The two together tell groups of causes apart, which neither
/// does alone; within a group they do not, and a place on the map is no proof.
/// </summary>
/// <param name="Title">What it is of.</param>
/// <param name="Statement">Who moved beyond the doubt of the readings, and which way.</param>
/// <param name="Marks">One a mounting with two trials that can be compared.</param>
/// <param name="ReachPercent">Half the width: change of RPM [%].</param>
/// <param name="ReachPoints">Half the height: change of slip [percentage points].</param>
public sealed record SlipMap(string Title, string Statement, IReadOnlyList<SlipMark> Marks, double ReachPercent, double ReachPoints) : Picture(Title, Statement)
{
    /// <summary>
    /// Below this many points of slip for each per cent of RPM lost, power is missing or blades are rough; above it, the hull is
    /// held back. By our own balance of prop, hull and engine at 5 to 30 % slip (0.1 to 0.45 against 0.45 to 2.3); no published source.
    /// </summary>
    public const double HullSlope = 0.45;

    private const double Deviations = 1.2816; // of an 80 % interval
    private const double TrialShare = 0.007; // one trial's scatter about its level [1], what the drift estimator recommends: gauge and runs are only part of it
    private const double UnknownSlipPoints = 1.5; // the same of its slip, where nothing else is known [percentage points]; judgement
    private const double Absurd = 40; // [%], [points]: beyond it a reading is wrong, and one must not flatten the others
    private const double MostRpm = 20_000; // beyond any outboard's [RPM]
    private const int MostNames = 5;

    /// <summary>The map of some boats; null where no mounting has two trials of one stretch with a slip each.</summary>
    /// <param name="findings">The boats, in any order.</param>
    /// <param name="of">Whose they are, as a title has it.</param>
    public static SlipMap? Of(IReadOnlyList<BoatFinding> findings, string of)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(of);
        var marks = findings.Where(f => f.Retired is null).SelectMany(f => f.Positions.Select(p => Mark(f, p))).OfType<SlipMark>()
            .OrderByDescending(m => m.Sure).ThenByDescending(m => Math.Abs(m.RpmPercent)).ThenBy(m => m.Name, StringComparer.Ordinal).ToList();
        if (marks.Count == 0) return null;
        var (across, up) = (marks.Max(m => Math.Abs(m.RpmPercent) + m.RpmHalf), marks.Max(m => Math.Abs(m.SlipPoints) + m.SlipHalf));
        return new SlipMap($"{Fitting.Name(Phrases.Plain(of))}: RPM and slip since the baseline", Sentence(marks), marks, Math.Clamp(1.15 * across, 3, Absurd), Math.Clamp(1.15 * up, 5, Absurd));
    }

    /// <summary>Which part of the map a change lies in.</summary>
    /// <param name="rpmPercent">Change of RPM [%].</param>
    /// <param name="slipPoints">Change of slip [percentage points].</param>
    public static SlipRegion RegionOf(double rpmPercent, double slipPoints) =>
        rpmPercent >= 0 ? slipPoints >= 0 ? SlipRegion.PropLetsGo : SlipRegion.LessToPush
        : slipPoints > -HullSlope * rpmPercent ? SlipRegion.MoreToPush
        : SlipRegion.LessPower;

    private static SlipMark? Mark(BoatFinding finding, PositionFinding position)
    {
        if (position.Mounting is not { } mounting || mounting.Trials.Count == 0) return null;
        var present = mounting.Trials.Max(t => t.Stretch);
        var told = mounting.Trials.Where(t => t is { SetAside: null, SlipPercent: not null } && t.Stretch == present && !(t.GrossChance > 0.5)).ToList();
        if (told.Count < 2) return null;
        var (first, last) = (told[0], told[^1]);
        var (before, now) = (first.LineRpm(mounting.AtReference), last.LineRpm(mounting.AtReference));
        if (!(before is > 0 and < MostRpm && now is > 0 and < MostRpm)) return null;
        var (rpm, slip) = (100 * ((now / before) - 1), last.SlipPercent!.Value - first.SlipPercent!.Value);
        if (!(Math.Abs(rpm) <= Absurd && Math.Abs(slip) <= Absurd)) return null;
        static double Both(double a, double b) => Deviations * Math.Sqrt((a * a) + (b * b));
        var rpmHalf = 100 * Both(Math.Max(first.RpmSd / before ?? 0, TrialShare), Math.Max(last.RpmSd / now ?? 0, TrialShare));
        var slipHalf = Math.Max(0.5, Both(first.SlipSdPercent ?? UnknownSlipPoints, last.SlipSdPercent ?? UnknownSlipPoints));
        return new SlipMark(Phrases.Name(finding, position), rpm, slip, Math.Min(rpmHalf, Absurd), Math.Min(slipHalf, Absurd), told.Count);
    }

    private static string Sentence(List<SlipMark> marks)
    {
        var sure = marks.Where(m => m.Sure).ToList();
        var rest = marks.Count - sure.Count;
        if (sure.Count == 0)
            return $"Of {Phrases.Count(marks.Count, "prop")} with two trials that can be compared none has moved beyond the doubt of its readings. That does not mean sound: lost pitch and rough blades can cancel.";
        var groups = sure.GroupBy(m => RegionOf(m.RpmPercent, m.SlipPoints)).OrderBy(g => g.Key)
            .Select(g => $"{Group(g.Key)}: {Fitting.List([.. g.Select(m => $"{Fitting.Name(m.Name)} ({m.RpmPercent:+0.0;-0.0} % RPM, {m.SlipPoints:+0.0;-0.0;0.0} points of slip)")], MostNames)}");
        var still = rest == 0 ? "" : $" {(rest == 1 ? "One other has" : $"{rest} others have")} not moved beyond the doubt of the readings.";
        return $"Since the baseline {string.Join("; ", groups)}.{still} A place on the map is no proof of a cause.";
    }

    private static string Group(SlipRegion region) => region switch
    {
        SlipRegion.PropLetsGo => "faster with more slip, as with a worn prop, a slipping hub or ventilation",
        SlipRegion.LessToPush => "faster with less slip, as with a lighter load",
        SlipRegion.MoreToPush => "slower with more slip, as with load or growth on the hull",
        _ => "slower with about the same slip, as with a weak engine or rough blades",
    };
}

/// <summary>A mounting on the map.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="RpmPercent">Change of RPM from the first to the last trial of the present stretch [%].</param>
/// <param name="SlipPoints">Change of slip [percentage points].</param>
/// <param name="RpmHalf">Half the 80 % interval of the first [%].</param>
/// <param name="SlipHalf">The same of the second [percentage points].</param>
/// <param name="Trials">How many trials the stretch has.</param>
public sealed record SlipMark(string Name, double RpmPercent, double SlipPoints, double RpmHalf, double SlipHalf, int Trials)
{
    private const double Enough = 2 / 1.2816; // halves of an 80 % interval that make two standard deviations

    /// <summary>
    /// Its RPM moved by more than two standard deviations: of a large fleet one in five would lie beyond its 80 % interval by
    /// chance. Slip alone may be a misread speed.
    /// </summary>
    public bool Sure => Math.Abs(RpmPercent) > Enough * RpmHalf;
}

/// <summary>Parts of the map, each with a group of causes that end up there.</summary>
public enum SlipRegion
{
    /// <summary>Faster, more slip: worn blades, lost cup, worn tips, a slipping hub, ventilation.</summary>
    PropLetsGo,

    /// <summary>Faster, less slip: a lighter load.</summary>
    LessToPush,

    /// <summary>Slower, more slip: load, growth on the hull.</summary>
    MoreToPush,

    /// <summary>Slower, about the same slip: a weak engine, rough or bent blades.</summary>
    LessPower,
}
