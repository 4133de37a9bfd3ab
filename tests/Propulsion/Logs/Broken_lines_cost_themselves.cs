using CsCheck;
using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class Broken_lines_cost_themselves
{
    private static readonly SyntheticTrial s_trial = SyntheticTrial.Make();

    private static readonly string[] s_beginnings =
    [
        "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n", "$IIRPM,E,1,", "$IIXDR,C,", @"\c:1*00\$", "$GPVTG,",
        "$GPZDA,", "{\"updates\":[{\"timestamp\":\"2026-05-04T09:00:00Z\",\"values\":[{\"path\":\"propulsion.p.revolutions\",\"value\":", "[", "{\"runs\":[{\"rpm\":",
        "<gpx><trk><trkseg><trkpt lat=\"", "<gpx>", "time,rpm,speed_kn\n2026-05-04T09:00:00Z,", "rpm,heading_deg\n", "time;rpm\n", "",
    ];

    /// <summary>Characters that a log may hold and a few that none should, half a surrogate pair among them.</summary>
    private static readonly Gen<string> s_noise = Gen.OneOf(
        Gen.String[Gen.Char["0123456789.,;*$\\!<>\"{}[]:=-+eEAN \t\n\r&'/"], 0, 60], Gen.String[0, 40], Gen.String[Gen.Char['\ud7f0', '\ue010'], 0, 5]);

    [Fact]
    public void No_text_throws() =>
        Gen.Select(Gen.OneOf(s_beginnings), s_noise, s_noise).Sample((beginning, a, b) =>
        {
            var log = Logs.Read(beginning + a + beginning + b);
            var runs = RecordedRuns.Of(log, PlateauRules.Usual, []);
            Assert.All(log.Rates, sample => Assert.True(double.IsFinite(sample.Engine.RevolutionsPerMinute)));
            Assert.All(runs.Runs, run => Assert.True(double.IsFinite(run.HeadingDegrees)));
        }, iter: 3_000);

    [Fact]
    public void No_text_throws_whatever_it_is_taken_for() =>
        Gen.Select(Gen.Enum<LogFormat>(), Gen.OneOf(s_beginnings), s_noise).Sample((format, beginning, noise) =>
            Assert.True(Logs.Read(beginning + noise, new LogOptions { Format = format }).Lines >= 0), iter: 3_000);

    public static TheoryData<string> Formats => ["nmea", "signalk", "csv"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void Lines_that_are_dropped_never_change_the_others(string format)
    {
        string[] lines = [.. (format switch { "nmea" => s_trial.Nmea(), "signalk" => s_trial.SignalK(), _ => s_trial.Csv() }).Take(80)];
        var clean = Logs.Lines(lines);
        // Each is broken in a way that its format can notice: a checksum, a brace, a number.
        string Broken(string line, int cut) => format switch
        {
            "nmea" => cut % 2 == 0 ? line[..(line.Length * (cut + 1) / 12)] + "#*00" : "garbage " + cut,
            "signalk" => line[..Math.Max(1, (line.Length - 2) * cut / 10)],
            _ => cut % 2 == 0 ? "2026-05-04T09:00:00Z,x,y,z" : "never,5400,30,40",
        };
        Gen.Select(Gen.Int[1, 78], Gen.Int[0, 9]).List[1, 5].Sample(places =>
        {
            var dirty = lines.ToList();
            foreach (var (at, cut) in places.OrderByDescending(place => place.Item1)) dirty.Insert(at, Broken(lines[at], cut));
            var log = Logs.Lines([.. dirty]);
            Assert.Equal(clean.Rates, log.Rates);
            Assert.Equal(clean.Track, log.Track);
            Assert.True(log.DroppedCount > 0);
        }, iter: 300);
    }

    [Fact]
    public void A_wrong_checksum_is_told_with_its_line_and_both_sums()
    {
        var log = Logs.Lines("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A", "$IIRPM,E,1,2418.2,10.5,A*5E");
        Assert.Equal(new DroppedLine(2, "its checksum is 5E, its characters make 5F"), Assert.Single(log.Dropped));
    }

    [Fact]
    public void A_sentence_without_a_checksum_is_taken_and_counted()
    {
        var log = Logs.Lines("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W", "$IIRPM,E,1,2418.2,10.5,A");
        Assert.Single(log.Rates);
        Assert.StartsWith("2 sentences", log.Notices.Single(notice => notice.Kind == LogNoticeKind.WithoutChecksum).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_was_cut_off_and_so_says_24_for_2418_is_not() =>
        Assert.Contains("not marked as valid", Assert.Single(Logs.Lines("$IIRPM,E,1,24").Dropped).Reason, StringComparison.Ordinal);

    [Fact]
    public void Of_many_dropped_lines_the_first_are_shown_and_all_are_counted()
    {
        var log = Logs.Lines([.. Enumerable.Repeat("$IIRPM,E,1,2418.2,10.5,A*00", 1000)]);
        Assert.Equal(1000, log.DroppedCount);
        Assert.Equal(TrialLog.MostDroppedShown, log.Dropped.Count);
    }

    [Fact]
    public void What_is_quoted_of_a_log_moves_no_cursor_and_is_short()
    {
        var log = Logs.Lines("time,rpm,\u001b[2J" + new string('x', 1000), "2026-05-04T09:00:00Z,\u001b[31m5,1");
        Assert.All(log.Notices.Select(notice => notice.Detail).Concat(log.Dropped.Select(line => line.Reason)), said =>
        {
            Assert.DoesNotContain(said, char.IsControl);
            Assert.True(said.Length <= 303);
        });
        Assert.NotEmpty(log.Dropped);
    }

    [Fact]
    public void A_line_that_never_ends_fills_no_memory()
    {
        var log = Logs.Lines("$GPRMC," + new string('1', 1 << 20), "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A");
        Assert.Contains("longer than", Assert.Single(log.Dropped).Reason, StringComparison.Ordinal);
        Assert.Single(log.Track);
    }

    [Fact]
    public void What_is_beyond_the_limit_is_not_read_and_that_is_said()
    {
        using var text = new StringReader(string.Join('\n', s_trial.Csv()));
        var log = TrialLog.Read(text, new LogOptions { MostLines = 11 });
        Assert.Equal(10, log.Rates.Count);
        Assert.True(log.Says(LogNoticeKind.CutShort));
    }
}
