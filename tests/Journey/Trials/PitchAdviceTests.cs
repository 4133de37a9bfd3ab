using System.Text.Json;
using FleetWake.Commands;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>What <c>fleetwake pitch</c> reads and prints. Invented boats; nothing here needs a database.</summary>
public class PitchAdviceTests
{
    private const string Engine = "band=5000-6000,gear=1.86,step=50,tacho=0+-0.3%";

    [Fact]
    public void The_table_names_every_pitch_and_advises_one()
    {
        var text = PitchText.Of(Read(rpm: "6150+-40", available: "18,19,20,21,22"));
        Assert.Contains("13x19 turns 6150 RPM", text, StringComparison.Ordinal);
        Assert.Contains("First rule out a worn prop or lost cup, worn tips, a slipping hub, ventilation and a lighter load", text, StringComparison.Ordinal);
        Assert.Contains("*    19", text, StringComparison.Ordinal);
        Assert.Contains("may over-rev, fitted", text, StringComparison.Ordinal);
        Assert.Contains("Advice: 22 in.", text, StringComparison.Ordinal);
        Assert.Contains("Cold air adds up to 146 RPM", text, StringComparison.Ordinal);
        Assert.Contains("a fourth blade", text, StringComparison.Ordinal);
        Assert.Contains("Low confidence", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Prop plan", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Loads_in_kilograms_or_per_cent_come_with_a_prop_plan()
    {
        var loads = Read(load: "light=-150kg,usual=0,heavy=+300kg", mass: "1800kg").Question.Loads;
        Assert.Equal(["usual", "light", "heavy"], loads.Select(l => l.Name));
        Assert.True(loads[1].LnRpm.Value > 0 && loads[2].LnRpm.Value < 0);
        Assert.Equal(["usual", "full"], Read(load: "full=+10%").Question.Loads.Select(l => l.Name));
        Assert.Contains("Prop plan", PitchText.Of(Read(load: "full=+10%")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_lugs_what_must_come_off_and_what_has_four_blades_already_is_minded()
    {
        var text = PitchText.Of(PitchRequest.Read(
            Engine.Replace("5000-6000", "5200-5900", StringComparison.Ordinal), "13x19", "5450+-20", "17.5,19", "light=-20%,full=+60%", null, "-0.73+-0.05"));
        Assert.Contains("Advice: the fitted pitch stays on; it lugs at full.", text, StringComparison.Ordinal);
        Assert.Contains("Take the 17.5 in off before usual, light: over the top there.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("a fourth blade", PitchText.Of(PitchRequest.Read(Engine, "13x19x4", "5600+-30", null, null, null, null)), StringComparison.Ordinal);
    }

    [Fact]
    public void One_object_holds_the_advice()
    {
        using var json = JsonDocument.Parse(PitchJson.Of(Read(rpm: "5600+-30", load: "light=-8%,heavy=+15%")));
        var root = json.RootElement;
        Assert.Equal(19, root.GetProperty("advisedPitchInches").GetDouble());
        Assert.Equal(7, root.GetProperty("rows").GetArrayLength());
        var use = root.GetProperty("rows")[0].GetProperty("uses")[0];
        Assert.Equal("usual", use.GetProperty("use").GetString());
        Assert.Equal(1, use.GetProperty("inBand").GetDouble() + use.GetProperty("aboveTop").GetDouble() + use.GetProperty("belowBottom").GetDouble(), 1e-3);
        Assert.Equal("may_over_rev", root.GetProperty("rows")[0].GetProperty("verdict").GetString());
        Assert.Equal(["usual", "light", "heavy"], root.GetProperty("plan").GetProperty("props")[0].GetProperty("uses").EnumerateArray().Select(u => u.GetString()));
    }

    /// <summary>A band is a rule from outside, so a gauge that nobody checked counts with its own 1.5 % (judgement).</summary>
    [Fact]
    public void A_tachometer_that_nobody_checked_widens_the_doubt_and_it_is_said()
    {
        var unchecked_ = PitchRequest.Read("band=5000-6000", "13x19", "5600+-30", null, null, null, null);
        Assert.True(unchecked_.Question.CorrectedRpm.StandardDeviation > 2 * Read(rpm: "5600+-30").Question.CorrectedRpm.StandardDeviation);
        Assert.Contains("tachometer's own error", PitchText.Of(unchecked_), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "5600+-30", 30, 84)]               // never checked: 1.5 % on top
    [InlineData(",tacho=+2+-0.5%", "5600+-30", 30, 0)] // what "trial" printed has the gauge's doubt inside
    [InlineData(",tacho=+2+-0.5%", "5600", 42, 28)]    // 0.75 % of a double run, and the gauge's half per cent
    [InlineData("", "5600", 42, 84)]
    public void The_gauges_doubt_counts_once(string tacho, string rpm, double own, double gauge) => Assert.Equal(
        Math.Sqrt((own * own) + (gauge * gauge)),
        PitchRequest.Read("band=5000-6000" + tacho, "13x19", rpm, null, null, null, null).Question.CorrectedRpm.StandardDeviation, 1e-9);

    [Theory]
    [InlineData("20x39", new double[] { 36, 37, 38, 39, 40 })]
    [InlineData("8x4", new double[] { 3, 4, 5, 6, 7 })]
    public void Pitches_that_nobody_named_stay_within_those_that_may_be_named(string prop, double[] inches) => Assert.Equal(
        inches, PitchRequest.Read(Engine, prop, "5600", null, null, null, null).Question.Available.Select(pitch => Math.Round(pitch.Inches, 9)));

    [Theory]
    [InlineData("gear=2", "13x19", "5900", null, null, null, null, "band=LOW-HIGH")]
    [InlineData(Engine, "19", "5900", null, null, null, null, "--prop")]
    [InlineData(Engine, "13x19", "many", null, null, null, null, "300 to 12000")]
    [InlineData(Engine, "13x19", "5900+-", null, null, null, null, "300 to 12000")]
    [InlineData(Engine, "13x19", "2400", null, null, null, null, "RPM of the prop")]
    [InlineData(Engine, "13x19", "5900", "17,x", null, null, null, "\"x\" is no pitch")]
    [InlineData(Engine, "13x19", "5900", "190", null, null, null, "3 to 40 in")]
    [InlineData(Engine, "13x19", "5900", ",", null, null, null, "1 to 24")]
    [InlineData(Engine, "13x19", "5900", null, "light=-150kg", null, null, "--mass 1800kg")]
    [InlineData(Engine, "13x19", "5900", null, "light=-150", null, null, "no unit")]
    [InlineData(Engine, "13x19", "5900", null, "usual=5%", null, null, "usual=0")]
    [InlineData(Engine, "13x19", "5900", null, "a=1%,A=2%", null, null, "twice")]
    [InlineData(Engine, "13x19", "5900", null, "heavy=+3000kg", "1800kg", null, "-50 to 100 %")]
    [InlineData(Engine, "13x19", "5900", null, "heavy", null, null, "no use of a boat")]
    [InlineData(Engine, "13x19", "5900", null, null, "1800", null, "1800kg or 4000lb")]
    [InlineData(Engine, "13x19", "5900", null, null, null, "0.73+-0.15", "-2 to -0.1")]
    [InlineData(Engine, "13x19", "5900", null, null, null, "-0.73", "-0.73+-0.15")]
    public void What_cannot_be_read_is_refused_with_how_to_mend_it(string engine, string prop, string rpm, string? available, string? load, string? mass, string? elasticity, string mend)
    {
        var told = Assert.Throws<CommandException>(() => PitchRequest.Read(engine, prop, rpm, available, load, mass, elasticity)).Message;
        Assert.Contains(mend, told, StringComparison.Ordinal);
    }

    private static PitchRequest Read(string rpm = "5600+-40", string? available = null, string? load = null, string? mass = null) =>
        PitchRequest.Read(Engine, "13x19", rpm, available, load, mass, null);
}
