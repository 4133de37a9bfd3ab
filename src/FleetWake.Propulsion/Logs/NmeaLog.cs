using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Reads NMEA 0183. Times come from RMC, ZDA, GLL and GGA, or from the logger when it wrote when it heard each line; a
/// sentence without a time has that of the last one before it. Field numbers as in the public description of the sentences
/// that the gpsd project keeps (E. Raymond, "NMEA Revealed"; the standard itself is not public).
/// </summary>
internal sealed class NmeaLog(LogBuilder log)
{
    private const string Boat = "";

    private readonly List<(TrackSample Fix, int Line)> _rmc = [];
    private readonly List<(TrackSample Fix, int Line)> _vtg = [];
    private readonly List<double> _apart = [];
    private readonly NmeaTransducers _transducers = new(log);
    private DateTimeOffset? _date;
    private DateTimeOffset? _now;
    private TimeSpan? _timeOfDay;
    private bool _heard;

    internal void Read(IEnumerable<NumberedLine> lines)
    {
        foreach (var (number, text) in lines)
        {
            if (!log.Take()) break;
            if (text is null)
            {
                log.Drop(number, $"longer than {BoundedLines.Longest} characters");
                continue;
            }

            var (sentence, reason) = NmeaSentence.Of(text);
            if (reason is not null) log.Drop(number, reason);
            if (sentence is null) continue;
            if (!sentence.Checked) log.WithoutChecksum++;
            if (sentence.WrongTag) log.WrongTags++;
            Take(sentence, number);
        }

        // A receiver says the same speed in both; RMC brings its own time.
        foreach (var (fix, line) in _rmc.Count * 2 >= _vtg.Count ? _rmc : _vtg)
            log.Fix(Boat, fix.At, fix.Speed.Knots, fix.CourseDegrees, line);
        _transducers.End();
        SayClocks();
    }

    private void Take(NmeaSentence s, int line)
    {
        if (s.Heard is { } heard)
        {
            _heard = true;
            _now = log.Time(heard, line) ?? _now;
        }

        switch (s.Formatter)
        {
            case "RMC": Rmc(s, line); break;
            case "VTG": Vtg(s, line); break;
            case "RPM": Rpm(s, line); break;
            case "XDR": _transducers.Take(s, line, (engine, rpm) => Rate(engine, rpm, line)); break;
            case "MDA": NmeaTransducers.Weather(s, log, line); break;
            case "ZDA": Moment(s[1], LogTime.Date(s.Number(4), s.Number(3), s.Number(2)), s.Heard, line); break;
            case "GLL" when s[6] != "V": Moment(s[5], null, s.Heard, line); break;
            case "GGA": Moment(s[1], null, s.Heard, line); break;
        }
    }

    private void Rmc(NmeaSentence s, int line)
    {
        if (s[2] != "A")
        {
            log.Drop(line, "RMC whose receiver has no fix");
            return;
        }

        Moment(s[1], LogTime.NmeaDate(s[9]), s.Heard, line);
        if (s.Number(7) is { } knots) Fix(_rmc, knots, s.Number(8), line);
        else if (s[7].Length > 0) log.Drop(line, $"RMC with the speed \"{s[7]}\"");
    }

    private void Vtg(NmeaSentence s, int line)
    {
        // Each number is told by the letter behind it.
        double? course = null, knots = null;
        for (var i = 1; i + 1 < s.Fields.Length; i += 2)
        {
            if (s[i + 1] == "T") course = s.Number(i);
            else if (s[i + 1] == "N") knots = s.Number(i);
            else if (s[i + 1] == "K" && knots is null && s.Number(i) is { } kmh) knots = Speed.FromKilometresPerHour(kmh).Knots;
        }

        if (knots is { } v) Fix(_vtg, v, course, line);
        else log.Drop(line, "VTG without a speed");
    }

    private void Rpm(NmeaSentence s, int line)
    {
        log.SawRpm |= s[3].Length > 0;
        if (s[5] != "A") log.Drop(line, "RPM that is not marked as valid");
        else if (s.Number(3) is not { } rpm) log.Drop(line, $"RPM with the rate \"{s[3]}\"");
        else if (s[1] == "E") Rate(s[2], rpm, line);
        else if (s[1] != "S") log.Drop(line, $"RPM of \"{s[1]}\", which is neither engine nor shaft");
        else if (log.Options.Gear is not { } gear) log.Drop(line, "RPM of the shaft, and no gear ratio to bring it to the engine");
        else if (Plausible.Rpm(rpm) is { } reason) log.Drop(line, reason);
        else
        {
            log.Say(LogNoticeKind.ShaftRates, "rates of the prop shaft were brought to the engine by the gear ratio");
            Rate($"shaft {s[2]}", PropRate.FromRevolutionsPerMinute(rpm).AtEngine(gear).RevolutionsPerMinute, line);
        }
    }

    private void Rate(string engine, double rpm, int line)
    {
        if (_now is { } now) log.Rate(Boat, engine, now, rpm, line);
        else log.Drop(line, "a rate before any time");
    }

    private void Fix(List<(TrackSample Fix, int Line)> to, double knots, double? course, int line)
    {
        log.SawSpeed = true;
        if (_now is not { } now) log.Drop(line, "a speed before any time");
        else if (Plausible.Knots(knots) is { } reason) log.Drop(line, reason);
        else to.Add((new TrackSample(now, Speed.FromKnots(knots), course), line));
    }

    /// <summary>Takes the time of a receiver, unless the logger tells its own.</summary>
    private void Moment(string field, DateTimeOffset? date, DateTimeOffset? heard, int line)
    {
        if (LogTime.Nmea(field) is not { } time) return;
        if (date is not null) _date = date;
        else if (_date is not null && _timeOfDay - time > TimeSpan.FromHours(12)) _date += TimeSpan.FromDays(1); // past midnight
        if (_date is null)
        {
            log.Say(LogNoticeKind.NoDate, "no date was logged; times count from midnight");
            _date = DateTimeOffset.UnixEpoch;
        }

        _timeOfDay = time;
        var moment = _date.Value + time;
        if (heard is { } own) _apart.Add((own - moment).TotalSeconds);
        if (!_heard) _now = log.Time(moment, line) ?? _now;
    }

    private void SayClocks()
    {
        if (_apart.Count == 0) return;
        var apart = Sorted.Median(_apart.ToArray());
        if (Math.Abs(apart) > 2) // a serial line and a buffer may take a second
            log.Say(LogNoticeKind.ClocksDiffer, string.Create(
                CultureInfo.InvariantCulture, $"the logger's clock is {apart:+0;-0} s from the receiver's; the logger's was kept"));
    }
}
