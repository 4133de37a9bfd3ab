using System.Globalization;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>Gathers what the reader of a format finds, and makes the log of it.</summary>
internal sealed class LogBuilder(LogFormat format, LogOptions options)
{
    private readonly Dictionary<(string Boat, string Engine), List<RateSample>> _rates = [];
    private readonly Dictionary<string, List<TrackSample>> _track = [];
    private readonly List<RunReading> _typed = [];
    private readonly List<DroppedLine> _dropped = [];
    private readonly List<LogNotice> _notices = [];
    private readonly AirMeans _air = new();
    private readonly LogClock _clock = new();
    private readonly List<DroppedLine> _aside = [];
    private int _droppedCount;
    private int _asideCount;

    internal LogOptions Options => options;

    internal LogFormat Format { get; set; } = format;

    /// <summary>The boat that the log says is its own; null when it does not say.</summary>
    internal string? OwnBoat { get; set; }

    internal int Lines { get; private set; }

    internal int WithoutChecksum { get; set; }

    /// <summary>TAG blocks whose checksum is wrong.</summary>
    internal int WrongTags { get; set; }

    /// <summary>Somebody typed it, so that nothing was logged and nothing is missing of a log.</summary>
    internal bool Typed { get; set; }

    /// <summary>It has rates, whether or not they could be used.</summary>
    internal bool SawRpm { get; set; }

    /// <summary>It has speeds, whether or not they could be used.</summary>
    internal bool SawSpeed { get; set; }

    internal LogTimes Times { get; set; }

    internal AirMeans Air => _air;

    /// <summary>Counts a line; false when no more are to be read.</summary>
    internal bool Take()
    {
        if (Lines >= options.MostLines)
        {
            Say(LogNoticeKind.CutShort, $"only the first {options.MostLines} lines were read");
            return false;
        }

        Lines++;
        return true;
    }

    internal void Drop(int line, string reason)
    {
        _droppedCount++;
        if (_dropped.Count < TrialLog.MostDroppedShown) _dropped.Add(new DroppedLine(line, Shown(reason)));
    }

    /// <summary>Leaves one value aside and keeps what else its line holds.</summary>
    internal void Aside(int line, string reason)
    {
        _asideCount++;
        if (_aside.Count < TrialLog.MostDroppedShown) _aside.Add(new DroppedLine(line, Shown(reason)));
    }

    /// <summary>Says something of the whole log, each kind once; but of what is left aside, columns, values and readings each have their own.</summary>
    internal void Say(LogNoticeKind kind, string detail)
    {
        if (kind == LogNoticeKind.NoDate) Times = LogTimes.TimeOfDay;
        if (!_notices.Exists(notice => notice.Kind == kind && (kind != LogNoticeKind.LeftAside || notice.Detail == detail))) _notices.Add(new LogNotice(kind, Shown(detail)));
    }

    /// <summary>The log's time for a time that a line tells; null, and the line dropped, when it is none.</summary>
    internal DateTimeOffset? Time(DateTimeOffset raw, int line)
    {
        // Before satellites gave time, or centuries ahead: a broken field and no date.
        if (raw.Year is < 1970 or > 2199)
        {
            Drop(line, $"the year {raw.Year} is outside 1970 to 2199");
            return null;
        }

        return _clock.Time(raw);
    }

    internal void Rate(string boat, string engine, DateTimeOffset at, double rpm, int line, bool alone = true)
    {
        SawRpm = true;
        if (Plausible.Rpm(rpm) is { } reason) Without(line, reason, alone);
        else Of(_rates, (boat, engine)).Add(new RateSample(at, EngineRate.FromRevolutionsPerMinute(rpm)));
    }

    internal void Fix(string boat, DateTimeOffset at, double knots, double? courseDegrees, int line, bool alone = true)
    {
        SawSpeed = true;
        if (Plausible.Knots(knots) is { } reason) Without(line, reason, alone);
        else if (courseDegrees is { } c && Plausible.Course(c) is { } no) Without(line, no, alone);
        else Of(_track, boat).Add(new TrackSample(at, Speed.FromKnots(knots), courseDegrees is { } d ? Turn.Of(d) : null));
    }

    internal void Run(RunReading run) => _typed.Add(run);

    internal TrialLog Build()
    {
        var boat = Boat();
        var rates = Engine(boat).OrderBy(sample => sample.At).ToArray();
        var track = _track.GetValueOrDefault(boat, []).OrderBy(sample => sample.At).ToArray();
        if (WithoutChecksum > 0) Say(LogNoticeKind.WithoutChecksum, $"{Count(WithoutChecksum, "sentence")} without a checksum taken as they are");
        if (WrongTags > 0) Say(LogNoticeKind.LeftAside, $"{Count(WrongTags, "TAG block")} with a wrong checksum: {(WrongTags == 1 ? "its time was" : "their times were")} not used");
        if (_asideCount > 0) Say(LogNoticeKind.LeftAside, Asides());
        if (_clock.WentBack > 0) Say(LogNoticeKind.ClockWentBack, $"the clock jumped back {Often(_clock.WentBack)}: the order of the lines was kept");
        if (_clock.JumpedAhead > 0) Say(LogNoticeKind.ClockJumpedAhead, $"the clock jumped ahead by more than a day {Often(_clock.JumpedAhead)}");
        if (_typed.Count == 0 && !Typed)
        {
            if (rates.Length == 0) Say(LogNoticeKind.NoRpm, SawRpm ? "RPM was logged, but none that could be used" : "no RPM was logged");
            if (track.Length == 0) Say(LogNoticeKind.NoSpeed, SawSpeed ? "speed was logged, but none that could be used" : "no speed was logged");
            SayGaps(rates.Length > 0 ? [.. rates.Select(sample => sample.At)] : [.. track.Select(sample => sample.At)]);
        }

        return new TrialLog(Format, rates, track, _typed, _air.State(), Lines, _dropped, _droppedCount, _notices)
        {
            LeftAside = _aside,
            LeftAsideCount = _asideCount,
            Times = Times,
        };
    }

    /// <summary>How many values were left aside, and of the first reasons as many as one sentence holds, each once.</summary>
    private string Asides()
    {
        const int room = 260; // [characters]
        var told = $"{Count(_asideCount, "value")} left aside: ";
        var shown = 0;
        foreach (var aside in _aside.DistinctBy(one => one.Reason))
        {
            var one = $"{(shown > 0 ? "; " : "")}line {aside.Line}: {aside.Reason}";
            if (shown > 0 && told.Length + one.Length > room) break;
            told += one;
            shown++;
        }

        return _asideCount > shown ? $"{told}; and {_asideCount - shown} more" : told;
    }

    private void Without(int line, string reason, bool alone)
    {
        if (alone) Drop(line, reason);
        else Aside(line, reason);
    }

    private string Boat()
    {
        var boats = _rates.Keys.Select(key => key.Boat).Concat(_track.Keys).Distinct().ToArray();
        if (boats.Length == 0) return "";
        // Other boats are heard by AIS, but only one's own engine is on the bus.
        var taken = OwnBoat is { } own && boats.Contains(own) ? own : boats
            .OrderByDescending(boat => _rates.Keys.Any(key => key.Boat == boat))
            .ThenByDescending(boat => _track.GetValueOrDefault(boat, []).Count)
            .ThenBy(boat => boat, StringComparer.Ordinal)
            .First();
        if (boats.Length > 1) Say(LogNoticeKind.SeveralBoats, $"{boats.Length} boats were logged; the one that has the engine was taken");
        return taken;
    }

    private List<RateSample> Engine(string boat)
    {
        var engines = _rates.Where(pair => pair.Key.Boat == boat).ToArray();
        if (engines.Length == 0) return [];
        var names = string.Join(", ", engines.Select(pair => pair.Key.Engine).Order(StringComparer.Ordinal).Take(8));
        if (options.Engine is { } asked)
        {
            var found = engines.FirstOrDefault(pair => pair.Key.Engine.Equals(asked, StringComparison.OrdinalIgnoreCase));
            if (found.Value is not null) return found.Value;
            Say(LogNoticeKind.SeveralEngines, $"no engine \"{asked}\" in the log, which has: {names}");
            return [];
        }

        var most = engines.OrderByDescending(pair => pair.Value.Count).ThenBy(pair => pair.Key.Engine, StringComparer.Ordinal).First();
        if (engines.Length > 1) Say(LogNoticeKind.SeveralEngines, $"engines {names} were logged; \"{most.Key.Engine}\" was taken");
        return most.Value;
    }

    private void SayGaps(DateTimeOffset[] times)
    {
        var limit = Pace.LargestStep(times);
        var gaps = times.Zip(times.Skip(1), (a, b) => b - a).Where(step => step > limit).ToArray();
        if (gaps.Length > 0)
            Say(LogNoticeKind.Gaps, string.Create(
                CultureInfo.InvariantCulture, $"{Count(gaps.Length, "gap")}, the longest of {gaps.Max().TotalSeconds:0} s"));
    }

    /// <summary>A text that may quote the log: short, and without what would move a terminal's cursor.</summary>
    private static string Shown(string text)
    {
        const int most = 300;
        var shown = new string([.. text.Take(most).Select(c => char.IsControl(c) || char.IsSurrogate(c) || c == '\uFFFD' ? '?' : c)]);
        return text.Length > most ? shown + "..." : shown;
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    private static string Often(int count) => count == 1 ? "once" : $"{count} times";

    private static List<T> Of<TKey, T>(Dictionary<TKey, List<T>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list)) lists[key] = list = [];
        return list;
    }
}
