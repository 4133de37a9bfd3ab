using System.Net;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Tests.Program;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;

namespace FleetWake.Journey.Tests.SignIn;

/// <summary>Every route there is, held against what it asks of whoever comes.</summary>
public sealed class GuardTests(SharedFleet shared) : IClassFixture<SharedFleet>
{
    private readonly RunningFleet fleet = shared.Fleet;

    [Fact]
    public void Whatever_changes_something_carries_a_token_of_our_pages_or_a_secret_that_no_browser_sends_by_itself()
    {
        var open = Routes().Where(r => r.Methods.Any(FormGuard.Changes) && !IsGuarded(r.Endpoint) && !NeedsBearer(r.Endpoint)).Select(r => r.Endpoint.RoutePattern.RawText).ToList();

        // No cookie is read there: a link of a mail, which only its reader has (out, and back for who left by it), and a phone that brings a code or a token of its own.
        Assert.All(open, path => Assert.True(path is "/unsubscribe/{token}" or "/unsubscribe/{token}/back" or "/confirm/{secret}" || path!.StartsWith("/dock/api/", StringComparison.Ordinal), $"{path} takes changes from any site"));
        Assert.Contains(Routes(), r => IsGuarded(r.Endpoint));
    }

    [Fact]
    public void Whatever_asks_for_somebody_is_guarded() =>
        Assert.All(Routes().Where(r => Schemes(r.Endpoint).Contains(SessionHandler.SchemeName)), r => Assert.True(IsGuarded(r.Endpoint), r.Endpoint.DisplayName));

    [Fact]
    public void Every_page_of_the_office_says_what_it_needs() =>
        Assert.All(
            Routes().Where(r => r.Endpoint.RoutePattern.RawText!.StartsWith("/office", StringComparison.Ordinal)),
            r => Assert.True(Schemes(r.Endpoint).Contains(SessionHandler.SchemeName), r.Endpoint.DisplayName));

    [Theory]
    [InlineData(Role.Mechanic)]
    [InlineData(Role.Operator)]
    [InlineData(Role.Manager)]
    [InlineData(Role.Analyst)]
    [InlineData(Role.Administrator)]
    public async Task Every_route_answers_a_role_as_the_table_says(Role role)
    {
        using var browser = await SignInHttp.AsAsync(fleet, role, "some-" + Words.Of(role));
        foreach (var (endpoint, methods) in Routes())
        {
            if (endpoint.Metadata.GetMetadata<Need>() is not { } need) continue;
            foreach (var method in methods)
            {
                var path = PathOf(endpoint);
                var status = await browser.SendAsync(new HttpMethod(method), path);
                var may = Permissions.Allow(role, need.Verb, need.Matter);
                Assert.True((status == HttpStatusCode.Forbidden) == !may, $"{method} {path} answered {role} {(int)status}, who {(may ? "may" : "may not")} {need.Verb} {need.Matter}");

                // Who may, still may not from another site.
                if (may && FormGuard.Changes(method)) Assert.True(status == HttpStatusCode.BadRequest, $"{method} {path} took a form of another site: {(int)status}");
                Assert.True(status < HttpStatusCode.InternalServerError, $"{method} {path}: {(int)status}");
            }
        }
    }

    [Fact]
    public async Task Nobody_gets_further_than_the_way_in()
    {
        using var browser = new SignInHttp(fleet);
        foreach (var (endpoint, methods) in Routes().Where(r => Schemes(r.Endpoint).Contains(SessionHandler.SchemeName)))
        {
            foreach (var method in methods)
                Assert.Equal(HttpStatusCode.Redirect, await browser.SendAsync(new HttpMethod(method), PathOf(endpoint)));
        }
    }

    private IEnumerable<(RouteEndpoint Endpoint, IReadOnlyList<string> Methods)> Routes() =>
        fleet.Service<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Select(e => (e, e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []));

    /// <summary>An address that the route takes: nothing is there, and nobody may find that out.</summary>
    private static string PathOf(RouteEndpoint endpoint) =>
        "/" + string.Join('/', endpoint.RoutePattern.PathSegments.Select(s => string.Concat(s.Parts.Select(p => p switch
        {
            RoutePatternLiteralPart literal => literal.Content,
            RoutePatternSeparatorPart separator => separator.Content,
            RoutePatternParameterPart { ParameterPolicies: [{ Content: "guid" }, ..] } => "0196d7c1-0000-7000-8000-000000000001",
            RoutePatternParameterPart { ParameterPolicies: [{ Content: "int" }, ..] } => "1",
            _ => "some-1",
        }))));

    private static bool IsGuarded(Endpoint endpoint) => endpoint.Metadata.GetMetadata<FromOurPages>() is not null;

    private static bool NeedsBearer(Endpoint endpoint) =>
        endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Any() || endpoint.Metadata.GetOrderedMetadata<AuthorizationPolicy>().Any()
            ? !Schemes(endpoint).Contains(SessionHandler.SchemeName)
            : false;

    private static HashSet<string> Schemes(Endpoint endpoint) =>
        [.. endpoint.Metadata.GetOrderedMetadata<AuthorizationPolicy>().SelectMany(p => p.AuthenticationSchemes), .. endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().SelectMany(a => a.AuthenticationSchemes?.Split(',') ?? [])];
}
