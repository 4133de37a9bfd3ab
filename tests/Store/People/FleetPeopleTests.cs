using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Attribution;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using Marten;
using Microsoft.Extensions.Time.Testing;

namespace FleetWake.Store.Tests.People;

public sealed class FleetPeopleTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly OperatorCard Card = new("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland");
    private readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private FleetDatabase database = null!;
    private FleetPeople people = null!;
    private FleetInvitations invitations = null!;
    private FleetSessions sessions = null!;
    private FleetPasskeys ways = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("people"), Ct);
        people = new FleetPeople(database.Store, database.Source, new Recorder(database.Store), time);
        invitations = new FleetInvitations(database.Store, database.Source, time);
        sessions = new FleetSessions(database.Store, database.Source, time);
        ways = new FleetPasskeys(database.Store, time);
    }

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task Who_is_invited_stands_in_the_record_by_id_alone()
    {
        await InviteAsync("mech-1", Role.Mechanic, "kit@skerry-bay.example");
        await people.GiveRoleAsync(Card, "mech-1", Role.Manager, Hand.CommandLine, Ct);
        await using var session = database.Store.QuerySession(Card.Id);
        var facts = (await session.Events.FetchStreamAsync(StreamName.Operator, token: Ct)).Select(e => e.Data).ToList();
        Assert.Equal(("mech-1", Role.Mechanic, "fleetwake"), facts.OfType<PersonInvited>().Select(f => (f.Person, f.Role, f.Entry.By)).Single());
        Assert.Equal(("mech-1", Role.Manager), facts.OfType<RoleGiven>().Select(f => (f.Person, f.Role)).Single());
        Assert.DoesNotContain("kit", string.Join(' ', facts), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task What_is_wrong_with_an_invitation_is_told_field_by_field_and_nothing_is_kept()
    {
        await InviteAsync("mech-1", Role.Mechanic, "kit@skerry-bay.example");
        var answer = await people.InviteAsync(Card, "not an id", "", "nowhere", Role.Mechanic, Hand.CommandLine, Ct);
        Assert.Equal(["/address", "/name", "/person"], answer.Refusals.Select(r => r.Field).Distinct().Order());
        answer = await people.InviteAsync(Card, "mech-1", "Another", "KIT@skerry-bay.example", Role.Mechanic, Hand.CommandLine, Ct);
        Assert.Equal(["/address", "/person"], answer.Refusals.Select(r => r.Field));
        Assert.Single(await people.AllAsync(Card.Id, Ct));
        Assert.Equal("mechanic-1", (await people.InviteAsync(Card, null, "Bo Fern", null, Role.Mechanic, Hand.CommandLine, Ct)).Person!.Person);
        Assert.Equal("mechanic-2", (await people.InviteAsync(Card, null, "Cy Holt", null, Role.Mechanic, Hand.CommandLine, Ct)).Person!.Person);
    }

    [Fact]
    public async Task Of_many_who_come_with_one_link_one_comes_in()
    {
        var secret = await invitations.MakeAsync(await InviteAsync("mech-1", Role.Mechanic), false, Ct);
        var found = (await invitations.FindAsync(secret, Ct))!.Value;
        var used = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => Task.Run(() => invitations.UseAsync(found.Invitation, Ct))));
        Assert.Single(used, u => u);
        Assert.Null(await invitations.FindAsync(secret, Ct));
    }

    [Fact]
    public async Task A_link_ends_after_three_days_and_when_a_newer_one_is_made()
    {
        var person = await InviteAsync("mech-1", Role.Mechanic);
        var first = await invitations.MakeAsync(person, false, Ct);
        var second = await invitations.MakeAsync(person, false, Ct);
        Assert.Null(await invitations.FindAsync(first, Ct));
        time.Advance(TimeSpan.FromHours(71));
        Assert.NotNull(await invitations.FindAsync(second, Ct));
        Assert.Single(await invitations.OpenAsync(Card.Id, Ct));
        time.Advance(TimeSpan.FromHours(2));
        Assert.Null(await invitations.FindAsync(second, Ct));
        Assert.Empty(await invitations.OpenAsync(Card.Id, Ct));
    }

    [Fact]
    public async Task The_last_administrator_who_can_sign_in_stays()
    {
        await ways.SetPasswordAsync(await InviteAsync("admin-1", Role.Administrator), "hash", Ct);
        var invited = await InviteAsync("admin-2", Role.Administrator);
        Assert.Equal("last_administrator", (await people.GiveRoleAsync(Card, "admin-1", Role.Mechanic, Hand.CommandLine, Ct)).Refusals.Single().Reason);
        Assert.Equal("last_administrator", (await people.LeaveAsync(Card, "admin-1", false, Hand.CommandLine, Ct)).Refusals.Single().Reason);

        // Who was asked and never came may go.
        Assert.NotNull((await people.GiveRoleAsync(Card, "admin-2", Role.Mechanic, Hand.CommandLine, Ct)).Person);
        await people.GiveRoleAsync(Card, "admin-2", Role.Administrator, Hand.CommandLine, Ct);
        await ways.SetPasswordAsync(invited, "hash", Ct);
        Assert.NotNull((await people.LeaveAsync(Card, "admin-1", false, Hand.CommandLine, Ct)).Person);
    }

    [Fact]
    public async Task Leaving_takes_the_PIN_own_settings_and_the_calendars_address_along()
    {
        var (pins, operators) = (new DockPins(database.Source, time), new FleetOperators(database.Store, time));
        var preferences = new FleetPreferences(database.Store);
        var person = await InviteAsync("mech-1", Role.Mechanic);
        var code = await pins.MakeStartCodeAsync(Card.Id, "mech-1", Ct);
        await pins.SetAsync(Card.Id, "mech-1", code, "271828", Ct);
        await preferences.KeepAsync(new PersonPreferences(person.Id, SpeedReading.MilesPerHour), Ct);
        var calendar = await operators.MakeKeyAsync(Card.Id, ApiKey.CalendarOf("mech-1"), [KeyScope.Calendar], Ct);
        var others = await operators.MakeKeyAsync(Card.Id, ApiKey.CalendarOf("mech-2"), [KeyScope.Calendar], Ct);

        Assert.NotNull((await people.LeaveAsync(Card, "mech-1", forget: false, Hand.CommandLine, Ct)).Person);
        Assert.Equal(PinOutcome.NotSet, (await pins.CheckAsync(Card.Id, "mech-1", "271828", Ct)).Outcome);
        Assert.Equal(new PersonPreferences(person.Id), await preferences.OfAsync(Card.Id, "mech-1", Ct));
        Assert.Null(await operators.RecognizeAsync(calendar, Ct));
        Assert.NotNull(await operators.RecognizeAsync(others, Ct));
    }

    [Fact]
    public async Task Two_administrators_who_invite_at_one_moment_get_two_ids()
    {
        var made = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => Task.Run(() => people.InviteAsync(Card, null, $"Kit {n}", null, Role.Mechanic, Hand.CommandLine, Ct))));
        Assert.Equal(8, made.Select(m => m.Person!.Person).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public async Task A_passkey_that_was_taken_off_while_it_was_used_stays_off()
    {
        var person = await InviteAsync("mech-1", Role.Mechanic);
        var passkey = new PersonPasskey("c1", person.Id, FleetPasskeys.HandleOf(person), "Phone", [1], time.GetUtcNow(), 0, [], true, false, false);
        await ways.KeepAsync(passkey, Ct);
        await ways.TakeAllOffAsync(person, Ct);
        await ways.RenewAsync(passkey with { SignCount = 1 }, Ct);
        await ways.RenewPasswordAsync(new PersonPassword(person.Id, "hash", time.GetUtcNow()), Ct);
        Assert.Empty(await ways.OfAsync(person.Id, Ct));
        Assert.Null(await ways.PasswordAsync(person.Id, Ct));
    }

    [Fact]
    public async Task Two_administrators_who_end_each_others_access_at_one_moment_do_not_both_succeed()
    {
        for (var round = 0; round < 8; round++)
        {
            var (a, b) = ($"a-{round}", $"b-{round}");
            var card = Card with { Id = $"fleet-{round}" };
            foreach (var id in (string[])[a, b]) await ways.SetPasswordAsync((await people.InviteAsync(card, id, id, null, Role.Administrator, Hand.CommandLine, Ct)).Person!, "hash", Ct);
            var answers = await Task.WhenAll(
                Task.Run(() => people.LeaveAsync(card, a, false, Hand.CommandLine, Ct)), Task.Run(() => people.LeaveAsync(card, b, false, Hand.CommandLine, Ct)));
            Assert.Single(answers, x => x.Person is not null);
        }
    }

    [Fact]
    public async Task Who_leaves_is_out_with_everything_and_forgotten_when_asked()
    {
        var person = await InviteAsync("mech-1", Role.Mechanic, "kit@skerry-bay.example");
        await ways.SetPasswordAsync(person, "hash", Ct);
        await ways.KeepAsync(new PersonPasskey("key", person.Id, FleetPasskeys.HandleOf(person), "phone", [1], time.GetUtcNow(), 0, [], true, false, false), Ct);
        var link = await invitations.MakeAsync(person, false, Ct);
        var secret = await sessions.BeginAsync(person, Ct);
        Assert.NotNull(await sessions.RecognizeAsync(secret, Ct));

        await people.LeaveAsync(Card, "mech-1", forget: true, Hand.CommandLine, Ct);
        Assert.Null(await sessions.RecognizeAsync(secret, Ct));
        Assert.Null(await invitations.FindAsync(link, Ct));
        Assert.Null(await ways.PasswordAsync(person.Id, Ct));
        Assert.Empty(await ways.OfAsync(person.Id, Ct));
        Assert.Empty(await people.NamedAsync("kit@skerry-bay.example", Ct));
        var left = (await people.FindAsync(Card.Id, "mech-1", Ct))!;
        Assert.Equal(("mech-1", null), (left.Name, left.Address));
    }

    [Fact]
    public async Task A_decider_s_session_ends_after_half_an_hour_unused_and_anybody_s_after_twelve()
    {
        var manager = await InviteAsync("mgr-1", Role.Manager);
        var used = await sessions.BeginAsync(manager, Ct);
        var unused = await sessions.BeginAsync(manager, Ct);
        var mechanic = await sessions.BeginAsync(await InviteAsync("mech-1", Role.Mechanic), Ct);
        for (var minutes = 0; minutes < 60; minutes += 20)
        {
            time.Advance(TimeSpan.FromMinutes(20));
            Assert.NotNull(await sessions.RecognizeAsync(used, Ct));
        }

        Assert.Null(await sessions.RecognizeAsync(unused, Ct));
        Assert.Single(await sessions.OfAsync(manager, Ct));
        Assert.NotNull(await sessions.RecognizeAsync(mechanic, Ct));
        time.Advance(TimeSpan.FromHours(11));
        Assert.Null(await sessions.RecognizeAsync(mechanic, Ct));
    }

    [Fact]
    public async Task A_session_that_was_ended_stays_ended_whatever_is_being_asked_with_it()
    {
        var person = await InviteAsync("mech-1", Role.Mechanic);
        var secret = await sessions.BeginAsync(person, Ct);
        for (var round = 0; round < 10; round++)
        {
            secret = await sessions.BeginAsync(person, Ct);
            time.Advance(TimeSpan.FromMinutes(2));
            await Task.WhenAll([.. Enumerable.Range(0, 6).Select(_ => Task.Run(() => sessions.RecognizeAsync(secret, Ct), Ct)), Task.Run(() => sessions.EndAsync(secret, Ct), Ct)]);
            Assert.Null(await sessions.RecognizeAsync(secret, Ct));
        }

        var kept = await sessions.BeginAsync(person, Ct);
        Assert.Equal(1, await sessions.EndAllAsync(person, Ct, but: kept));
        Assert.NotNull(await sessions.RecognizeAsync(kept, Ct));
        var other = await InviteAsync("mech-2", Role.Mechanic);
        Assert.False(await sessions.EndOwnAsync(other, KeySecret.Hash(kept), Ct));
        Assert.True(await sessions.EndOwnAsync(person, KeySecret.Hash(kept), Ct));
    }

    [Fact]
    public async Task Notes_are_an_operator_s_own_and_last_a_year()
    {
        var notes = new SignInNotes(database.Store, time);
        var person = await InviteAsync("mech-1", Role.Mechanic);
        time.Advance(TimeSpan.FromMinutes(1));
        await notes.AddAsync(person, SignInEvent.SignedIn, Whence.Internet, Ct, "passkey");
        Assert.Equal([SignInEvent.SignedIn, SignInEvent.Invited], (await notes.NewestAsync(Card.Id, 10, Ct)).Select(n => n.What));
        Assert.Empty(await notes.NewestAsync("other-fleet", 10, Ct));
        time.Advance(TimeSpan.FromDays(366));
        await notes.AddAsync(person, SignInEvent.SignedIn, Whence.Internet, Ct);
        Assert.Single(await notes.NewestAsync(Card.Id, 10, Ct));
    }

    private async Task<PersonCard> InviteAsync(string person, Role role, string? address = null)
    {
        time.Advance(TimeSpan.FromSeconds(1));
        var answer = await people.InviteAsync(Card, person, "Kit Marlow", address, role, Hand.CommandLine, Ct);
        Assert.Empty(answer.Refusals);
        return answer.Person!;
    }
}
