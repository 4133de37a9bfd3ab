using System.Net;
using System.Net.Http.Headers;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Office;

namespace FleetWake.Journey.Tests.SignIn;

/// <summary>Keys of programs that end by themselves, and what two nodes share.</summary>
public sealed class KeyTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() =>
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("keys", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_key_ends_on_its_day_and_says_so_in_words_of_its_own()
    {
        var operators = fleet.Service<FleetOperators>();
        var key = await operators.MakeKeyAsync(RunningFleet.Operator, "season", [KeyScope.Read, KeyScope.Calendar], Ct, TimeSpan.FromDays(30));
        using var program = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        program.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("/api/boats", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync(DueCalendar.PathOf(key), Ct)).StatusCode);

        time.Move(TimeSpan.FromDays(30));
        using var refused = await program.GetAsync("/api/boats", Ct);
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        var said = await refused.Content.ReadAsStringAsync(Ct);
        Assert.Contains("urn:fleetwake:problem:key-expired", said, StringComparison.Ordinal);
        Assert.Contains("This key ended on 2026-07-01 08:00 UTC", said, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await program.GetAsync(DueCalendar.PathOf(key), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await fleet.Http.GetAsync("/api/boats", Ct)).StatusCode);
    }

    [Fact]
    public async Task The_last_use_of_a_key_is_kept_to_the_hour_and_a_revoked_one_stays_revoked()
    {
        var operators = fleet.Service<FleetOperators>();
        var key = await operators.MakeKeyAsync(RunningFleet.Operator, "buoy", [KeyScope.Read], Ct);
        Assert.Null(await UsedAsync());
        Assert.NotNull(await operators.RecognizeAsync(key, Ct));
        var first = await UsedAsync();
        Assert.NotNull(first);
        time.Move(TimeSpan.FromMinutes(50));
        Assert.NotNull(await operators.RecognizeAsync(key, Ct));
        Assert.Equal(first, await UsedAsync());
        time.Move(TimeSpan.FromMinutes(20));
        Assert.NotNull(await operators.RecognizeAsync(key, Ct));
        Assert.True(await UsedAsync() > first);
        time.Move(TimeSpan.FromMinutes(61));
        await Task.WhenAll([.. Enumerable.Range(0, 8).Select(_ => Task.Run(() => operators.RecognizeAsync(key, Ct))), Task.Run(() => operators.RevokeKeyAsync(KeySecret.IdOf(key)!, Ct))]);
        Assert.Null(await operators.RecognizeAsync(key, Ct));

        async Task<DateTimeOffset?> UsedAsync() => (await operators.KeysAsync(RunningFleet.Operator, Ct)).Single(k => k.Name == "buoy").UsedAt;
    }

    [Fact]
    public async Task A_form_that_one_node_gave_is_taken_by_another()
    {
        await using var second = await RunningFleet.StartAsync(fleet.Database, new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        using var browser = new SignInHttp(fleet);
        var (status, text, _) = await browser.PostAsync("/sign-in", second.App.Urls.First() + "/sign-in", ("name", "skerry-bay/nobody"), ("password", "wet varnish, dry rope"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("Address or password is wrong", text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostBareAsync("/sign-in", ("name", "x"), ("password", "y"))).Status);
    }
}
