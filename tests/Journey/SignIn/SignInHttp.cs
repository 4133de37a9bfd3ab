using System.Net;
using System.Text.RegularExpressions;
using FleetWake.Logbook.People;
using FleetWake.Store.People;
using FleetWake.Tests.Program;
using Marten;

namespace FleetWake.Journey.Tests;

/// <summary>A browser without a screen: keeps cookies, follows nothing, and sends forms as pages make them.</summary>
internal sealed partial class SignInHttp : IDisposable
{
    public const string Password = "wet varnish, dry rope";
    private readonly CookieContainer cookies = new();
    private readonly HttpClient http;

    public SignInHttp(RunningFleet fleet) =>
        http = new HttpClient(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = new Uri(fleet.App.Urls.First()) };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public CookieCollection Cookies => cookies.GetCookies(http.BaseAddress!);

    /// <summary>The browser of somebody of a role.</summary>
    public static async Task<SignInHttp> AsAsync(RunningFleet fleet, Role role, string person)
    {
        var card = new PersonCard(PersonCard.KeyOf(RunningFleet.Operator, person), RunningFleet.Operator, person, "Some " + role, null, role);
        await using (var session = fleet.Service<IDocumentStore>().LightweightSession())
        {
            session.Store(card);
            await session.SaveChangesAsync(Ct);
        }

        var browser = new SignInHttp(fleet);
        browser.cookies.Add(browser.http.BaseAddress!, new Cookie("fleetwake", await fleet.Service<FleetSessions>().BeginAsync(card, Ct)));
        return browser;
    }

    public async Task<(HttpStatusCode Status, string Text, string? Location)> GetAsync(string path)
    {
        using var answer = await http.GetAsync(path, Ct);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Ct), answer.Headers.Location?.OriginalString);
    }

    /// <summary>Asks for a page as a browser's address line does.</summary>
    public async Task<(HttpStatusCode Status, string Text, string? Location)> SeeAsync(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Accept.ParseAdd("text/html,application/xhtml+xml,*/*;q=0.8");
        using var answer = await http.SendAsync(request, Ct);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Ct), answer.Headers.Location?.OriginalString);
    }

    /// <summary>Sends a form of a page, with that page's token.</summary>
    public async Task<(HttpStatusCode Status, string Text, string? Location)> PostAsync(string page, string path, params (string Name, string Value)[] fields) =>
        await PostBareAsync(path, [.. fields, ("form-token", Token().Match((await GetAsync(page)).Text).Groups[1].Value)]);

    /// <summary>Sends a form that comes from nowhere.</summary>
    public async Task<(HttpStatusCode Status, string Text, string? Location)> PostBareAsync(string path, params (string Name, string Value)[] fields)
    {
        using var content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Name, f.Value)));
        using var answer = await http.PostAsync(path, content, Ct);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Ct), answer.Headers.Location?.OriginalString);
    }

    public async Task<HttpStatusCode> SendAsync(HttpMethod method, string path)
    {
        using var request = new HttpRequestMessage(method, path);
        using var answer = await http.SendAsync(request, Ct);
        return answer.StatusCode;
    }

    public void Dispose() => http.Dispose();

    [GeneratedRegex("name=\"form-token\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
