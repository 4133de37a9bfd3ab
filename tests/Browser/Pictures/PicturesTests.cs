using FleetWake.Browser.Tests.Office;
using FleetWake.Tests.Kit;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Pictures;

/// <summary>
/// Pictures of every page, on a desk and on a phone, in light and in dark: <c>LOOK_AT=folder dotnet test tests/Browser --filter
/// Pictures</c> writes them of the demo's fleet. Without a folder each page of a small fleet is opened once and nothing is written.
/// </summary>
public sealed class PicturesTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("LOOK_AT") is { Length: > 0 } folder ? folder : null;
    private static readonly (string Name, int Width, int Height)[] Screens = [("desk", 1280, 800), ("phone", 390, 780), ("small", 320, 640)];
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = Folder is null
            ? await OfficeFleet.StartAsync(chromium, postgres, "pictures")
            : await BrowsedFleet.StartWithAsync(chromium, postgres, "pictures", "demo", DemoInBrowser.SendAsync);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task Every_page_opens_and_shows_itself()
    {
        if (Folder is not null) Directory.CreateDirectory(Folder);
        foreach (var looked in PageList.All)
        {
            foreach (var (screen, width, height) in Screens)
            {
                var window = await fleet.SignedInAsync(looked.Role, new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height } });
                var page = await window.NewPageAsync();
                var answer = await page.GotoAsync(looked.Path);
                Assert.True(answer?.Status == looked.Status, $"{looked.Path}: {answer?.Status}");
                Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") <= 0, $"{looked.Path} scrolls sideways on a {screen}");
                if (Folder is null) break;
                foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
                {
                    await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
                    var png = await page.ScreenshotAsync(new PageScreenshotOptions { FullPage = looked.Whole });
                    await File.WriteAllBytesAsync(Path.Combine(Folder, $"{looked.Name}-{screen}-{scheme.ToString().ToLowerInvariant()}.png"), PalettePng.Of(png), Ct);
                }

                await window.CloseAsync();
            }
        }
    }
}
