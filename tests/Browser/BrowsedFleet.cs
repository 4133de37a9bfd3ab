using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.People;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.SignIn;
using Marten;
using Microsoft.Playwright;
using Xunit.Sdk;

namespace FleetWake.Browser.Tests;

/// <summary>A running fleet seen through a browser: a test class takes one for itself.</summary>
public sealed class BrowsedFleet(ChromiumFixture chromium, RunningFleet fleet) : IAsyncDisposable
{
    private readonly List<IBrowserContext> windows = [];
    private ITest? opener;

    /// <summary>The program.</summary>
    public RunningFleet Fleet => fleet;

    /// <summary>Address of the program.</summary>
    public string Url => fleet.App.Urls.First();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Starts the program on a fresh database.</summary>
    public static async Task<BrowsedFleet> StartAsync(ChromiumFixture chromium, PostgresFixture postgres, string hint, TimeProvider? time = null) =>
        new(chromium, await OnAsync(await postgres.NewDatabaseAsync(hint, Ct), time));

    /// <summary>Starts the program on a copy of a fleet that was recorded and assessed once in this run.</summary>
    public static async Task<BrowsedFleet> StartWithAsync(ChromiumFixture chromium, PostgresFixture postgres, string hint, string filling, Func<RunningFleet, CancellationToken, Task> fill)
    {
        var database = await postgres.CopyAsync(
            hint,
            filling,
            async filled =>
            {
                await using var first = await OnAsync(filled);
                await fill(first, CancellationToken.None); // the copies are of all tests, whichever of them is ended
            },
            Ct);
        return new(chromium, await OnAsync(database));
    }

    /// <summary>A window of its own, as on another machine.</summary>
    public async Task<IBrowserContext> WindowAsync(BrowserNewContextOptions? options = null)
    {
        if (opener != TestContext.Current.Test)
        {
            // Those of the test before: a page of the dock goes on looking and sending as long as it is open.
            opener = TestContext.Current.Test;
            await CloseAsync();
        }

        options ??= new BrowserNewContextOptions();
        options.BaseURL = Url;
        var window = await chromium.Browser.NewContextAsync(options);
        window.SetDefaultTimeout(30_000); // the first page of a program takes seconds of a core, and others may want it
        windows.Add(window);
        return window;
    }

    /// <summary>A window in which somebody of a role is signed in.</summary>
    public async Task<IBrowserContext> SignedInAsync(Role role, BrowserNewContextOptions? options = null)
    {
        var person = new PersonCard(PersonCard.KeyOf(RunningFleet.Operator, "some-" + role.ToString().ToLowerInvariant()), RunningFleet.Operator, "some-" + role.ToString().ToLowerInvariant(), "Some " + role, null, role);
        await using (var session = fleet.Service<IDocumentStore>().LightweightSession())
        {
            session.Store(person);
            await session.SaveChangesAsync(Ct);
        }

        var secret = await fleet.Service<FleetSessions>().BeginAsync(person, Ct);
        var window = await WindowAsync(options);
        await window.AddCookiesAsync([new Cookie { Name = "fleetwake", Value = secret, Url = Url, HttpOnly = true, SameSite = SameSiteAttribute.Lax }]);
        return window;
    }

    public async ValueTask DisposeAsync()
    {
        await CloseAsync();
        await fleet.DisposeAsync();
    }

    private static Task<RunningFleet> OnAsync(string database, TimeProvider? time = null) =>
        RunningFleet.StartAsync(database, new MailSettings("a@b.example", Path.GetTempPath(), null), time, digests: TimeSpan.FromMinutes(1), ct: Ct);

    private async Task CloseAsync()
    {
        foreach (var window in windows) await window.DisposeAsync();
        windows.Clear();
    }
}
