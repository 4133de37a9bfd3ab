using System.Net.Mail;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.People;

/// <summary>Who keeps an operator's record, and as what. What is personal lies in rows here; that and when it happened are facts like any other.</summary>
public sealed class FleetPeople(IDocumentStore store, NpgsqlDataSource source, Recorder recorder, TimeProvider time)
{
    private const int LongestAddress = 254;

    /// <summary>A person of an operator, or null.</summary>
    public async Task<PersonCard?> FindAsync(string @operator, string person, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.LoadAsync<PersonCard>(PersonCard.KeyOf(@operator, person), ct);
    }

    /// <summary>Everybody of an operator, also who left, by id.</summary>
    public async Task<IReadOnlyList<PersonCard>> AllAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.Query<PersonCard>().Where(p => p.Operator == @operator).OrderBy(p => p.Person).ToListAsync(ct);
    }

    /// <summary>Who signs in under a mail address, or under an operator and a person as in <c>fjord-hire/mech-1</c>; one address may be known to several operators.</summary>
    public async Task<IReadOnlyList<PersonCard>> NamedAsync(string name, CancellationToken ct)
    {
        const int Several = 4;
        var text = name.Trim().ToLowerInvariant();
        await using var session = store.QuerySession();
        return await session.Query<PersonCard>().Where(p => (p.Address == text || p.Id == name.Trim()) && p.LeftAt == null).OrderBy(p => p.Operator).Take(Several).ToListAsync(ct);
    }

    /// <summary>Takes somebody in. Who left before comes back under the old id.</summary>
    /// <param name="card">The operator.</param>
    /// <param name="person">Pseudonymous id; null for one that nobody has, as in <c>mechanic-2</c>.</param>
    /// <param name="name">Name.</param>
    /// <param name="address">Mail address, if any.</param>
    /// <param name="role">What the person does.</param>
    /// <param name="hand">Whose hand does it.</param>
    /// <param name="ct">Ends the work.</param>
    public async Task<PeopleAnswer> InviteAsync(OperatorCard card, string? person, string name, string? address, Role role, Hand hand, CancellationToken ct)
    {
        var to = string.IsNullOrWhiteSpace(address) ? null : address.Trim().ToLowerInvariant();
        var check = new Check();
        var called = check.Name(name, "/name");
        if (to is not null && !IsAddress(to)) check.Refuse("/address", "not_an_address", $"\"{to}\" is no mail address: give one as in kit@example.org, or leave it empty");

        await using var turn = await PeopleTurn.TakeAsync(store, source, card.Id, ct);
        var known = await turn.Session.Query<PersonCard>().Where(p => p.Operator == card.Id).ToListAsync(ct);
        var id = person ?? FreeId(known, role);
        var command = new InvitePerson(Stamp(card, hand), id, Words.Of(role));
        var refusals = Refusals(InvitePerson.Decide(command, Arrival(hand))).Concat(Refusals(check.Decide(() => new Decision.Keep([], [])))).ToList();
        if (to is not null && known.FirstOrDefault(p => p.Address == to && p.LeftAt is null) is { } other) refusals.Add(new Refusal("/address", "taken", $"this address is {other.Person}'s ({other.Name})"));
        if (known.Any(p => p.Person == id && p.LeftAt is null)) refusals.Add(new Refusal("/person", "taken", $"\"{id}\" is with you already: make a new link for them, or take another id"));
        if (refusals.Count > 0) return new PeopleAnswer(null, refusals);

        await recorder.TakeAsync(card.Id, RecordKind.Find(InvitePerson.Kind)!, command, Arrival(hand), ct);
        var made = new PersonCard(PersonCard.KeyOf(card.Id, id), card.Id, id, called, to, role);
        turn.Session.Store(made);
        SignInNotes.Add(turn.Session, time.GetUtcNow(), made, SignInEvent.Invited, hand.From, Words.Of(role), hand.By);
        await turn.EndAsync(ct);
        return new PeopleAnswer(made, []);
    }

    /// <summary>Gives somebody another role; it holds from the person's next request.</summary>
    public async Task<PeopleAnswer> GiveRoleAsync(OperatorCard card, string person, Role role, Hand hand, CancellationToken ct)
    {
        var answer = await ChangeAsync(card, person, role == Role.Administrator, p => p with { Role = role }, SignInEvent.RoleGiven, Words.Of(role), hand, ct);
        if (answer.Person is not null)
            await recorder.TakeAsync(card.Id, RecordKind.Find(GiveRole.Kind)!, new GiveRole(Stamp(card, hand), person, Words.Of(role)), Arrival(hand), ct);
        return answer;
    }

    /// <summary>Ends somebody's access, with all sessions, links, passkeys, the password, the PIN, own settings and the calendar's address; with <paramref name="forget"/>, erases name and address too. What the person recorded stands under the id.</summary>
    public Task<PeopleAnswer> LeaveAsync(OperatorCard card, string person, bool forget, Hand hand, CancellationToken ct) =>
        ChangeAsync(
            card, person, false,
            p => p with { LeftAt = p.LeftAt ?? time.GetUtcNow(), Name = forget ? person : p.Name, Address = forget ? null : p.Address },
            SignInEvent.Left, null, hand, ct);

    /// <summary>Changes somebody's row, unless nobody would be left who can let people in.</summary>
    private async Task<PeopleAnswer> ChangeAsync(
        OperatorCard card, string person, bool staysAdministrator, Func<PersonCard, PersonCard> change, SignInEvent what, string? more, Hand hand, CancellationToken ct)
    {
        await using var turn = await PeopleTurn.TakeAsync(store, source, card.Id, ct);
        var session = turn.Session;
        var known = await session.LoadAsync<PersonCard>(PersonCard.KeyOf(card.Id, person), ct);
        if (known is null) return Refused("unknown", $"nobody of {card.Id} has the id \"{person}\"");
        if (!staysAdministrator && await IsLastAsync(session, known, ct))
            return Refused("last_administrator", "this is the last administrator who can sign in: nobody could let people in any more. Make somebody else administrator first");
        var changed = change(known);
        if (changed.LeftAt is not null)
        {
            session.DeleteWhere<PersonSession>(s => s.PersonKey == known.Id);
            session.DeleteWhere<PersonPasskey>(k => k.PersonKey == known.Id);
            session.DeleteWhere<Invitation>(i => i.PersonKey == known.Id);
            session.Delete<PersonPassword>(known.Id);
            session.Delete<PersonPreferences>(known.Id);
            session.QueueSqlCommand("delete from " + DockTables.Pins + " where operator = ? and person = ?", card.Id, person);
            var calendar = ApiKey.CalendarOf(person);
            foreach (var key in await session.Query<ApiKey>().Where(k => k.Operator == card.Id && k.Name == calendar && k.RevokedAt == null).ToListAsync(ct))
                session.Store(key with { RevokedAt = time.GetUtcNow() });
        }

        session.Store(changed);
        SignInNotes.Add(session, time.GetUtcNow(), changed, what, hand.From, more, hand.By);
        await turn.EndAsync(ct);
        return new PeopleAnswer(changed, []);

        static PeopleAnswer Refused(string reason, string message) => new(null, [new Refusal("/person", reason, message)]);
    }

    private static async Task<bool> IsLastAsync(IQuerySession session, PersonCard person, CancellationToken ct)
    {
        if (person is not { Role: Role.Administrator, LeftAt: null }) return false;
        var administrators = (await session.Query<PersonCard>().Where(p => p.Operator == person.Operator && p.LeftAt == null).ToListAsync(ct))
            .Where(p => p.Role == Role.Administrator).Select(p => p.Id).ToArray();
        var withKey = await session.Query<PersonPasskey>().Where(k => k.PersonKey.IsOneOf(administrators)).Select(k => k.PersonKey).ToListAsync(ct);
        var withPassword = await session.Query<PersonPassword>().Where(p => p.Id.IsOneOf(administrators)).Select(p => p.Id).ToListAsync(ct);

        // Who was asked and never came cannot let anybody in; and takes nothing along by going.
        var able = withKey.Concat(withPassword).ToHashSet(StringComparer.Ordinal);
        return able.Contains(person.Id) && able.Count == 1;
    }

    private static string FreeId(IReadOnlyList<PersonCard> known, Role role)
    {
        var taken = known.Select(p => p.Person).ToHashSet(StringComparer.Ordinal);
        return Enumerable.Range(1, taken.Count + 1).Select(n => $"{Words.Of(role)}-{n}").First(id => !taken.Contains(id));
    }

    private static bool IsAddress(string text) => text.Length <= LongestAddress && !text.Any(char.IsControl) && MailAddress.TryCreate(text, out var read) && read.Address == text;

    private static IEnumerable<Refusal> Refusals(Decision decision) => decision is Decision.Refuse refused ? refused.Refusals : [];

    private Stamp Stamp(OperatorCard card, Hand hand)
    {
        var now = time.GetUtcNow();
        return Logbook.Entries.Stamp.At(Guid.CreateVersion7(now), hand.By, now, card.Zone);
    }

    private Arrival Arrival(Hand hand) => new(hand.Device, time.GetUtcNow(), null);
}

/// <summary>Whose hand does something, and where.</summary>
/// <param name="By">Id of the person, or of the program.</param>
/// <param name="Device">Id of the device, as in a record.</param>
/// <param name="From">What kind of place that is.</param>
public sealed record Hand(string By, string Device, Whence From)
{
    /// <summary>Whoever runs the program.</summary>
    public static Hand CommandLine { get; } = new("fleetwake", "command-line", Whence.CommandLine);
}

/// <summary>What became of a wish about a person.</summary>
/// <param name="Person">The person as they are now; null when it was refused.</param>
/// <param name="Refusals">Why it was, each with its field.</param>
public sealed record PeopleAnswer(PersonCard? Person, IReadOnlyList<Refusal> Refusals);
