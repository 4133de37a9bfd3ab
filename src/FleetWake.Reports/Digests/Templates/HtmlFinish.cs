using System.Text.RegularExpressions;
using PreMailer.Net.Downloaders;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>
/// Makes rendered HTML fit for mail programs: styles on the elements, media queries kept, no indentation. What would have styles
/// fetched from elsewhere is refused beforehand, for the library fetches them: from any address that this machine can reach.
/// </summary>
internal static partial class HtmlFinish
{
    /// <summary>A thousand boats take a tenth of that.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(10);

    static HtmlFinish() => WebDownloader.SharedDownloader = new FetchesNothing();

    public static string Of(string html)
    {
        if (Fetching().Match(html) is { Success: true } found)
            throw new TemplateRefused($"{found.Value.Trim().ToLowerInvariant()}{(found.Value[0] == '<' ? ">" : "")} has no place in a mail");

        // Styles are matched element by element: what a template can make of it has no other bound.
        var work = Task.Factory.StartNew(() => Inlined(html), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        if (Task.WhenAny(work, Task.Delay(MostTime)).GetAwaiter().GetResult() != work) throw new TemplateRefused($"its styles took longer than {MostTime.TotalSeconds:0} s");

        // Mail programs cut off at about 100 KB: white space at line starts and empty lines are dead weight.
        return LineStarts().Replace(work.GetAwaiter().GetResult(), "\n");
    }

    private static string Inlined(string html)
    {
        using var mailer = new PreMailer.Net.PreMailer(html);
        return mailer.MoveCssInline(removeStyleElements: true, stripIdAndClassAttributes: false, removeComments: true, preserveMediaQueries: true).Html;
    }

    [GeneratedRegex(@"\s*\n\s*")]
    private static partial Regex LineStarts();

    [GeneratedRegex(@"<\s*(?:link|base)\b|@import", RegexOptions.IgnoreCase)]
    private static partial Regex Fetching();

    private sealed class FetchesNothing : IWebDownloader
    {
        public string DownloadString(Uri uri) => throw new TemplateRefused("styles from elsewhere have no place in a mail");
    }
}
