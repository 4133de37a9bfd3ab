using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Pictures;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Pictures;

/// <summary>
/// Every digest in a browser, on a desk and on a phone, in light, in dark and on paper: <c>LOOK_AT=folder dotnet test tests/Browser --filter
/// DigestPictures</c> writes them. Nothing of one may stick out sideways.
/// </summary>
public sealed class DigestPicturesTests(ChromiumFixture chromium)
{
    private static readonly (string Name, int Width, int Height)[] Screens = [("desk", 1000, 800), ("phone", 360, 780)];

    public static TheoryData<string> Digests => [.. SampleDigests.All.Select(d => d.Digest)];

    [Theory]
    [MemberData(nameof(Digests))]
    public async Task A_digest_fits_a_phone_and_a_desk_in_light_and_dark(string name)
    {
        var digest = new DigestRenderer(new PngRenderer()).Render(SampleDigests.Of(name)!);
        var html = digest.Pictures.Aggregate(digest.Html, (h, p) => h.Replace($"cid:{p.ContentId}", $"data:image/png;base64,{Convert.ToBase64String(p.Png)}", StringComparison.Ordinal));
        foreach (var (screen, width, height) in Screens)
        {
            await using var window = await chromium.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height } });
            var page = await window.NewPageAsync();
            await page.SetContentAsync(html);
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, $"{name} scrolls sideways on a {screen}");
            Assert.True(await page.EvaluateAsync<bool>("[...document.images].every(i => i.complete && i.naturalWidth > 0)"), $"{name} lacks a picture");
            if (Environment.GetEnvironmentVariable("LOOK_AT") is not { Length: > 0 } folder) continue;
            Directory.CreateDirectory(folder);
            foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
            {
                await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
                await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = true, Path = Path.Combine(folder, $"{name}-{screen}-{scheme.ToString().ToLowerInvariant()}.png") });
            }
        }
    }
}
