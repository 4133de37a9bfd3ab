using System.Text.RegularExpressions;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Makes rendered HTML fit for mail programs: styles on the elements, media queries kept, no indentation.</summary>
internal static partial class HtmlFinish
{
    public static string Of(string html)
    {
        using var mailer = new PreMailer.Net.PreMailer(html);
        var inlined = mailer.MoveCssInline(removeStyleElements: true, stripIdAndClassAttributes: false, removeComments: true, preserveMediaQueries: true).Html;

        // Mail programs cut off at about 100 KB: white space at line starts and empty lines are dead weight.
        return LineStarts().Replace(inlined, "\n");
    }

    [GeneratedRegex(@"\s*\n\s*")]
    private static partial Regex LineStarts();
}
