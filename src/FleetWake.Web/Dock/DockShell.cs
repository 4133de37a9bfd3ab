using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>
/// The mechanic's app as the server sees it: one page without data for every address below <c>/dock</c>, the words it shows, the
/// worker that keeps it on the phone, and what a phone needs to put it on its home screen.
/// </summary>
public static class DockShell
{
    private const string Modules = "dock/";

    /// <summary>What the boat card needs before anything can be seen: named in the page, so that a slow phone asks for all of it at once.</summary>
    private static readonly string[] First =
    [
        "main", "db", "dom", "texts", "time", "state", "api", "device", "today", "outbox", "sending", "shapes", "frame", "router", "hire", "space",
    ];

    private static string TextsJson { get; } = JsonSerializer.Serialize(
        PageTexts.English.Keys.Where(k => k.StartsWith("dock", StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToDictionary(k => k, k => PageTexts.English[k]));

    private static byte[] PackedTexts { get; } = Pack(TextsJson);

    private static string TextsHash { get; } = HashOf(TextsJson);

    /// <summary>Changes whenever the page, a module or a word does: the phone keeps one version whole.</summary>
    public static string Version { get; } = AssetFiles.Version == "dev" ? "dev" : VersionOf(PageOf(""));

    /// <summary>Maps the addresses.</summary>
    public static void MapDockShell(this IEndpointRouteBuilder routes)
    {
        var dock = routes.MapGroup("/dock").ExcludeFromDescription();
        dock.MapGet("sw.js", (HttpContext http) => Answer(http, Worker(), "text/javascript; charset=utf-8"));
        dock.MapGet("manifest.webmanifest", (HttpContext http) => OfVersion(http, Version) ?? Answer(http, Manifest(), "application/manifest+json"));
        dock.MapGet("texts.json", Texts);
        dock.MapGet("", (HttpContext http) => OfVersion(http, Version) ?? Answer(http, Page(), "text/html; charset=utf-8"));
        dock.MapGet("{**path}", (string path, HttpContext http) =>
            path == "api" || path.StartsWith("api/", StringComparison.Ordinal) ? Results.NotFound() : Answer(http, Page(), "text/html; charset=utf-8"));
    }

    /// <summary>The page. It holds no data, so that a phone may show it to whoever holds the phone; the module asks for the rest.</summary>
    internal static string Page() => PageOf(Version);

    private static string PageOf(string version)
    {
        var texts = PageTexts.English;
        var page = new StringBuilder($"""
            <!DOCTYPE html>
            <html lang="{texts.Language}">
            <head>
              <meta charset="utf-8">
              <meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
              <meta name="theme-color" content="#eef1f4" media="(prefers-color-scheme: light)">
              <meta name="theme-color" content="#12181f" media="(prefers-color-scheme: dark)">
              <title>{Text("dock.title")}</title>
              <link rel="stylesheet" href="{AssetFiles.Url("css/frame.css")}">
              <link rel="stylesheet" href="{AssetFiles.Url(Modules + "dock.css")}">
              <link rel="manifest" href="/dock/manifest.webmanifest">
              <link rel="icon" href="{AssetFiles.Url(Modules + "icon.svg")}" type="image/svg+xml">
              <link rel="apple-touch-icon" href="{AssetFiles.Url(Modules + "icon-192.png")}">
              <link rel="preload" href="{TextsUrl()}" as="fetch" crossorigin>

            """);
        foreach (var module in First) page.Append($"  <link rel=\"modulepreload\" href=\"{AssetFiles.Url($"{Modules}{module}.js")}\">\n");
        page.Append($"""
              <script type="module" src="{AssetFiles.Url(Modules + "main.js")}"></script>
            </head>
            <body data-version="{version}" data-texts="{TextsUrl()}">
              <header class="bar" id="bar"></header>
              <main id="page"><p class="quiet" id="starting">{Text("dock.starting")}</p></main>
              <noscript><p class="note">{Text("dock.noscript")}</p></noscript>
              <nav class="places" id="places" aria-label="{Text("dock.places")}"></nav>
              <div id="told" role="status" aria-live="polite"></div>
            </body>
            </html>

            """);
        return page.ToString();

        string Text(string key) => WebUtility.HtmlEncode(texts[key]);
    }

    /// <summary>The worker: its code is an asset, its version and what it keeps stand before it, so that any change makes it another file.</summary>
    private static string Worker()
    {
        string[] files = ["/dock/?v=" + Version, TextsUrl(), "/dock/manifest.webmanifest?v=" + Version, AssetFiles.Url("css/frame.css"), .. AssetFiles.Names.Where(n => n.StartsWith(Modules, StringComparison.Ordinal) && n != Modules + "sw.js").Select(AssetFiles.Url)];
        return $"const VERSION = {JsonSerializer.Serialize(Version)};\nconst FILES = {JsonSerializer.Serialize(files)};\n" + Encoding.UTF8.GetString(AssetFiles.Bytes(Modules + "sw.js"));
    }

    private static string Manifest() => JsonSerializer.Serialize(new
    {
        id = "/dock/",
        name = PageTexts.English["dock.app"],
        short_name = PageTexts.English["dock.app"],
        start_url = "/dock/",
        scope = "/dock/",
        display = "standalone",
        background_color = "#eef1f4",
        theme_color = "#eef1f4",
        icons = new object[]
        {
            new { src = AssetFiles.Url(Modules + "icon.svg"), sizes = "any", type = "image/svg+xml", purpose = "any" },
            new { src = AssetFiles.Url(Modules + "icon-192.png"), sizes = "192x192", type = "image/png", purpose = "any" },
            new { src = AssetFiles.Url(Modules + "icon-512.png"), sizes = "512x512", type = "image/png", purpose = "any maskable" },
        },
    });

    private static IResult Texts(HttpContext http)
    {
        // Named by its version it never changes; a phone that asks without one gets the newest.
        if (OfVersion(http, TextsHash) is { } gone) return gone;
        if (http.Request.Query.ContainsKey("v")) http.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        http.Response.Headers.Vary = "Accept-Encoding";
        if (!http.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal)) return Results.Text(TextsJson, "application/json; charset=utf-8");
        http.Response.Headers.ContentEncoding = "br";
        return Results.Bytes(PackedTexts, "application/json; charset=utf-8");
    }

    /// <summary>
    /// A 404 to who names another version than this program has: while a fleet of programs is renewed one after another, a phone
    /// must not mix files of two versions into one app. Null to who names this one, or none.
    /// </summary>
    private static IResult? OfVersion(HttpContext http, string version) =>
        http.Request.Query.TryGetValue("v", out var named) && named != version ? Results.NotFound() : null;

    private static IResult Answer(HttpContext http, string text, string type)
    {
        var tag = $"\"{HashOf(text)}\"";
        http.Response.Headers.ETag = tag;
        http.Response.Headers.CacheControl = "no-cache";
        return http.Request.Headers.IfNoneMatch == tag ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Text(text, type);
    }

    private static string TextsUrl() => $"/dock/texts.json?v={TextsHash}";

    private static byte[] Pack(string text)
    {
        var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) brotli.Write(Encoding.UTF8.GetBytes(text));
        return packed.ToArray();
    }

    /// <summary>The version of an app with this page: of whatever a phone keeps.</summary>
    internal static string VersionOf(string page) => HashOf(AssetFiles.Version + TextsJson + page + Manifest());

    private static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..12];
}
