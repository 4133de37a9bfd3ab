using System.Net;
using System.Text;
using FleetWake.Reports.Digests;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Layouts;

/// <summary>
/// A digest in a frame of its page. Somebody wrote its template: whatever it holds, it runs no script, loads nothing, sends no
/// form, and stands apart from the page and its cookies (sandbox, Content Security Policy Level 3, 6.2.2).
/// </summary>
internal static class TemplateLook
{
    private const string Policy = "sandbox; default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'; frame-ancestors 'self'";

    /// <summary>The digest as <c>light</c>, <c>dark</c> or <c>text</c>; what is wrong with its template, when something is.</summary>
    public static IResult Of(HttpContext http, RenderedDigest digest, string show)
    {
        http.Response.Headers.ContentSecurityPolicy = Policy;
        http.Response.Headers.CacheControl = "no-store";
        var html = digest.Faults.Count > 0 ? Faults(digest) : show == "text" ? Page($"<pre>{WebUtility.HtmlEncode(digest.Text)}</pre>") : Themed(Shown(digest), show == "dark");
        return Results.Text(html, "text/html", Encoding.UTF8);
    }

    private static string Shown(RenderedDigest digest) =>
        digest.Pictures.Aggregate(digest.Html, (html, p) => html.Replace($"cid:{p.ContentId}", $"data:image/png;base64,{Convert.ToBase64String(p.Png)}", StringComparison.Ordinal));

    // A page cannot make its frame dark or light; its rules for the dark are taken at their word, or out.
    private static string Themed(string html, bool dark) => html.Replace("(prefers-color-scheme: dark)", dark ? "all" : "not all", StringComparison.Ordinal);

    private static string Faults(RenderedDigest digest)
    {
        var list = new StringBuilder("<ol>");
        foreach (var fault in digest.Faults)
            list.Append("<li><b>").Append(WebUtility.HtmlEncode($"{fault}")).Append("</b><br>").Append(WebUtility.HtmlEncode(fault.Mend)).Append("</li>");
        return Page($"<p>This cannot be laid out:</p>{list}</ol>");
    }

    private static string Page(string body) =>
        $"<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Look</title><style>body{{margin:12px;font:15px/1.45 sans-serif;background:#fff;color:#1f2933}}pre{{font:13px/1.4 monospace;white-space:pre-wrap}}li{{margin:0 0 8px}}</style></head><body>{body}</body></html>";
}
