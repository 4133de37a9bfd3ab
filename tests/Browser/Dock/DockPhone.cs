using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>A phone of the dock in somebody's hand: what a person does with it, step by step.</summary>
internal sealed class DockPhone(IBrowserContext window, IPage page)
{
    static DockPhone() => Assertions.SetDefaultExpectTimeout(20_000);

    public IBrowserContext Window => window;

    public IPage Page { get; private set; } = page;

    /// <summary>A phone fresh from its box.</summary>
    public static async Task<DockPhone> NewAsync(OldMole dock, BrowserNewContextOptions? options = null)
    {
        options ??= new BrowserNewContextOptions();
        options.ViewportSize = new ViewportSize { Width = 390, Height = 844 };
        options.HasTouch = true;
        options.Locale = "en-GB";
        var window = await dock.Fleet.WindowAsync(options);
        return new DockPhone(window, await window.NewPageAsync());
    }

    /// <summary>A phone that is enrolled, in Ana's hand, and keeps the app.</summary>
    public static async Task<DockPhone> EnrolledAsync(OldMole dock, BrowserNewContextOptions? options = null, string at = "old-mole")
    {
        var phone = await NewAsync(dock, options);
        await phone.EnrolAsync(await dock.CodeAsync(at));
        await phone.IsKeptAsync();
        return phone;
    }

    /// <summary>Joins the dock, in Ana's hand.</summary>
    public async Task EnrolAsync(string code, string office = "")
    {
        await Page.GotoAsync(office + "/dock/enrol#" + code);
        await Page.GetByLabel("What shall the office call this phone?").FillAsync("Blue phone");
        await TapAsync("Join");
        await TapAsync("Ana");
        await TapAsync("Go on without a PIN");
        await IsAtAsync("Boats");
    }

    /// <summary>Asks for what is unsent to go now. It may go by itself at that very moment, and the button with it.</summary>
    public Task SendNowAsync() => Page.WaitForFunctionAsync(
        """
        () => {
          const now = [...document.querySelectorAll('button')].find(b => b.textContent.trim() === 'Send now');
          now?.click();
          return !!now || document.querySelector('#places').textContent.includes('All sent');
        }
        """);

    /// <summary>Taps a key by its words.</summary>
    public Task TapAsync(string words) => Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = words }).First.ClickAsync();

    /// <summary>Follows a link by its words.</summary>
    public Task FollowAsync(string words) => Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = words }).First.ClickAsync();

    /// <summary>Picks a key of a question.</summary>
    public Task PickAsync(string question, string answer) => Page.GetByRole(AriaRole.Group, new PageGetByRoleOptions { Name = question }).Locator("label", new LocatorLocatorOptions { HasText = answer }).First.ClickAsync();

    /// <summary>Types into a field.</summary>
    public Task TypeAsync(string label, string text) => Page.GetByLabel(label).First.FillAsync(text);

    /// <summary>Opens what is folded.</summary>
    public Task UnfoldAsync(string words) => Page.Locator("summary", new PageLocatorOptions { HasText = words }).First.ClickAsync();

    /// <summary>Records what the form says.</summary>
    public async Task RecordAsync(string heading)
    {
        await TapAsync("Record");
        await IsAtAsync("Recorded: " + heading);
    }

    /// <summary>Records a strike that chipped the prop of a boat with one engine.</summary>
    public async Task StrikeAsync(string boat, string on)
    {
        await GoAsync($"/dock/b/{boat}/strike");
        await IsAtAsync("Strike");
        await TapAsync(on);
        await TapAsync("chipped");
        await IsAtAsync("Recorded: Strike");
    }

    /// <summary>Goes to another page of the app without a load, as its links do.</summary>
    public Task GoAsync(string path) => Page.EvaluateAsync("path => { history.pushState(null, '', path); dispatchEvent(new PopStateEvent('popstate')); }", path);

    /// <summary>Goes to an address as a tag or the home screen does.</summary>
    public Task OpenAsync(string path) => Page.GotoAsync(path);

    /// <summary>Waits until the page's heading says this.</summary>
    public Task IsAtAsync(string heading) => Assertions.Expect(Page.Locator("h1")).ToContainTextAsync(heading);

    /// <summary>Waits until something can be read.</summary>
    public Task ReadsAsync(string words) => Assertions.Expect(Page.Locator("body")).ToContainTextAsync(words, new LocatorAssertionsToContainTextOptions { UseInnerText = true });

    /// <summary>The app is on the phone: it opens without signal.</summary>
    public Task IsKeptAsync() => Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => 1)");

    public Task LoseSignalAsync() => window.SetOfflineAsync(true);

    public Task FindSignalAsync() => window.SetOfflineAsync(false);

    /// <summary>Asks a module of the app as it runs in the page; the module is <c>m</c>.</summary>
    public Task<T> AsksAsync<T>(string module, string question) =>
        Page.EvaluateAsync<T>($"async () => {{ const m = await import(document.querySelector('script[type=module]').src.replace('main.js', '{module}.js')); return {question}; }}");

    /// <summary>Everything that the phone keeps, as text.</summary>
    public Task<string> StoreAsync() => Page.EvaluateAsync<string>("""
        () => new Promise((done, failed) => {
          const asked = indexedDB.open('fleetwake-dock');
          asked.onerror = failed;
          asked.onsuccess = async () => {
            const all = {};
            for (const name of asked.result.objectStoreNames) all[name] = await new Promise(r => { asked.result.transaction(name).objectStore(name).getAll().onsuccess = e => r(e.target.result); });
            asked.result.close();
            done(JSON.stringify(all));
          };
        })
        """);

    /// <summary>The phone's clock is off by some days, as long as <c>localStorage.off</c> says so.</summary>
    public Task SetClockAsync(int daysSlow) => Page.AddInitScriptAsync($$"""
        { const D = Date; localStorage.off ??= '{{daysSlow}}'; const off = () => Number(localStorage.off) * 86400000;
          Date = class extends D { constructor(...a) { if (a.length) super(...a); else super(D.now() - off()); } static now() { return D.now() - off(); } }; }
        """);

    /// <summary>Something between phone and office answers in its place.</summary>
    public Task AnswerAsync(string path, int status, string body, string type = "text/html") =>
        window.RouteAsync("**/dock/api/" + path, route => route.FulfillAsync(new RouteFulfillOptions { Status = status, Body = body, ContentType = type }));

    /// <summary>The office answers again.</summary>
    public Task AnswerNoMoreAsync(string path) => window.UnrouteAsync("**/dock/api/" + path);

    /// <summary>Waits until something can no more be read.</summary>
    public Task ReadsNoMoreAsync(string words) => Assertions.Expect(Page.Locator("body")).Not.ToContainTextAsync(words, new LocatorAssertionsToContainTextOptions { UseInnerText = true });

    /// <summary>Shuts the app and opens it again at an address.</summary>
    public async Task ReopenAsync(string path = "/dock/")
    {
        await Page.CloseAsync();
        Page = await window.NewPageAsync();
        await Page.GotoAsync(path);
    }

    /// <summary>Waits until nothing is unsent.</summary>
    public Task AllSentAsync() => Assertions.Expect(Page.Locator("#places")).ToContainTextAsync("All sent");
}
