using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Attribution;
using FleetWake.Store.Histories;
using FleetWake.Store.People;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>Who it is that holds a shared phone: a name and a PIN say so, and open nothing.</summary>
public sealed class SigningTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 6, 6, 20, 0, 0, TimeSpan.Zero));
    private RunningFleet fleet = null!;
    private DockPhone phone = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("signing", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        await using (var session = fleet.Service<IDocumentStore>().LightweightSession())
        {
            session.Store(Person("mech-1", Role.Mechanic), Person("mech-2", Role.Mechanic), Person("reader", Role.Analyst));
            await session.SaveChangesAsync(Ct);
        }

        await fleet.SendAsync(dock.Outfit("tern", "Tern"), Ct);
        phone = await DockPhone.EnrolledAsync(fleet);
    }

    public async ValueTask DisposeAsync()
    {
        phone.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_start_code_of_the_office_sets_a_PIN_once_and_the_PIN_signs()
    {
        Assert.Equal("pin-not-set", (await RefusedAsync(await SignAsync("mech-1", "271828"))).Type);
        await WithPinAsync("mech-1", "271828");
        using var signed = await SignAsync("mech-1", "271828");
        Assert.Equal(HttpStatusCode.OK, signed.StatusCode);
        var until = DateTimeOffset.Parse((await signed.Content.ReadFromJsonAsync<JsonObject>(Ct))!["until"]!.GetValue<string>());
        Assert.InRange((until - time.GetUtcNow()).TotalHours, 11.9, 12.1);

        var today = (await phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/today", Ct))!["people"]!.AsArray();
        Assert.Equal([("mech-1", true), ("mech-2", false)], today.Select(p => (p!["person"]!.GetValue<string>(), p["hasPin"]!.GetValue<bool>())));
        using var changed = await SetAsync("mech-1", "271828", "314159");
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        Assert.Equal("pin-wrong", (await RefusedAsync(await SignAsync("mech-1", "271828"))).Type);
    }

    [Fact]
    public async Task A_start_code_is_good_for_a_day_and_one_PIN()
    {
        var code = await fleet.Service<DockPins>().MakeStartCodeAsync(RunningFleet.Operator, "mech-1", Ct);
        Assert.Equal("pin-wrong", (await RefusedAsync(await SignAsync("mech-1", code))).Type);
        Assert.Equal(HttpStatusCode.OK, (await SetAsync("mech-1", code, "271828")).StatusCode);
        Assert.Equal("pin-wrong", (await RefusedAsync(await SetAsync("mech-1", code, "314159"))).Type);

        var late = await fleet.Service<DockPins>().MakeStartCodeAsync(RunningFleet.Operator, "mech-2", Ct);
        time.Move(DockPins.StartLife);
        Assert.Equal("pin-wrong", (await RefusedAsync(await SetAsync("mech-2", late, "314159"))).Type);
    }

    [Fact]
    public async Task What_anybody_would_try_first_is_no_PIN()
    {
        var code = await fleet.Service<DockPins>().MakeStartCodeAsync(RunningFleet.Operator, "mech-1", Ct);
        foreach (var pin in (string[])["12345", "abcdef", "000000", "123456", "987654"])
        {
            using var refused = await SetAsync("mech-1", code, pin);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            Assert.Contains("/newPin", await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Five_wrong_tries_lock_it_for_a_quarter_of_an_hour_even_for_who_knows_it()
    {
        await WithPinAsync("mech-1", "271828");
        foreach (var left in (int[])[4, 3, 2, 1])
        {
            var (type, body) = await RefusedAsync(await SignAsync("mech-1", "111112"));
            Assert.Equal(("pin-wrong", left), (type, body["triesLeft"]!.GetValue<int>()));
        }

        Assert.Equal("pin-locked", (await RefusedAsync(await SignAsync("mech-1", "111112"))).Type);
        Assert.Equal("pin-locked", (await RefusedAsync(await SignAsync("mech-1", "271828"))).Type);
        Assert.Equal("pin-not-set", (await RefusedAsync(await SignAsync("mech-2", "271828"))).Type);
        time.Move(DockPins.Lock + TimeSpan.FromSeconds(1));
        Assert.Equal(HttpStatusCode.OK, (await SignAsync("mech-1", "271828")).StatusCode);
    }

    [Fact]
    public async Task Of_fifty_guesses_at_once_five_are_heard()
    {
        await WithPinAsync("mech-1", "271828");
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(i => fleet.Service<DockPins>().CheckAsync(RunningFleet.Operator, "mech-1", $"{i:D6}", Ct)));
        Assert.Equal(4, answers.Count(a => a.Outcome == PinOutcome.Wrong));
        Assert.All(answers.Where(a => a.Outcome != PinOutcome.Wrong), a => Assert.Equal(PinOutcome.Locked, a.Outcome));
    }

    [Fact]
    public async Task Who_reads_only_and_who_is_nobody_cannot_sign()
    {
        Assert.Equal("person-unknown", (await RefusedAsync(await SignAsync("reader", "271828"))).Type);
        Assert.Equal("person-unknown", (await RefusedAsync(await SignAsync("nobody", "271828"))).Type);
    }

    [Fact]
    public async Task An_entry_is_claimed_until_the_one_whom_it_names_confirms_it_on_that_phone()
    {
        await WithPinAsync("mech-1", "271828");
        await WithPinAsync("mech-2", "314159");
        ICommand[] strikes = [.. Enumerable.Range(1, 3).Select(_ => new ReportStrike(dock.At("2026-06-06T10:00:00"), "tern", "single", "rock", "bent"))];
        await phone.SendAsync(strikes);
        var ids = strikes.Select(s => s.Entry!.Id!.Value).ToArray();
        await SignAsync("mech-1", "271828", ids[0]);
        await SignAsync("mech-2", "314159", ids[1]); // All three say mech-1.
        using var other = await DockPhone.EnrolledAsync(fleet);
        await SignAsync("mech-1", "271828", other, ids[2]);

        await RunningFleet.UntilAsync("the log", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        var facts = (await fleet.Service<FleetReading>().LogAsync(RunningFleet.Operator, "tern", Ct))!.Facts;
        var told = await fleet.Service<DockSignatures>().AttributionsAsync(RunningFleet.Operator, [.. facts.Select(f => f.Entry)], Ct);
        Assert.Equal([true, false, false], ids.Select(id => told[id].ConfirmedAt is not null));

        // What a program sent is neither claimed nor confirmed.
        Assert.Equal(3, told.Count);
    }

    private async Task WithPinAsync(string person, string pin)
    {
        var code = await fleet.Service<DockPins>().MakeStartCodeAsync(RunningFleet.Operator, person, Ct);
        Assert.Equal(HttpStatusCode.OK, (await SetAsync(person, code, pin)).StatusCode);
    }

    private Task<HttpResponseMessage> SignAsync(string person, string pin, params Guid[] confirms) => SignAsync(person, pin, phone, confirms);

    private static Task<HttpResponseMessage> SignAsync(string person, string pin, DockPhone on, params Guid[] confirms) =>
        on.Http.PostAsJsonAsync("/dock/api/sign", new { person, pin, confirms }, Ct);

    private Task<HttpResponseMessage> SetAsync(string person, string pin, string newPin) => phone.Http.PostAsJsonAsync("/dock/api/pin", new { person, pin, newPin }, Ct);

    private static PersonCard Person(string id, Role role) => new(PersonCard.KeyOf(RunningFleet.Operator, id), RunningFleet.Operator, id, "Person " + id, null, role);

    private static async Task<(string Type, JsonObject Body)> RefusedAsync(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        var body = (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!;
        return (body["type"]!.GetValue<string>()["urn:fleetwake:problem:".Length..], body);
    }
}
