using System.Text.Json;
using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Logs;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>What the command "trial" makes of a file, without the console.</summary>
public class TrialAnswerTests
{
    private const string TwoRuns = "rpm,speed_kn,heading_deg\n5480,31.2,40\n5520,29.3,221\n";

    [Fact]
    public void The_JSON_object_has_what_other_programs_ask_for()
    {
        var root = Json(Answer(TwoRuns, "18C,1009hPa,70%"));
        Assert.Equal(5500, root.GetProperty("rpm").GetDouble(), 1e-6);
        Assert.Equal(30.25, root.GetProperty("speedKnots").GetDouble(), 1e-6);
        // 1 - 30.25 kn / (5500/60/2.08 rev/s x 17 in), by hand: 15.5622 m/s over 19.0302 m/s
        Assert.Equal(0.1822, root.GetProperty("slip").GetDouble(), 1e-4);
        var factor = root.GetProperty("correctionFactor").GetDouble();
        Assert.InRange(factor, 0.97, 0.99); // cool and dense air: the engine gave more than at reference
        Assert.Equal(5500 * Math.Pow(factor, 0.38), root.GetProperty("correctedRpm").GetDouble(), 0.01);
        Assert.Equal(30.25 * Math.Pow(factor, 0.38 * 1.2), root.GetProperty("correctedSpeedKnots").GetDouble(), 0.001);
        Assert.InRange(root.GetProperty("correctedRpmSd").GetDouble(), 5, 100);
        Assert.Equal(2, root.GetProperty("runs").GetArrayLength());
        Assert.Equal(JsonValueKind.Array, root.GetProperty("flags").ValueKind);
        Assert.Equal("in", root.GetProperty("band").GetString());
    }

    [Fact]
    public void What_nobody_read_of_the_air_is_flagged_and_widens_the_doubt()
    {
        var (known, unknown) = (Json(Answer(TwoRuns, "18C,1009hPa,70%")), Json(Answer(TwoRuns, null)));
        Assert.Superset(
            new HashSet<string?> { "pressure_missing", "temperature_missing", "humidity_missing" },
            unknown.GetProperty("flags").EnumerateArray().Select(flag => flag.GetString()).ToHashSet());
        Assert.True(unknown.GetProperty("correctedRpmSd").GetDouble() > known.GetProperty("correctedRpmSd").GetDouble());
    }

    [Fact]
    public void The_text_tells_the_same_in_words()
    {
        var text = TrialText.Of(Answer(TwoRuns, null), "trial.csv");
        Assert.Contains("Trial of 2 runs from trial.csv (CSV, 3 lines read, 0 dropped)", text, StringComparison.Ordinal);
        Assert.Contains("RPM     5500 +/- ", text, StringComparison.Ordinal);
        Assert.Contains("in the band 5000-6000", text, StringComparison.Ordinal);
        Assert.Contains("pressure_missing: nobody read the pressure", text, StringComparison.Ordinal);
        Assert.Contains("never held against an instrument", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_air_of_the_file_is_taken_and_what_was_typed_goes_before_it()
    {
        const string Logged = "rpm,speed_kn,heading_deg,air_c,pressure_hpa\n5480,31.2,40,18,1009\n5520,29.3,221,18,1009\n";
        var air = Answer(Logged, "25C,300m").Reading.Conditions.Air!;
        Assert.Equal(25, air.Temperature!.Value.Celsius);
        Assert.Equal(1009, air.StationPressure!.Value.Hectopascals, 1e-9);
        Assert.Equal(300, air.Altitude!.Value.Metres);
    }

    [Fact]
    public void Dropped_lines_are_told_with_their_number_and_reason()
    {
        var answer = Answer(TwoRuns + "5500,fast,40\n", null);
        Assert.Contains("line 4: \"fast\" in column 2 is no number", TrialText.Of(answer, "f"), StringComparison.Ordinal);
        Assert.Equal(4, Json(answer).GetProperty("log").GetProperty("dropped")[0].GetProperty("line").GetInt32());
    }

    [Fact]
    public void Part_throttle_says_nothing_of_the_band()
    {
        var answer = Request(null) with { PartThrottle = true };
        var root = Json(answer.Of(Log(TwoRuns), "f"));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("band").ValueKind);
        Assert.Contains("part_throttle", root.GetProperty("flags").EnumerateArray().Select(flag => flag.GetString()));
    }

    [Fact]
    public void A_limiter_that_no_log_tells_of_may_be_told()
    {
        var answer = (Request(null) with { LimiterReached = true }).Of(Log(TwoRuns), "f");
        Assert.Contains("limiter_reached", Json(answer).GetProperty("flags").EnumerateArray().Select(flag => flag.GetString()));
        Assert.Contains("held by the limiter", TrialText.Of(answer, "f"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "no run of a trial in f: line 1: nothing in it")]
    [InlineData("a,b\n1,2\n", "line 1: no header of a trial: it needs a column rpm")]
    [InlineData("rpm,heading_deg\n0,40\n", "rpm 0 of a run is not above zero")]
    public void A_file_without_a_run_is_refused_with_the_reason(string text, string reason) =>
        Assert.Contains(reason, Assert.Throws<CommandException>(() => Answer(text, null)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("18", "a number with its unit")]
    [InlineData("", "leave the option out")]
    [InlineData("18C,20C", "the second of its kind")]
    [InlineData("1009hPa,1.5kg", "in a unit known here")]
    [InlineData("3000hPa", "500 to 1100 hPa")]
    [InlineData("170%", "0 to 100 %")]
    [InlineData("1e3hPa", "a number with its unit")]
    public void An_air_that_cannot_be_is_refused_with_its_range(string text, string reason) =>
        Assert.Contains(reason, Assert.Throws<CommandException>(() => AirOption.Read(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("64.4F,29.80inHg", 18, 1009.14)]
    [InlineData("18 C, 100.914 kPa", 18, 1009.14)]
    [InlineData("18\u00b0C,1009.14mbar", 18, 1009.14)]
    public void The_air_is_read_in_its_units(string text, double celsius, double hectopascals)
    {
        var air = AirOption.Read(text);
        Assert.Equal(celsius, air.Temperature!.Value.Celsius, 1e-9);
        Assert.Equal(hectopascals, air.StationPressure!.Value.Hectopascals, 0.01);
    }

    [Fact]
    public void Quantities_and_doubts_are_read_as_typed()
    {
        Assert.Equal(new Uncertain(0.38, 0.1), Measure.WithDoubt("--gain", "0.38+-0.10", 0, 1, 1, "0.38+-0.10"));
        Assert.Equal(3.6576, Measure.Depth("--depth", "12ft").Metres, 1e-12);
        Assert.Equal(340.19427750, Measure.Load("--load", "750lb").Kilograms, 1e-8);
        Assert.Throws<CommandException>(() => Measure.WithDoubt("--gain", "1.5+-0.1", 0, 1, 1, "0.38+-0.10"));
        Assert.Throws<CommandException>(() => Measure.Depth("--depth", "4"));
        Assert.Throws<CommandException>(() => Measure.Load("--load", "-4kg"));
    }

    private static JsonElement Json(TrialAnswer answer) => JsonDocument.Parse(TrialJson.Of(answer)).RootElement;

    private static TrialAnswer Answer(string text, string? air) => Request(air).Of(Log(text), "f");

    private static TrialRequest Request(string? air) => new(EngineOption.Read("band=5000-6000,gear=2.08,step=50"), PropOption.Read("14x17"))
    {
        Air = air is null ? null : AirOption.Read(air),
    };

    private static TrialLog Log(string text)
    {
        using var reader = new StringReader(text);
        return TrialLog.Read(reader, new LogOptions());
    }
}
