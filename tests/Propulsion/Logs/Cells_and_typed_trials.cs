using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class Cells_and_typed_trials
{
    [Theory]
    [InlineData("time,rpm,speed_kn,heading_deg", "2026-05-04T09:00:00Z,5480,31.2,40")]
    [InlineData("Time;RPM;Speed (kn);Heading [deg]", "2026-05-04T09:00:00Z;5480;31,2;40,0")]
    [InlineData("timestamp\trpm\tsog_kn\tcog", "1777885200\t5480\t31.2\t40")]
    [InlineData("\"time\",\"rpm\",\"speed_mph\",\"heading\"", "\"2026-05-04 09:00:00\",5480,35.90431878,40")]
    [InlineData("time,revolutions_hz,speed_kmh,course_deg", "2026-05-04T09:00:00Z,91.33333333,57.7824,400")]
    [InlineData("time,rpm,speed_ms,course_deg", "2026-05-04T11:00:00+02:00,5480,16.05066667,-320")]
    public void A_recording_is_read_in_the_units_that_its_header_names(string header, string row)
    {
        var log = Logs.Lines(header, row);
        Assert.Equal(5480, Assert.Single(log.Rates).Engine.RevolutionsPerMinute, 1e-6);
        var fix = Assert.Single(log.Track);
        Assert.Equal(31.2, fix.Speed.Knots, 1e-6);
        Assert.Equal(40, fix.CourseDegrees!.Value, 1e-9);
        Assert.Equal(new DateTimeOffset(2026, 5, 4, 9, 0, 0, TimeSpan.Zero), fix.At);
    }

    [Fact]
    public void A_column_without_its_unit_is_left_aside_and_the_notice_says_what_to_write()
    {
        var log = Logs.Lines("time,rpm,speed", "2026-05-04T09:00:00Z,5480,31.2");
        Assert.Empty(log.Track);
        Assert.Contains("speed_kn", log.Notices.Single(notice => notice.Kind == LogNoticeKind.LeftAside).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_times_each_row_is_a_run()
    {
        var log = Logs.Lines(
            "rpm,speed_kn,heading_deg,held_s,limiter,pressure_inhg,air_f,humidity_percent", "5480,31.2,40,60,,29.92,68,70", "5520,29.3,221,55,yes,29.92,68,70");
        Assert.Equal([5480, 5520], log.TypedRuns.Select(run => run.Engine.RevolutionsPerMinute));
        Assert.Equal(TimeSpan.FromSeconds(60), log.TypedRuns[0].Held);
        Assert.Equal([false, true], log.TypedRuns.Select(run => run.LimiterReached));
        Assert.Equal(1013.2, log.Air!.StationPressure!.Value.Hectopascals, 0.01);
        Assert.Equal(20, log.Air.Temperature!.Value.Celsius, 1e-9);
        Assert.Equal(0.7, log.Air.RelativeHumidityFraction!.Value, 1e-12);
    }

    [Theory]
    [InlineData("rpm,heading_deg\n5480,40\n-3,220", 3, "rpm -3 of a run is not above zero")]
    [InlineData("rpm,heading_deg\n5480,40\nNaN,220", 3, "\"NaN\" in column 1 is no number")]
    [InlineData("rpm,heading_deg\n5480,40\n,220", 3, "a run without its rpm")]
    [InlineData("rpm,speed_kn,heading_deg\n5480,31,40\n5480,-31,220", 3, "speed -31 is outside 0 to 200 kn")]
    [InlineData("rpm,heading_deg\n5480,40\n5480,", 3, "a run without its heading, which pairs it with another: write degrees 0 to 360")]
    [InlineData("rpm,heading_deg\n5480,40\n5480,220,7", 3, "3 cells below 2 names")]
    [InlineData("date;note\n5;6", 1, "no header of a trial: it needs a column rpm, or one of speed with its unit such as speed_kn")]
    [InlineData("", 1, "nothing in it")]
    public void What_cannot_be_used_is_named_with_its_line_value_and_range(string text, int line, string reason) =>
        Assert.Equal(new DroppedLine(line, reason), Assert.Single(Logs.Read(text).Dropped));

    [Fact]
    public void A_single_run_needs_no_heading() => Assert.Single(Logs.Lines("rpm,speed_kn", "5480,31.2").TypedRuns);

    [Fact]
    public void A_trial_may_be_typed_as_JSON()
    {
        var log = Logs.Read("""
            {
              "airCelsius": 18, "pressureHpa": 1009, "humidityPercent": 70,
              "runs": [
                { "rpm": 5480, "speedKnots": 31.2, "headingDegrees": 40 },
                { "rpm": 5520, "speedKnots": 29.3, "headingDegrees": 221, "limiterReached": true },
                { "rpm": "fast" }
              ]
            }
            """);
        Assert.Equal(LogFormat.TypedJson, log.Format);
        Assert.Equal([31.2, 29.3], log.TypedRuns.Select(run => run.Speed!.Value.Knots));
        Assert.Equal(1009, log.Air!.StationPressure!.Value.Hectopascals, 1e-9);
        Assert.Equal("runs[2].rpm: \"fast\" is no number", Assert.Single(log.Dropped).Reason);
    }

    [Fact]
    public void Times_of_day_go_on_past_midnight()
    {
        var log = Logs.Lines("time,rpm", "23:59:59,5480", "00:00:01,5480");
        Assert.Equal(TimeSpan.FromSeconds(2), log.Rates[1].At - log.Rates[0].At);
        Assert.True(log.Says(LogNoticeKind.NoDate));
    }
}
