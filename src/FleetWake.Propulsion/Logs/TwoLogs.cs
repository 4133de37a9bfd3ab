using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Lays a log of RPM over one of speed, as when the engine's display and a telephone each recorded the trial by its own
/// clock. The offset between the clocks is that at which speed follows RPM best.
/// </summary>
public static class TwoLogs
{
    /// <summary>Correlation of speed and RPM below which two logs are not of one trial [1]. Common practice, no source.</summary>
    public const double LeastCorrelation = 0.8;

    /// <summary>
    /// An offset within this [s] is what the boat's own lag behind its engine makes: the clocks agree. Common practice, no source.
    /// </summary>
    private const double Lag = 10;

    private const int MostSeconds = 6 * 3600;

    /// <summary>The speeds of one log with the rates of another, by the clock of the first.</summary>
    /// <param name="track">The log whose speeds are taken.</param>
    /// <param name="rates">The log whose rates are taken.</param>
    /// <returns>
    /// The first log with the rates of the second and a notice of the offset that was taken out. A boat's speed comes up some
    /// seconds after its RPM, so that the offset is good to those; a steady run does not mind. Where speed does not follow
    /// RPM at any offset, or a log is longer than six hours, the clocks are believed and the notice says so.
    /// </returns>
    public static TrialLog Join(TrialLog track, TrialLog rates)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(rates);
        if (track.Track.Count < 2 || rates.Rates.Count < 2)
            return With(track, rates, 0, "one of the two logs has hardly a reading; their clocks were believed");

        var v = new Grid([.. track.Track.Select(s => (s.At, s.Speed.Knots))]);
        var n = new Grid([.. rates.Rates.Select(s => (s.At, s.Engine.RevolutionsPerMinute))]);
        if (v.Values.Length > MostSeconds || n.Values.Length > MostSeconds)
            return With(track, rates, 0, "a log of more than six hours is not searched for an offset; the clocks were believed");

        var best = (Shift: 0, Correlation: double.NegativeInfinity);
        var least = Math.Max(30, (int)(0.7 * Math.Min(v.Values.Length, n.Values.Length)));
        for (var shift = least - n.Values.Length; shift <= v.Values.Length - least; shift++)
        {
            var r = Correlation(v.Values, n.Values, shift);
            if (r > best.Correlation) best = (shift, r);
        }

        var undated = Undated(track, rates);
        if (best.Correlation < LeastCorrelation)
            return With(track, rates, 0, "the speed of one log does not follow the RPM of the other; "
                + (undated is null ? "their clocks were believed" : $"and as the times of {undated} carry no date, the two could not be laid over each other"));

        // The shift is where the first second of the rates falls on the grid of the track.
        var offset = best.Shift - (n.Start - v.Start).TotalSeconds; // [s] to be added to the rates' times
        if (undated is not null) return With(track, rates, offset, $"the times of {undated} carry no date; the logs were laid over each other by the speed");
        if (Math.Abs(offset) <= Lag) return With(track, rates, 0, "the two clocks agree");
        return With(track, rates, offset, string.Create(
            CultureInfo.InvariantCulture, $"the clock of the RPM log was {-offset:+0;-0;0} s from that of the other, which was taken out"));
    }

    /// <summary>Which of the logs has times that say nothing about when; null when both clocks tell the same kind of time.</summary>
    private static string? Undated(TrialLog track, TrialLog rates) => (track.Times, rates.Times) switch
    {
        var (v, n) when v == n && v != LogTimes.SecondsOnly => null,
        (LogTimes.DateAndTime, _) => "the RPM log",
        (_, LogTimes.DateAndTime) => "the log of the speed",
        _ => "both logs",
    };

    private static TrialLog With(TrialLog track, TrialLog rates, double offset, string detail) => track with
    {
        Rates = [.. rates.Rates.Select(sample => sample with { At = sample.At.AddSeconds(offset) })],
        Air = track.Air ?? rates.Air,
        Notices =
        [
            .. track.Notices.Concat(rates.Notices).Where(notice => notice.Kind is not (LogNoticeKind.NoRpm or LogNoticeKind.NoSpeed)),
            new LogNotice(LogNoticeKind.LogsJoined, detail),
        ],
    };

    /// <summary>Pearson's correlation where both have a value; none when they overlap too little or one never changes.</summary>
    private static double Correlation(double[] v, double[] n, int shift)
    {
        var from = Math.Max(0, shift);
        var to = Math.Min(v.Length, n.Length + shift);
        double count = 0, sv = 0, sn = 0, svv = 0, snn = 0, svn = 0;
        for (var i = from; i < to; i++)
        {
            var (a, b) = (v[i], n[i - shift]);
            if (double.IsNaN(a) || double.IsNaN(b)) continue;
            count++;
            sv += a;
            sn += b;
            svv += a * a;
            snn += b * b;
            svn += a * b;
        }

        if (count < 30) return double.NegativeInfinity;
        var (cv, cn) = (svv - (sv * sv / count), snn - (sn * sn / count));
        // Sums of squares of thousands of revolutions leave rounding where nothing changes.
        return cv > 1e-9 * svv && cn > 1e-9 * snn ? (svn - (sv * sn / count)) / Math.Sqrt(cv * cn) : double.NegativeInfinity;
    }

    /// <summary>Readings second by second; no value where none is near, which no caller sees.</summary>
    private sealed class Grid
    {
        private const double Held = 5; // [s] a reading stands for at most so long

        internal Grid((DateTimeOffset At, double Value)[] readings)
        {
            Start = readings[0].At;
            var length = (int)Math.Min(MostSeconds + 1, (readings[^1].At - Start).TotalSeconds + 1);
            Values = new double[length];
            var k = 0;
            for (var i = 0; i < length; i++)
            {
                while (k + 1 < readings.Length && (readings[k + 1].At - Start).TotalSeconds <= i) k++;
                Values[i] = i - (readings[k].At - Start).TotalSeconds <= Held ? readings[k].Value : double.NaN;
            }
        }

        internal DateTimeOffset Start { get; }

        internal double[] Values { get; }
    }
}
