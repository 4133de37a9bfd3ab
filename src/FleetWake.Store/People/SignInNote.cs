using Marten;

namespace FleetWake.Store.People;

/// <summary>Something about who comes in, kept for a year and never changed.</summary>
/// <param name="Id">Its id.</param>
/// <param name="At">When.</param>
/// <param name="Person">Who it is about, by id.</param>
/// <param name="What">What happened.</param>
/// <param name="More">What it was about, e.g. the new role or the refused page.</param>
/// <param name="By">Who did it, when it was somebody else.</param>
/// <param name="From">What kind of place it came from; never the address itself.</param>
public sealed record SignInNote(Guid Id, DateTimeOffset At, string Person, SignInEvent What, string? More, string? By, Whence From);

/// <summary>What happened.</summary>
public enum SignInEvent
{
    /// <summary>Was asked to come in.</summary>
    Invited,

    /// <summary>Came in.</summary>
    SignedIn,

    /// <summary>Gave a wrong password.</summary>
    WrongPassword,

    /// <summary>Went out.</summary>
    SignedOut,

    /// <summary>Sessions were ended.</summary>
    SessionsEnded,

    /// <summary>Has a new password.</summary>
    PasswordSet,

    /// <summary>Has a new passkey.</summary>
    PasskeyMade,

    /// <summary>A passkey was taken off.</summary>
    PasskeyTakenOff,

    /// <summary>Was given a role.</summary>
    RoleGiven,

    /// <summary>Left.</summary>
    Left,

    /// <summary>Was refused something.</summary>
    Refused,

    /// <summary>Erased a note or a photo.</summary>
    Erased,
}

/// <summary>What kind of place a request came from.</summary>
public enum Whence
{
    /// <summary>The command line.</summary>
    CommandLine,

    /// <summary>This machine.</summary>
    Here,

    /// <summary>A private network.</summary>
    PrivateNetwork,

    /// <summary>Anywhere else.</summary>
    Internet,
}

/// <summary>Keeps such notes.</summary>
public sealed class SignInNotes(IDocumentStore store, TimeProvider time)
{
    /// <summary>How long they are kept.</summary>
    public static readonly TimeSpan KeptFor = TimeSpan.FromDays(365);

    /// <summary>Adds one.</summary>
    public async Task AddAsync(PersonCard person, SignInEvent what, Whence from, CancellationToken ct, string? more = null, string? by = null)
    {
        await using var session = store.LightweightSession(person.Operator);
        Add(session, time.GetUtcNow(), person, what, from, more, by);
        await session.SaveChangesAsync(ct);
    }

    /// <summary>The newest of an operator, newest first.</summary>
    public async Task<IReadOnlyList<SignInNote>> NewestAsync(string @operator, int count, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<SignInNote>().OrderByDescending(n => n.At).Take(count).ToListAsync(ct);
    }

    /// <summary>Adds one in the transaction of what it is about, and lets go of those of last year.</summary>
    internal static void Add(IDocumentSession session, DateTimeOffset now, PersonCard person, SignInEvent what, Whence from, string? more, string? by)
    {
        var old = now - KeptFor;
        session.DeleteWhere<SignInNote>(n => n.At < old);
        session.Insert(new SignInNote(Guid.CreateVersion7(now), now, person.Person, what, more, by == person.Person ? null : by, from));
    }
}
