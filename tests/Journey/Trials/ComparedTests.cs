using System.Text.Json;
using FleetWake.Propulsion.Logs;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>A trial held against the boat's baseline, and why one is not. An invented boat.</summary>
public class ComparedTests
{
    private static readonly TrialRequest s_boat = new(EngineOption.Read("gear=2.08,step=10"), PropOption.Read("11.5x13x3"));

    [Fact]
    public void Changes_are_fractions_of_the_baseline()
    {
        var (now, then) = (Answer(5890, 25.7), Answer(5650, 26.05));
        var change = Against(now, then);
        Assert.Equal((5890.0 / 5650) - 1, change.GetProperty("rpmChange").GetDouble(), 1e-6); // of one air, so that the readings' ratio is the corrected ones'
        Assert.Equal((25.7 / 26.05) - 1, change.GetProperty("speedChange").GetDouble(), 1e-6);
        Assert.Equal("rpm_up", change.GetProperty("group").GetString());
        Assert.Matches(@"^Against the baseline: \+4\.2 \+/- [0-9.]+ % RPM, -1\.3 \+/- [0-9.]+ % speed\. It turns faster", Compared.Of(now, then, watched: false).Sentence());
        Assert.Contains("The baseline comes to ", string.Join(' ', Compared.Of(now, then, watched: false).Notes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no_gear", "say gear=RATIO in --engine")]
    [InlineData("no_prop", "give its size in --prop")]
    [InlineData("no_speed", "no speed was read at the baseline")]
    [InlineData("baseline_makes_no_sense", "slip of 2 to 80 % does")]
    [InlineData("change_too_large", "another boat or a wrong reading")]
    [InlineData("part_throttle", "the trial shows no RPM at wide-open throttle")]
    [InlineData("limiter_reached", "the baseline shows no RPM at wide-open throttle (the limiter held the engine")]
    public void What_cannot_be_compared_is_told_with_its_true_reason(string code, string words)
    {
        var (now, then) = code switch
        {
            "no_gear" => (Answer(5890, 25.7, s_boat with { Engine = EngineOption.Read("step=10") }), Answer(5650, 26.05)),
            "no_prop" => (Answer(5890, 25.7, s_boat with { Prop = null }), Answer(5650, 26.05)),
            "no_speed" => (Answer(5890, 25.7), Answer(5650, null)),
            "baseline_makes_no_sense" => (Answer(5890, 25.7), Answer(5650, 60)),
            "change_too_large" => (Answer(5890, 9), Answer(5650, 26.05)),
            "part_throttle" => (Answer(4000, 20, s_boat with { PartThrottle = true }), Answer(5650, 26.05)),
            _ => (Answer(5890, 25.7), Answer(5650, 26.05, s_boat with { LimiterReached = true })),
        };
        var against = Against(now, then);
        Assert.Equal(code, against.GetProperty("notCompared").GetString());
        Assert.Contains(words, against.GetProperty("why").GetString(), StringComparison.Ordinal);
        var sentence = Compared.Of(now, then, watched: false).Sentence();
        Assert.StartsWith("Against the baseline: not compared; ", sentence, StringComparison.Ordinal);
        Assert.Contains(words, sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trial_without_speed_is_compared_by_its_RPM()
    {
        var change = Against(Answer(5890, null), Answer(5650, 26.05));
        Assert.Equal(JsonValueKind.Null, change.GetProperty("speedChange").ValueKind);
        Assert.Equal(0.0425, change.GetProperty("rpmChange").GetDouble(), 1e-4);
    }

    [Fact]
    public void A_change_too_large_is_told_in_figures() => Assert.Contains(
        "+4.2 % RPM, -65.5 % speed", Compared.Of(Answer(5890, 9), Answer(5650, 26.05), watched: false).Sentence(), StringComparison.Ordinal);

    [Fact]
    public void A_trial_by_hand_on_the_prop_says_first_how_it_is_made_safe() => Assert.Contains(
        "engine off, key out, lanyard off", Compared.Of(Answer(5890, 25.7), Answer(5650, 26.05), watched: false).Sentence(), StringComparison.Ordinal);

    private static JsonElement Against(TrialAnswer now, TrialAnswer then) =>
        JsonDocument.Parse(TrialJson.Of(now, Compared.Of(now, then, watched: false))).RootElement.GetProperty("againstBaseline");

    private static TrialAnswer Answer(double rpm, double? knots, TrialRequest? request = null)
    {
        using var reader = new StringReader(knots is { } v
            ? $"rpm,speed_kn,heading_deg\n{rpm},{v},40\n{rpm},{v},220\n"
            : $"rpm,heading_deg\n{rpm},40\n{rpm},220\n");
        return (request ?? s_boat).Of(TrialLog.Read(reader, new LogOptions()), "f");
    }
}
