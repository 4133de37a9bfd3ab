using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>What people type, what is made of it, and how they are told to mend it.</summary>
public class Runs_typed_by_hand
{
    [Theory]
    [InlineData("rpm,speed_kn\n5480,31.2\n5520,29.3", "a run without its heading, which pairs it with another: add a column heading_deg, degrees 0 to 360")]
    [InlineData("rpm,speed_kn,heading_deg\n\"5,480\",31.2,40", "\"5,480\" in column 1 is no number: write 5480")]
    [InlineData("rpm,speed_kn,heading_deg\n5480,\"31,2\",40", "\"31,2\" in column 2 is no number: write 31.2")]
    [InlineData("rpm,heading_deg\n5480,NNE", "\"NNE\" in column 2 is no number: write degrees 0 to 360, or N, NE, E, SE, S, SW, W or NW")]
    [InlineData("speed_kn\n31.2", "a run without its rpm: add a column rpm")]
    [InlineData("rpm,heading_deg", "no row below its header")]
    [InlineData("{\"runs\":[]}", "runs holds no run")]
    public void Where_no_run_can_be_used_the_true_reason_is_said_and_not_that_nothing_was_logged(string text, string reason)
    {
        var log = Logs.Read(text);
        Assert.Empty(log.TypedRuns);
        Assert.Equal(reason, log.Dropped[0].Reason);
        Assert.False(log.Says(LogNoticeKind.NoRpm) || log.Says(LogNoticeKind.NoSpeed));
    }

    [Fact]
    public void Of_a_recording_it_is_said_when_what_was_logged_could_not_be_used()
    {
        var log = Logs.Lines("time,rpm,speed_kn", "5/4/2026 9 o'clock,5480,");
        Assert.Equal("RPM was logged, but none that could be used", log.Notices.Single(n => n.Kind == LogNoticeKind.NoRpm).Detail);
        Assert.Equal("no speed was logged", log.Notices.Single(n => n.Kind == LogNoticeKind.NoSpeed).Detail);
    }

    [Theory]
    [InlineData("N", 0)]
    [InlineData("ne", 45)]
    [InlineData("E", 90)]
    [InlineData("SE", 135)]
    [InlineData("S", 180)]
    [InlineData("SW", 225)]
    [InlineData("w", 270)]
    [InlineData("NW", 315)]
    public void A_heading_may_be_one_of_the_eight_points(string point, double degrees)
    {
        Assert.Equal(degrees, Assert.Single(Logs.Lines("rpm,heading_deg", $"5480,{point}").TypedRuns).HeadingDegrees);
        Assert.Equal(degrees, Assert.Single(Logs.Read($$"""{"runs":[{"rpm":5480,"headingDegrees":"{{point}}"}]}""").TypedRuns).HeadingDegrees);
    }

    [Theory]
    [InlineData("400")]
    [InlineData("-40")]
    public void A_heading_that_no_compass_shows_is_refused(string heading)
    {
        var log = Logs.Lines("rpm,heading_deg", $"5480,{heading}");
        Assert.Equal($"heading {heading} is outside 0 to 360 degrees", Assert.Single(log.Dropped).Reason);
        Assert.Empty(log.TypedRuns);
    }

    [Theory]
    [InlineData("speedKnots", 31.2, 31.2)]
    [InlineData("speedMph", 35.90431878, 31.2)] // 31.2 x 1852 / 1609.344
    [InlineData("speedKmh", 57.7824, 31.2)]
    [InlineData("speedMs", 16.05066667, 31.2)]
    public void JSON_takes_speeds_in_four_units(string name, double value, double knots) => Assert.Equal(
        knots, Assert.Single(Logs.Read(FormattableString.Invariant($"{{\"runs\":[{{\"rpm\":5480,\"{name}\":{value}}}]}}")).TypedRuns).Speed!.Value.Knots, 1e-6);

    [Fact]
    public void JSON_takes_numbers_in_quotes_and_flags_as_people_write_them()
    {
        var log = Logs.Read("""{"pressureHpa":"1009","runs":[{"rpm":"5480","speedKnots":"31.2","limiterReached":"yes","ventilated":1,"heldSeconds":null}]}""");
        var run = Assert.Single(log.TypedRuns);
        Assert.Equal((5480, 31.2), (run.Engine.RevolutionsPerMinute, run.Speed!.Value.Knots));
        Assert.True(run.LimiterReached && run.Ventilated);
        Assert.Equal(1009, log.Air!.StationPressure!.Value.Hectopascals, 1e-9);
        Assert.Equal((0, 0), (log.DroppedCount, log.LeftAsideCount));
    }

    [Theory]
    [InlineData("""{"rpm":5480,"speed":31.2}""", "runs[0].speed is not known: rpm, speedKnots (or speedMph, speedKmh, speedMs), headingDegrees, heldSeconds, limiterReached, ventilated")]
    [InlineData("""{"rpm":5480,"limiterReached":"ja"}""", "runs[0].limiterReached: \"ja\" is not yes or no (on, off, true, false, 1, 0, x, or nothing for no)")]
    [InlineData("""{"rpm":5480,"speedKnots":31.2,"speedMph":36}""", "runs[0].speedMph is the second of its kind")]
    public void A_member_that_is_not_understood_is_told_and_the_run_kept(string run, string reason)
    {
        var log = Logs.Read($$"""{"runs":[{{run}}]}""");
        Assert.Single(log.TypedRuns);
        Assert.Equal(reason, Assert.Single(log.LeftAside).Reason);
    }

    [Fact]
    public void So_is_one_beside_the_runs()
    {
        var log = Logs.Read("""{"pressure":1009,"humidityPercent":"dry","airCelsius":99,"runs":[{"rpm":5480}]}""");
        Assert.Equal(
            [
                "pressure is not known: runs, airCelsius (or airFahrenheit), pressureHpa (or pressureKpa, pressureInHg), humidityPercent",
                "humidityPercent: \"dry\" is no number",
                "airCelsius: air temperature 99 is outside -60 to 60 deg C",
            ],
            log.LeftAside.Select(aside => aside.Reason));
        Assert.Null(log.Air);
    }

    [Theory]
    [InlineData("""{"rpm":"5,480"}""", "runs[1].rpm: \"5,480\" is no number: write 5480")]
    [InlineData("""{"rpm":0}""", "runs[1].rpm: rpm 0 of a run is not above zero")]
    [InlineData("""{"rpm":5480,"speedMph":-3}""", "runs[1].speedMph: speed -3 is outside 0 to 230.16 mph")]
    [InlineData("""{"rpm":5480}""", "runs[1].headingDegrees is missing, which pairs the run with another: add it, degrees 0 to 360")]
    [InlineData("{}", "runs[1].rpm is missing")]
    [InlineData("7", "runs[1] is no object")]
    public void A_fault_in_JSON_names_its_place(string run, string reason) =>
        Assert.Equal(reason, Assert.Single(Logs.Read($$"""{"runs":[{"rpm":5480,"headingDegrees":40},{{run}}]}""").Dropped).Reason);

    [Theory]
    [InlineData("548,40\n5520,220", "check the RPM of run 1 (548) and of run 2 (5520):")] // of two nobody can tell which
    [InlineData("5480,40\n552,220\n5500,40", "check the RPM of run 2 (552):")]
    public void RPM_that_no_wind_brings_so_far_apart_are_to_be_checked(string rows, string remark) => Assert.StartsWith(
        remark, Assert.Single(RecordedRuns.Of(Logs.Read("rpm,heading_deg\n" + rows), PlateauRules.Usual, []).Remarks), StringComparison.Ordinal);
}
