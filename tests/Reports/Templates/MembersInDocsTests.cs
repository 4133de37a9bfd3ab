using System.Text;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;

namespace FleetWake.Reports.Tests.Templates;

/// <summary>docs/templates.md lists what each digest has, made from the code: FLEETWAKE_WRITE_DOCS=1 writes it.</summary>
public class MembersInDocsTests
{
    private const string Begin = "<!-- made from the code -->";
    private const string End = "<!-- to here -->";

    [Fact]
    public void What_templates_can_name_stands_in_the_docs_as_the_code_has_it()
    {
        var file = RepositoryFolder.Of("docs", "templates.md");
        var text = File.ReadAllText(file);
        var (from, to) = (text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, text.IndexOf(End, StringComparison.Ordinal));
        var made = $"\n\n{Members()}\n";
        if (Environment.GetEnvironmentVariable("FLEETWAKE_WRITE_DOCS") is not null) File.WriteAllText(file, text[..from] + made + text[to..]);
        Assert.Equal(made, File.ReadAllText(file)[from..][..made.Length]);
    }

    private static string Members()
    {
        var text = new StringBuilder();
        foreach (var digest in SampleDigests.All)
        {
            text.Append("**").Append(digest.Digest).Append("** (every one has `subject`, and `charts` with `key`, `title`, `alt`, `cid`, `why_not`)\n\n");
            foreach (var (path, type) in TemplateMembers.Tree(digest.Content.GetType()))
                text.Append("- ").Append(path.Length == 0 ? "itself" : $"each of `{path}`").Append(": ").AppendJoin(", ", TemplateMembers.Of(type).Select(m => $"`{m.Name}`")).Append('\n');
            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }
}
