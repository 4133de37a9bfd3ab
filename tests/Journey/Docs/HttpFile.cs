using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>One request of an example file.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Name">Name by which later requests take something out of its answer.</param>
/// <param name="Expect">The status that it is answered with.</param>
/// <param name="Method">Method.</param>
/// <param name="Path">Path and query.</param>
/// <param name="Headers">Headers by name.</param>
/// <param name="Body">Body; empty when there is none.</param>
internal sealed record ExampleStep(string Title, string? Name, int Expect, string Method, string Path, IReadOnlyDictionary<string, string> Headers, string Body);

/// <summary>Reads <c>.http</c> files as far as the examples go, and sends what stands in them.</summary>
internal sealed partial class HttpFile(HttpClient http, string key)
{
    private readonly Dictionary<string, (HttpResponseMessage Response, string Body)> answers = new(StringComparer.Ordinal);

    public static IReadOnlyList<ExampleStep> Read(string file) =>
        [.. File.ReadAllText(file).Split("\n### ").Skip(1).Select(Step)];

    /// <summary>Sends a request and returns its answer's status and body.</summary>
    public async Task<(int Status, string Body)> SendAsync(ExampleStep step, CancellationToken ct)
    {
        using var request = new HttpRequestMessage(new HttpMethod(step.Method), Fill(step.Path));
        foreach (var (name, value) in step.Headers)
        {
            if (name != "Content-Type") request.Headers.TryAddWithoutValidation(name, Fill(value));
            else request.Content = new StringContent(step.Body, Encoding.UTF8, value);
        }

        var response = await http.SendAsync(request, ct);
        var body = await response.Content.ReadAsStringAsync(ct);
        if (step.Name is not null) answers[step.Name] = (response, body);
        return ((int)response.StatusCode, body);
    }

    private static ExampleStep Step(string text)
    {
        var parts = text.Split("\n\n", 2);
        var lines = parts[0].Split('\n');
        string? Said(string what) => lines.FirstOrDefault(l => l.StartsWith(what, StringComparison.Ordinal))?[what.Length..].Trim();
        var rest = lines.Skip(1).Where(l => l.Length > 0 && l[0] != '#').ToList();
        var request = rest[0].Split(' ', 2);
        return new ExampleStep(
            lines[0], Said("# @name "), int.Parse(Said("# expect ") ?? throw new InvalidOperationException($"\"{lines[0]}\" says not what to expect")),
            request[0], request[1].Replace("{{address}}", "", StringComparison.Ordinal),
            rest.Skip(1).Select(h => h.Split(": ", 2)).ToDictionary(h => h[0], h => h[1], StringComparer.Ordinal),
            parts.Length > 1 ? parts[1].Trim() : "");
    }

    private string Fill(string text) => Braces().Replace(text, m => m.Groups[1].Value.Split('.') switch
    {
        ["key"] => key,
        [var name, "response", "headers", var header] => answers[name].Response.Headers.GetValues(header).Single(),
        [var name, "response", "body", "$", var member] => JsonNode.Parse(answers[name].Body)![member]!.GetValue<string>(),
        _ => throw new InvalidOperationException($"{m.Value} is nothing that the examples know"),
    });

    [GeneratedRegex(@"\{\{([^{}]+)\}\}")]
    private static partial Regex Braces();
}
