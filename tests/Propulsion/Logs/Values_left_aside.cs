using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>One value of a line that cannot be costs itself, and is told apart from lines that were dropped.</summary>
public class Values_left_aside
{
    [Theory]
    [InlineData("on", true)]
    [InlineData("Yes", true)]
    [InlineData("true", true)]
    [InlineData("1", true)]
    [InlineData("x", true)]
    [InlineData("off", false)]
    [InlineData("no", false)]
    [InlineData("FALSE", false)]
    [InlineData("0", false)]
    [InlineData("", false)]
    public void Whether_the_limiter_held_may_be_written_in_many_ways(string cell, bool held)
    {
        var log = Logs.Lines("rpm,limiter,ventilated", $"5480,{cell},{cell}");
        var run = Assert.Single(log.TypedRuns);
        Assert.Equal((held, held), (run.LimiterReached, run.Ventilated));
        Assert.Equal(0, log.LeftAsideCount);
    }

    [Theory]
    [InlineData("ja")]
    [InlineData("2")]
    [InlineData("maybe")]
    public void What_is_neither_yes_nor_no_is_told_with_what_may_be_written(string cell)
    {
        var log = Logs.Lines("rpm,limiter", $"5480,{cell}");
        Assert.False(Assert.Single(log.TypedRuns).LimiterReached);
        var reason = $"limiter \"{cell}\" is not yes or no (on, off, true, false, 1, 0, x, or nothing for no)";
        Assert.Equal(new DroppedLine(2, reason), Assert.Single(log.LeftAside));
        Assert.Equal($"1 value left aside: line 2: {reason}", Told(log));
        Assert.Equal(0, log.DroppedCount);
    }

    [Fact]
    public void In_a_recording_a_column_of_the_limiter_is_said_to_be_left_aside() => Assert.Contains(
        "\"limiter\", which is read of typed runs only",
        Logs.Lines("time,rpm,limiter", "2026-05-04T09:00:00Z,5480,on").Notices.Single(n => n.Kind == LogNoticeKind.LeftAside).Detail, StringComparison.Ordinal);

    [Fact]
    public void A_row_whose_air_cannot_be_keeps_its_rate_and_speed()
    {
        var log = Logs.Lines(
            "time,rpm,speed_mph,pressure_hpa", "2026-05-04T09:00:00Z,5480,35,1009", "2026-05-04T09:00:01Z,5480,-3,-9999", "2026-05-04T09:00:02Z,99999,,");
        Assert.Equal((2, 1), (log.Rates.Count, log.Track.Count));
        Assert.Equal(1009, log.Air!.StationPressure!.Value.Hectopascals, 1e-9);
        Assert.Equal("2 values left aside: line 3: speed -3 is outside 0 to 230.16 mph; line 3: air pressure -9999 is outside 500 to 1100 hPa", Told(log));
        Assert.Equal(new DroppedLine(4, "RPM 99999 is outside 0 to 20000 rev/min"), Assert.Single(log.Dropped)); // nothing else in it
    }

    [Theory]
    [InlineData("speed_mph", "-3", "speed -3 is outside 0 to 230.16 mph")] // 200 kn x 1852 m / 1609.344 m
    [InlineData("speed_kmh", "500", "speed 500 is outside 0 to 370.4 km/h")]
    [InlineData("speed_ms", "-1", "speed -1 is outside 0 to 102.89 m/s")]
    [InlineData("held_s", "-1", "a run held for -1 is outside 0 to 86400 s")]
    public void A_value_of_a_run_is_told_as_it_was_typed_in_the_columns_unit(string column, string cell, string reason) =>
        Assert.Equal(reason, Assert.Single(Logs.Lines($"rpm,{column}", $"5480,{cell}").Dropped).Reason);

    [Theory]
    [InlineData("air_f", "150", "air temperature 150 is outside -76 to 140 deg F")]
    [InlineData("pressure_inhg", "40", "air pressure 40 is outside 14.76 to 32.48 inHg")]
    [InlineData("humidity_percent", "170", "relative humidity 170 is outside 0 to 100 %")]
    public void So_is_one_of_the_air_and_the_run_is_kept(string column, string cell, string reason)
    {
        var log = Logs.Lines($"rpm,{column}", $"5480,{cell}");
        Assert.Equal(reason, Assert.Single(log.LeftAside).Reason);
        Assert.Single(log.TypedRuns);
        Assert.Equal(0, log.DroppedCount);
    }

    [Fact]
    public void Of_many_the_first_are_shown_and_all_are_counted()
    {
        var log = Logs.Lines([.. Enumerable.Repeat("2026-05-04T09:00:00Z,5480,-9999", 1000).Prepend("time,rpm,pressure_hpa")]);
        Assert.Equal((1000, 0, 1000), (log.LeftAsideCount, log.DroppedCount, log.Rates.Count));
        Assert.StartsWith("1000 values left aside: line 2: ", Told(log), StringComparison.Ordinal);
        Assert.EndsWith("; and 999 more", Told(log), StringComparison.Ordinal); // one reason, said once
    }

    [Fact]
    public void An_impossible_value_of_a_delta_leaves_the_others() // 1 Hz is 60 rev/min; 400 Hz is more than any engine's
    {
        var log = Logs.Read("""
            {"context":"vessels.self","updates":[{"timestamp":"2026-05-04T09:00:00Z","values":[{"path":"navigation.speedOverGround","value":15},{"path":"propulsion.p.revolutions","value":400}]}]}
            """);
        Assert.Single(log.Track);
        Assert.Equal((1, 0), (log.LeftAsideCount, log.DroppedCount));
    }

    private static string Told(TrialLog log) => log.Notices.Single(notice => notice.Kind == LogNoticeKind.LeftAside && char.IsDigit(notice.Detail[0])).Detail;
}
