using System.Net;
using System.Text.Json.Nodes;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Journey.Tests.Mail;

/// <summary>The office's page of the address that alerts are handed to.</summary>
public sealed class HookPageTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Page = "/office/mail/hook";
    private RunningFleet fleet = null!;
    private string database = "";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await postgres.NewDatabaseAsync("hookpage", Ct);
        fleet = await RunningFleet.StartAsync(database, new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task An_administrator_sets_it_sees_the_secret_once_makes_another_and_switches_it_off()
    {
        using var admin = await SignInHttp.AsAsync(fleet, Role.Administrator, "admin-1");
        Assert.Contains("/office/mail/hook", (await admin.GetAsync("/office/mail")).Text, StringComparison.Ordinal);
        var off = (await admin.GetAsync(Page)).Text;
        Assert.Contains("Off: alerts are handed to no address", off, StringComparison.Ordinal);
        Assert.DoesNotContain("Send a test", off, StringComparison.Ordinal);

        // Nobody's host (RFC 2606): it is not found, and may be tomorrow.
        var set = await admin.PostAsync(Page, Page, ("address", "https://hook.invalid/alerts?key=k-4711"));
        Assert.Equal(HttpStatusCode.OK, set.Status);
        var hook = (await fleet.Service<AlertHooks>().FindAsync(RunningFleet.Operator, Ct))!;
        Assert.Equal("https://hook.invalid/alerts?key=k-4711", hook.Address);
        Assert.Contains(hook.Secret, set.Text, StringComparison.Ordinal);
        var on = (await admin.GetAsync(Page)).Text;
        Assert.Contains("handed to hook.invalid", on, StringComparison.Ordinal);
        Assert.DoesNotContain("k-4711", on, StringComparison.Ordinal);
        Assert.DoesNotContain(hook.Secret, on, StringComparison.Ordinal);

        var renewed = await admin.PostAsync(Page, Page + "/secret");
        var another = (await fleet.Service<AlertHooks>().FindAsync(RunningFleet.Operator, Ct))!;
        Assert.NotEqual(hook.Secret, another.Secret);
        Assert.Equal(hook.Address, another.Address);
        Assert.Contains(another.Secret, renewed.Text, StringComparison.Ordinal);

        Assert.EndsWith("done=tested", (await admin.PostAsync(Page, Page + "/test")).Location, StringComparison.Ordinal);
        var body = JsonNode.Parse(await BodyAsync())!;
        Assert.True((bool)body["test"]!);
        Assert.Contains("a test, nothing has happened", (string)body["subject"]!, StringComparison.Ordinal);
        Assert.Contains((string)body["alert"]!, (await admin.GetAsync(Page)).Text, StringComparison.Ordinal);

        Assert.EndsWith("done=off", (await admin.PostAsync(Page, Page + "/off")).Location, StringComparison.Ordinal);
        Assert.Null(await fleet.Service<AlertHooks>().FindAsync(RunningFleet.Operator, Ct));
        Assert.EndsWith("done=none", (await admin.PostAsync(Page, Page + "/test")).Location, StringComparison.Ordinal);
        Assert.Contains("No address is set", (await admin.GetAsync(Page + "?done=none")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://10.1.2.3/alerts", "not of the public Internet")]
    [InlineData("https://[::1]/", "not of the public Internet")]
    [InlineData("https://localhost/alerts", "not of the public Internet")]
    [InlineData("https://localhost.localdomain.:5000/", null)] // where a hosts file knows it, refused as well
    [InlineData("http://hook.example/", "give an https address")]
    [InlineData("hook.example", "give an https address")]
    [InlineData("", "give an https address")]
    public async Task What_cannot_be_set_is_said_at_its_field_and_what_was_typed_is_kept(string address, string? says)
    {
        if (says is null && !await LeadsHereAsync(address)) return;
        using var admin = await SignInHttp.AsAsync(fleet, Role.Administrator, "admin-1");
        var answer = await admin.PostAsync(Page, Page, ("address", address));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains(says ?? "not of the public Internet", answer.Text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains($"value=\"{address}\"", WebUtility.HtmlDecode(answer.Text), StringComparison.Ordinal);
        Assert.Null(await fleet.Service<AlertHooks>().FindAsync(RunningFleet.Operator, Ct));
    }

    [Theory]
    [InlineData(Role.Manager)]
    [InlineData(Role.Operator)]
    [InlineData(Role.Analyst)]
    [InlineData(Role.Mechanic)]
    public async Task Nobody_else_sees_it(Role role)
    {
        using var other = await SignInHttp.AsAsync(fleet, role, "other-1");
        Assert.Equal(HttpStatusCode.Forbidden, (await other.GetAsync(Page)).Status);
        Assert.DoesNotContain("/office/mail/hook", (await other.GetAsync("/office/mail")).Text, StringComparison.Ordinal);
    }

    private static async Task<bool> LeadsHereAsync(string address)
    {
        try
        {
            return (await Dns.GetHostAddressesAsync(new Uri(address).DnsSafeHost, Ct)).Any(IPAddress.IsLoopback);
        }
        catch (System.Net.Sockets.SocketException)
        {
            return false;
        }
    }

    private async Task<string> BodyAsync()
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand("select body from fleetwake.outgoing_hooks where alert like 'test-%'");
        return (string)(await command.ExecuteScalarAsync(Ct))!;
    }
}
