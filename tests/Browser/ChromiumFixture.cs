using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(FleetWake.Browser.Tests.ChromiumFixture))]

namespace FleetWake.Browser.Tests;

/// <summary>One Chromium for all tests, from the system's packages; a test that finds none fails and says how to install it.</summary>
public sealed class ChromiumFixture : IAsyncLifetime
{
    private static readonly string[] UsualPlaces =
    [
        "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/snap/bin/chromium",
        "/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        @"C:\Program Files\Google\Chrome\Application\chrome.exe", @"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
    ];

    private IPlaywright? driver;

    /// <summary>The browser.</summary>
    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        var chromium = Environment.GetEnvironmentVariable("FLEETWAKE_CHROMIUM") is { Length: > 0 } named ? named : UsualPlaces.FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException("No Chromium was found: install it (Debian and Ubuntu: apt-get install chromium), or name it in FLEETWAKE_CHROMIUM.");
        driver = await Playwright.CreateAsync();
        Browser = await driver.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = chromium,
            // Chromium's sandbox does not run as root.
            ChromiumSandbox = Environment.UserName != "root",
            Args = ["--disable-dev-shm-usage", "--disable-gpu"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null) await Browser.DisposeAsync();
        driver?.Dispose();
    }
}
