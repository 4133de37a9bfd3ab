using System.Text.Json;
using System.Text.Json.Nodes;

namespace FleetWake.Logbook.Tests.Golden;

/// <summary>See README.md here for how to add a file.</summary>
public class Stored_facts
{
    private const string Write = "FLEETWAKE_WRITE_GOLDEN";

    private static readonly JsonSerializerOptions s_readable = new(LogbookJson.Options) { WriteIndented = true, NewLine = "\n" };

    public static TheoryData<string> Names => [.. LogbookJson.StoredNames.Values, .. SampleFacts.Grown.Keys];

    [Fact]
    public void Every_fact_type_has_its_sample() =>
        Assert.Equal(LogbookJson.StoredNames.Keys.ToHashSet(), SampleFacts.All.Select(f => f.GetType()).ToHashSet());

    [Fact]
    public void Every_file_is_of_a_fact() => Assert.Equal(
        LogbookJson.StoredNames.Values.Concat(SampleFacts.Grown.Keys).Order(StringComparer.Ordinal),
        Directory.GetFiles(Folder(), "*.json").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fact_is_written_as_its_golden_file_says(string name)
    {
        var file = Path.Combine(Folder(), name + ".json");
        var written = JsonSerializer.Serialize(Sample(name), s_readable) + "\n";
        if (!File.Exists(file))
        {
            if (Environment.GetEnvironmentVariable(Write) == "1") File.WriteAllText(file, written);
            Assert.Fail($"{name} had no golden file: set {Write}=1 to have it written, then read and commit it.");
        }

        Assert.Equal(File.ReadAllText(file), written);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_golden_file_is_read_as_the_fact_it_is(string name)
    {
        var read = JsonSerializer.Deserialize<IFact>(File.ReadAllText(Path.Combine(Folder(), name + ".json")), LogbookJson.Options)!;
        Assert.Equal(Sample(name).GetType(), read.GetType());
        Assert.Equal(Spec.Json(Sample(name)), Spec.Json(read));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fact_survives_its_own_JSON(string name)
    {
        var fact = Sample(name);
        var asItself = JsonSerializer.Deserialize(JsonSerializer.Serialize(fact, fact.GetType(), LogbookJson.Options), fact.GetType(), LogbookJson.Options);
        Assert.Equal(fact.Entry, ((IFact)asItself!).Entry);
        Assert.Equal(Spec.Json(fact), Spec.Json((IFact)asItself));
        Assert.Equal(Spec.Json(fact), Spec.Json(JsonSerializer.Deserialize<IFact>(Spec.Json(fact), LogbookJson.Options)!));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fact_survives_a_store_that_sorts_its_fields(string name)
    {
        // jsonb keeps fields by length and then by letters, so the name of the fact is not always first.
        var fields = JsonNode.Parse(Spec.Json(Sample(name)))!.AsObject().Select(f => KeyValuePair.Create(f.Key, f.Value?.DeepClone()));
        var sorted = new JsonObject(fields.OrderBy(f => f.Key.Length).ThenBy(f => f.Key, StringComparer.Ordinal)).ToJsonString();
        Assert.Equal(Spec.Json(Sample(name)), Spec.Json(JsonSerializer.Deserialize<IFact>(sorted, LogbookJson.Options)!));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_sample_leaves_a_field_out(string name)
    {
        // A member that came later stands in a sample and a file of its own, for the first file is what lies in the store.
        var grown = SampleFacts.Grown.Values.Where(f => f.GetType() == Sample(name).GetType());
        Assert.All(Sample(name).GetType().GetProperties(), p => Assert.Contains([Sample(name), .. grown], f => p.GetValue(f) is not null));
    }

    [Fact]
    public void A_number_where_a_word_belongs_is_not_read() =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<IFact>(Spec.Json(Sample("retracted")).Replace("\"recorded_twice\"", "2", StringComparison.Ordinal), LogbookJson.Options));

    private static IFact Sample(string name) => SampleFacts.Grown.TryGetValue(name, out var grown) ? grown : SampleFacts.All.Single(f => LogbookJson.StoredNames[f.GetType()] == name);

    // Found from where the tests run: the path of a source file is not told by a deterministic build.
    private static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var golden = Path.Combine(at.FullName, "tests", "Logbook", "Golden");
            if (Directory.Exists(golden)) return golden;
        }

        throw new DirectoryNotFoundException("The folder tests/Logbook/Golden lies in no folder above the tests.");
    }
}
