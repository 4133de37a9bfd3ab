using System.Text.Encodings.Web;
using Fluid;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>
/// Renders a template that somebody else wrote. Liquid itself sets no limits: a range of 1e8 runs for half a minute, a
/// text appended to itself forty times fills the memory. So tags and filters are a short list without any that makes text
/// or lists grow, ranges are small literals, and steps, recursion, output and time are bounded.
/// </summary>
internal static class Guarded
{
    public const int MostSteps = 200_000;
    public const int MostCharacters = 1_000_000;
    public static readonly TimeSpan MostTime = TimeSpan.FromSeconds(5);

    /// <summary>Filters that neither multiply text nor leave it unescaped.</summary>
    public static readonly IReadOnlySet<string> Filters = new HashSet<string>(StringComparer.Ordinal)
    {
        "size", "upcase", "downcase", "capitalize", "strip", "truncate", "first", "last", "default", "plus", "minus", "abs", "round",
    };

    // No include or render (partials are put in before, see TemplateText), no capture (it can double a text at each pass), no tags whose bodies the lint does not see.
    public static readonly string[] Tags = ["break", "continue", "comment", "#", "assign", "if", "unless", "case", "for", "cycle"];

    private static readonly FluidParser Parser = MakeParser();
    private static readonly TemplateOptions Options = MakeOptions();

    public static string Render(string source, DigestModel model, TextEncoder encoder)
    {
        if (!Parser.TryParse(source, out var template, out var error)) throw new TemplateRefused(error);
        new TemplateLint().VisitTemplate(template);
        var context = new TemplateContext(Options);
        model.Fill(context);

        // On a thread of its own, so that the wait can end and a busy pool does not count as a slow template; the steps
        // bound how long an abandoned one still runs.
        using var writer = new BoundedWriter(MostCharacters);
        var work = Task.Factory.StartNew(
            () => template.RenderAsync(writer, encoder, context).AsTask(), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).Unwrap();
        if (Task.WhenAny(work, Task.Delay(MostTime)).GetAwaiter().GetResult() != work) throw new TemplateRefused($"took longer than {MostTime.TotalSeconds:0} s");
        try
        {
            work.GetAwaiter().GetResult();
        }
        catch (Exception e) when (e.Message.StartsWith("The maximum ", StringComparison.Ordinal))
        {
            // The library says "recursion" for steps as well; with no include there is no recursion to speak of.
            throw new TemplateRefused($"takes more than {MostSteps} steps");
        }

        return writer.ToString();
    }

    private static FluidParser MakeParser()
    {
        var parser = new FluidParser(new FluidParserOptions { AllowFunctions = false, AllowLiquidTag = false });
        foreach (var tag in parser.RegisteredTags.Keys.Except(Tags).ToList()) parser.RegisteredTags.Remove(tag);
        return parser;
    }

    private static TemplateOptions MakeOptions()
    {
        var options = new TemplateOptions
        {
            StrictVariables = true,
            StrictFilters = true,
            MaxSteps = MostSteps,
            MaxRecursion = 100,
            FileProvider = new Microsoft.Extensions.FileProviders.NullFileProvider(),
            TimeZone = TimeZoneInfo.Utc,
        };
        foreach (var filter in options.Filters.Select(f => f.Key).Except(Filters).ToList()) options.Filters.Remove(filter);
        TemplateMembers.Register(options.MemberAccessStrategy);
        return options;
    }
}
