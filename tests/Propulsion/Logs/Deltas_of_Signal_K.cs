using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class Deltas_of_Signal_K
{
    private const string Engine = """{"path":"propulsion.0.revolutions","value":16.341667}""";
    private const string Course = """{"path":"navigation.courseOverGroundTrue","value":2.971}""";
    private const string Sog = """{"path":"navigation.speedOverGround","value":3.85}""";

    /// <summary>The three values of the delta message that the specification shows ("Data model", delta format).</summary>
    [Fact]
    public void The_specifications_values_are_read_in_their_units()
    {
        var log = Logs.Read(Delta("2014-08-15T16:00:00.081Z", Engine, Sog, Course)); // the speed before its course
        Assert.Equal(980.50002, Assert.Single(log.Rates).Engine.RevolutionsPerMinute, 1e-9);
        var fix = Assert.Single(log.Track);
        Assert.Equal(3.85, fix.Speed.MetresPerSecond, 1e-12);
        Assert.Equal(170.2257, fix.CourseDegrees!.Value, 1e-4); // 2.971 rad
        Assert.Equal(new DateTimeOffset(2014, 8, 15, 16, 0, 0, 81, TimeSpan.Zero), fix.At);
    }

    [Fact]
    public void The_air_comes_in_pascals_kelvins_and_a_fraction()
    {
        var air = Logs.Read(Delta(
            "2026-05-04T09:00:00Z",
            """{"path":"environment.outside.pressure","value":100870}""",
            """{"path":"environment.outside.temperature","value":291.65}""",
            """{"path":"environment.outside.relativeHumidity","value":0.71}""")).Air!;
        Assert.Equal(1008.7, air.StationPressure!.Value.Hectopascals, 1e-9);
        Assert.Equal(18.5, air.Temperature!.Value.Celsius, 1e-9);
        Assert.Equal(0.71, air.RelativeHumidityFraction!.Value, 1e-12);
    }

    [Theory]
    [InlineData("{0}\n{1}")]
    [InlineData("[{0},{1}]")]
    [InlineData("[\n{0}\n,\n{1}\n]")]
    [InlineData("{0}{1}")]
    public void Lines_arrays_and_messages_one_after_another_are_the_same(string layout)
    {
        var log = Logs.Read(layout
            .Replace("{0}", Delta("2026-05-04T09:00:00Z", Engine), StringComparison.Ordinal)
            .Replace("{1}", Delta("2026-05-04T09:00:01Z", Engine), StringComparison.Ordinal));
        Assert.Equal(2, log.Rates.Count);
        Assert.Equal(0, log.DroppedCount);
    }

    [Fact]
    public void A_message_over_several_lines_is_one()
    {
        var log = Logs.Read(Delta("2026-05-04T09:00:00Z", Engine).Replace(",", ",\n  ", StringComparison.Ordinal));
        Assert.Single(log.Rates);
    }

    [Fact]
    public void A_message_without_its_end_costs_itself_only()
    {
        var log = Logs.Lines(
            Delta("2026-05-04T09:00:00Z", Engine), Delta("2026-05-04T09:00:01Z", Engine)[..70], Delta("2026-05-04T09:00:02Z", Engine));
        Assert.Equal(2, log.Rates.Count);
        Assert.Equal(new DroppedLine(2, "a JSON object without its end"), Assert.Single(log.Dropped));
    }

    [Fact]
    public void Other_boats_that_were_heard_are_not_ones_own()
    {
        var other = Delta("2026-05-04T09:00:00Z", Sog, Course).Replace("vessels.self", "vessels.urn:mrn:imo:mmsi:230000000", StringComparison.Ordinal);
        var log = Logs.Lines(other, other, other, Delta("2026-05-04T09:00:01Z", Engine, Sog));
        Assert.Single(log.Track);
        Assert.True(log.Says(LogNoticeKind.SeveralBoats));
    }

    [Fact]
    public void Of_two_engines_the_one_asked_for_is_taken()
    {
        var starboard = Engine.Replace(".0.", ".starboard.", StringComparison.Ordinal).Replace("16.341667", "90", StringComparison.Ordinal);
        var text = Delta("2026-05-04T09:00:00Z", Engine, starboard);
        Assert.Equal(5400, Assert.Single(Logs.Read(text, new LogOptions { Engine = "Starboard" }).Rates).Engine.RevolutionsPerMinute);
        Assert.True(Logs.Read(text).Says(LogNoticeKind.SeveralEngines));
        Assert.Empty(Logs.Read(text, new LogOptions { Engine = "bow" }).Rates);
    }

    private static string Delta(string time, params string[] values) =>
        $$"""{"context":"vessels.self","updates":[{"timestamp":"{{time}}","values":[{{string.Join(',', values)}}]}]}""";
}
