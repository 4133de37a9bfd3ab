using Microsoft.Playwright;

namespace FleetWake.Browser.Tests;

/// <summary>With LOOK_AT=folder, writes pages there as pictures, for looking at: phone and desktop, light and dark.</summary>
internal static class Looks
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("LOOK_AT") is { Length: > 0 } folder ? folder : null;

    /// <summary>Draws a page as it stands.</summary>
    public static async Task AtAsync(IPage page, string name)
    {
        if (Folder is null) return;
        Directory.CreateDirectory(Folder);
        var size = page.ViewportSize;
        foreach (var (width, form) in ((int, string)[])[(390, "phone"), (1280, "desktop")])
        {
            await page.SetViewportSizeAsync(width, 800);
            foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
            {
                await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
                await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Folder, $"{name}-{form}-{scheme.ToString().ToLowerInvariant()}.png"), FullPage = true });
            }
        }

        if (size is not null) await page.SetViewportSizeAsync(size.Width, size.Height);
    }
}
