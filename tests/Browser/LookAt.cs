using Microsoft.Playwright;

namespace FleetWake.Browser.Tests;

/// <summary>Writes pages as pictures into the folder that LOOK_AT names, light and dark, wide and narrow: some things only an eye finds.</summary>
internal static class LookAt
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("LOOK_AT") is { Length: > 0 } folder ? folder : null;

    /// <summary>Writes the page under a name; does nothing when no folder is named.</summary>
    public static async Task PageAsync(IPage page, string name)
    {
        if (Folder is null) return;
        foreach (var (scheme, width) in ((ColorScheme, int)[])[(ColorScheme.Light, 1280), (ColorScheme.Dark, 1280), (ColorScheme.Light, 360)])
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
            await page.SetViewportSizeAsync(width, 800);
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Folder, $"{name}-{scheme.ToString().ToLowerInvariant()}-{width}.png"), FullPage = true });
        }

        await page.SetViewportSizeAsync(1280, 800);
    }
}
