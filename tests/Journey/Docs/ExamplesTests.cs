using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.Routing.Template;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>The examples that client authors copy: each is sent to the running program, in order, and answered as it says.</summary>
public sealed class ExamplesTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Every_example_is_answered_as_it_says()
    {
        var ct = TestContext.Current.CancellationToken;
        await using var fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("examples", ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: ct);
        using var http = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        var sender = new HttpFile(http, fleet.Http.DefaultRequestHeaders.Authorization!.Parameter!);
        foreach (var file in DocsFolder.Examples())
        {
            foreach (var step in HttpFile.Read(file))
            {
                var (status, body) = await sender.SendAsync(step, ct);
                Assert.True(status == step.Expect, $"{Path.GetFileName(file)}, \"{step.Title}\" {step.Path}: {status} instead of {step.Expect}\n{body}");
                Assert.DoesNotContain("\"held\"", status == 201 ? body.Replace("\"held\":[]", "", StringComparison.Ordinal) : "", StringComparison.Ordinal);
            }

            await RunningFleet.UntilAsync("the findings", () => fleet.Service<FleetReading>().UpToDateAsync(ct), ct);
        }
    }

    [Fact]
    public void Every_route_has_an_example()
    {
        var shown = DocsFolder.Examples().SelectMany(HttpFile.Read).Where(s => s.Expect < 300).ToList();
        Assert.All(RouteTables.Routes(), route => Assert.True(
            shown.Any(s => s.Method == RouteTables.Method(route) && Fits(route.RoutePattern, s.Path)),
            $"no example shows {RouteTables.Method(route)} {route.RoutePattern.RawText}"));
    }

    private static bool Fits(RoutePattern pattern, string path) =>
        new TemplateMatcher(new RouteTemplate(pattern), []).TryMatch(path.Split('?')[0], []);
}
