using System.Text;
using System.Text.Json;
using FleetWake.Journey.Tests.Docs;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Logs;
using FleetWake.Propulsion.Trials;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary><c>docs/trial.md</c> says what the commands say.</summary>
public class TrialDocsTests
{
    [Fact]
    public void The_table_of_flags_is_the_codes()
    {
        var text = new StringBuilder("| flag | what it says |\n|---|---|\n");
        foreach (var doubt in Enum.GetValues<TrialDoubt>()) text.Append($"| `{TrialDoubts.Code(doubt)}` | {DoubtWords.Of(doubt)} |\n");
        DocsFolder.HoldPart("trial.md", "flags", text.ToString());
    }

    [Fact]
    public void Every_member_of_the_JSON_object_is_in_the_tables()
    {
        var docs = DocsFolder.Read("trial.md");
        var (now, then) = (Answer(5890, 25.7), Answer(5650, 26.05));
        var compared = Compared.Of(now, then, watched: false);
        Assert.NotNull(compared.Held);
        var request = PitchRequest.Read("band=5000-6000", "13x19", "5600", null, "light=-8%", null, null);
        var names = Names(TrialJson.Of(now, compared))
            .Concat(Names(TrialJson.Of(now, new Compared(null, new NotCompared("no_gear", "why")))))
            .Concat(Names(PitchJson.Of(request))).Distinct();
        Assert.All(names, name => Assert.Contains($"`{name}`", docs, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_word_of_a_member_that_takes_a_few_is_in_the_tables()
    {
        var docs = DocsFolder.Read("trial.md");
        var words = Enum.GetValues<FleetWake.Propulsion.MeanSpeedMethod>().Select(AnswerJson.Snake)
            .Concat(Enum.GetValues<LogNoticeKind>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<LogFormat>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<WhyNotCompared>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<Cause>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<CauseGroup>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<SeparatingTest>().Select(AnswerJson.Snake))
            .Concat(Enum.GetValues<FleetWake.Propulsion.Advice.PitchVerdict>().Select(AnswerJson.Snake))
            .Concat(["in", "below", "above", "unclear", "no_gear", "no_prop"]);
        Assert.All(words, word => Assert.Contains($"`{word}`", docs, StringComparison.Ordinal));
    }

    private static List<string> Names(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Names(document.RootElement)];
    }

    private static IEnumerable<string> Names(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Names(member.Value).Prepend(member.Name)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Names),
        _ => [],
    };

    private static TrialAnswer Answer(double rpm, double knots)
    {
        // A broken line, so that the members of a dropped one are seen, too.
        using var reader = new StringReader($"rpm,speed_kn,heading_deg,oil\n{rpm},{knots},40,1\n{rpm},{knots},220,1\nx,1,1,1\n");
        return new TrialRequest(EngineOption.Read("gear=2.08"), PropOption.Read("11.5x13x3")).Of(TrialLog.Read(reader, new LogOptions()), "f");
    }
}
