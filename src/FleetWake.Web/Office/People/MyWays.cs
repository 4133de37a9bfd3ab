using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.People;

/// <summary>Gathers what the page of one's own sign-in shows.</summary>
internal sealed class MyWays(FleetOperators operators, FleetPeople people, FleetSessions sessions, FleetPasskeys passkeys, SignInNotes notes, TimeProvider time)
{
    /// <summary>How long after signing in one may change one's ways in: a browser left open must not be taken over.</summary>
    public static readonly TimeSpan Fresh = TimeSpan.FromMinutes(15);

    public FleetOperators Operators => operators;

    public FleetSessions Sessions => sessions;

    public FleetPasskeys Passkeys => passkeys;

    public SignInNotes Notes => notes;

    /// <summary>Who is signed in.</summary>
    public async Task<PersonCard> MeAsync(HttpContext http) => (await people.FindAsync(http.User.OperatorOf(), http.User.PersonOf()!, http.RequestAborted))!;

    /// <summary>Whether this browser was signed in a short while ago.</summary>
    public async Task<bool> IsFreshAsync(HttpContext http) =>
        SessionHandler.SecretOf(http.Request) is { } secret
        && (await sessions.OfAsync(await MeAsync(http), http.RequestAborted)).FirstOrDefault(s => s.Id == KeySecret.Hash(secret)) is { } here
        && time.GetUtcNow() - here.BegunAt < Fresh;

    public async Task<MySignInView> ViewAsync(HttpContext http, string? wrong)
    {
        var me = await MeAsync(http);
        var here = SessionHandler.SecretOf(http.Request) is { } secret ? KeySecret.Hash(secret) : null;
        return new MySignInView(
            me, await sessions.OfAsync(me, http.RequestAborted), here, await passkeys.OfAsync(me.Id, http.RequestAborted),
            await passkeys.PasswordAsync(me.Id, http.RequestAborted) is not null, Handed.Line.Take(http), wrong);
    }
}

/// <summary>What the page of one's own sign-in shows.</summary>
/// <param name="Me">Who is signed in.</param>
/// <param name="Sessions">Browsers signed in, newest first.</param>
/// <param name="Here">Id of this browser's session.</param>
/// <param name="Passkeys">The passkeys.</param>
/// <param name="HasPassword">Whether there is a password.</param>
/// <param name="Line">What was just done.</param>
/// <param name="Wrong">What was wrong.</param>
public sealed record MySignInView(
    PersonCard Me, IReadOnlyList<PersonSession> Sessions, string? Here, IReadOnlyList<PersonPasskey> Passkeys, bool HasPassword, string? Line, string? Wrong);
