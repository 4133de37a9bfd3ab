using System.Net;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.SignIn;

namespace FleetWake.Journey.Tests.SignIn;

/// <summary>Signing in by password, as a browser and as somebody who guesses.</summary>
public sealed class PasswordTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("password", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        await InviteAsync("desk-1", "kit@skerry-bay.example", Role.Operator);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task After_five_wrong_tries_even_the_right_password_waits_and_the_wait_grows()
    {
        using var browser = new SignInHttp(fleet);
        for (var i = 0; i < SignInTries.FreeOfName; i++) Assert.Contains("Address or password is wrong", await TryAsync(browser, "kit@skerry-bay.example", "not that one, sorry"), StringComparison.Ordinal);
        Assert.Contains("Wait 1 min", await TryAsync(browser, "kit@skerry-bay.example", SignInHttp.Password), StringComparison.Ordinal);
        time.Move(TimeSpan.FromSeconds(61));
        Assert.Contains("Address or password is wrong", await TryAsync(browser, "kit@skerry-bay.example", "nor this one, sorry"), StringComparison.Ordinal);
        Assert.Contains("Wait 2 min", await TryAsync(browser, "kit@skerry-bay.example", SignInHttp.Password), StringComparison.Ordinal);
        time.Move(TimeSpan.FromSeconds(121));
        Assert.Equal("in", await TryAsync(browser, "kit@skerry-bay.example", SignInHttp.Password));

        // Right once, all is forgotten.
        Assert.Contains("Address or password is wrong", await TryAsync(browser, "kit@skerry-bay.example", "not that one, sorry"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_nobody_has_is_answered_just_the_same()
    {
        using var browser = new SignInHttp(fleet);
        var (known, unknown) = (new List<string>(), new List<string>());
        for (var i = 0; i < SignInTries.FreeOfName + 2; i++)
        {
            known.Add(await TryAsync(browser, "skerry-bay/desk-1", "not that one, sorry"));
            unknown.Add(await TryAsync(browser, "skerry-bay/desk-9", "not that one, sorry"));
        }

        Assert.Equal(known.Select(Said), unknown.Select(Said));
    }

    [Fact]
    public async Task Many_tries_at_once_gain_nothing()
    {
        var tries = fleet.Service<SignInTries>();
        var waits = await Task.WhenAll(Enumerable.Range(0, 30).Select(_ => Task.Run(() => tries.TakeAsync("many", null, Ct))));
        Assert.Equal(SignInTries.FreeOfName, waits.Count(w => w is null));
    }

    [Fact]
    public async Task Many_names_from_one_place_wait_too()
    {
        var tries = fleet.Service<SignInTries>();
        var place = IPAddress.Parse("203.0.113.7");
        for (var i = 0; i < SignInTries.FreeOfPlace; i++) Assert.Null(await tries.TakeAsync($"name {i}", place, Ct));
        Assert.NotNull(await tries.TakeAsync("name last", place, Ct));
        Assert.Null(await tries.TakeAsync("name last", IPAddress.Parse("203.0.113.8"), Ct));
    }

    [Fact]
    public async Task Slips_of_a_season_do_not_add_up_and_a_right_try_ends_the_wait_of_a_place()
    {
        var tries = fleet.Service<SignInTries>();
        var office = IPAddress.Parse("203.0.113.20");
        for (var day = 0; day < 60; day++)
        {
            // Two slips a day, each followed by the right password.
            for (var i = 0; i < 4; i++) Assert.Null(await tries.TakeAsync($"name {i}", office, Ct));
            for (var i = 0; i < 2; i++) await tries.ForgetAsync($"name {i}", office, alone: true, Ct);
            time.Move(TimeSpan.FromHours(23));
        }

        for (var i = 0; i < SignInTries.FreeOfPlace; i++) Assert.Null(await tries.TakeAsync($"other {i}", office, Ct));
        await tries.ForgetAsync("other 0", office, alone: true, Ct);
        Assert.Null(await tries.TakeAsync("other 0", office, Ct));
    }

    [Fact]
    public async Task Where_several_are_known_by_a_name_ones_own_right_password_frees_no_guesses_at_the_others()
    {
        var tries = fleet.Service<SignInTries>();
        var guesses = 0;
        for (var round = 0; round < 10; round++)
        {
            for (var i = 0; i < SignInTries.FreeOfName - 1; i++) guesses += await tries.TakeAsync("shared@skerry-bay.example", null, Ct) is null ? 1 : 0;
            if (await tries.TakeAsync("shared@skerry-bay.example", null, Ct) is null) await tries.ForgetAsync("shared@skerry-bay.example", null, alone: false, Ct);
        }

        Assert.True(guesses <= SignInTries.FreeOfName + 1, $"{guesses} guesses");
    }

    [Fact]
    public async Task A_browser_left_open_changes_no_way_in()
    {
        using var browser = await SignInHttp.AsAsync(fleet, Role.Administrator, "admin-7");
        time.Move(TimeSpan.FromMinutes(16));
        const string mine = "/office/me/sign-in";
        Assert.Contains("Sign out and in again", (await browser.PostAsync(mine, mine + "/password", ("password", "wet varnish, dry rope, again"))).Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.PostAsync(mine, mine + "/passkey/asked")).Status);
        Assert.Contains("Nobody makes a link for themselves", (await browser.PostAsync("/office/people", "/office/people/admin-7/link")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_left_signs_in_no_more_and_is_out_at_once()
    {
        await InviteAsync("desk-2", "left@skerry-bay.example", Role.Operator);
        using var browser = new SignInHttp(fleet);
        Assert.Equal("in", await TryAsync(browser, "left@skerry-bay.example", SignInHttp.Password));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/office")).Status);
        var card = (await fleet.Service<FleetOperators>().FindAsync(RunningFleet.Operator, Ct))!;
        await fleet.Service<FleetPeople>().LeaveAsync(card, "desk-2", forget: true, Hand.CommandLine, Ct);
        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync("/office")).Status);
        Assert.Contains("Address or password is wrong", await TryAsync(browser, "left@skerry-bay.example", SignInHttp.Password), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/office?dock=old-mole", "/office?dock=old-mole")]
    [InlineData("//evil.example/", "/office")]
    [InlineData("/\\evil.example", "/office")]
    [InlineData("https://evil.example/", "/office")]
    [InlineData("/a\tb", "/office")]
    [InlineData("", "/office")]
    [InlineData(null, "/office")]
    public void Signing_in_leads_to_a_path_of_this_site_only(string? to, string path) => Assert.Equal(path, ComingIn.Path(to));

    private static async Task<string> TryAsync(SignInHttp browser, string name, string password)
    {
        var (status, text, location) = await browser.PostAsync("/sign-in", "/sign-in", ("name", name), ("password", password));
        return status == HttpStatusCode.Redirect && location == "/office" ? "in" : text;
    }

    private static string Said(string page) => System.Text.RegularExpressions.Regex.Match(page, "role=\"alert\" id=\"wrong\">([^<]*)<").Groups[1].Value;

    private async Task InviteAsync(string person, string address, Role role)
    {
        var card = (await fleet.Service<FleetOperators>().FindAsync(RunningFleet.Operator, Ct))!;
        var made = await fleet.Service<FleetPeople>().InviteAsync(card, person, "Kit Marlow", address, role, Hand.CommandLine, Ct);
        var path = FleetInvitations.PathOf(await fleet.Service<FleetInvitations>().MakeAsync(made.Person!, signsIn: false, Ct));
        using var browser = new SignInHttp(fleet);
        Assert.Equal(HttpStatusCode.Redirect, (await browser.PostAsync(path, path, ("password", SignInHttp.Password))).Status);
    }
}
