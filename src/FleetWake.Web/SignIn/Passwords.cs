using FleetWake.Logbook.People;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;

namespace FleetWake.Web.SignIn;

/// <summary>Setting a password and signing in by one. Whether a name is known cannot be told from the answer; a password is hashed either way, so that the time tells little.</summary>
public sealed class Passwords(IPasswordHasher<PersonCard> hasher, FleetPasskeys ways, FleetPeople people, SignInTries tries, SignInNotes notes)
{
    /// <summary>PBKDF2 with SHA-512, as often as OWASP's password storage cheat sheet (2023) asks.</summary>
    public const int Rounds = 210_000;

    private static readonly PersonCard Nobody = new("", "", "", "", null, Role.Mechanic);
    private static string? nobodysHash;

    /// <summary>Why a password will not do, or null.</summary>
    public static PasswordFault? FaultOf(PersonCard person, string operatorName, string password) =>
        PasswordRule.Of(password, person.Name, person.Address, person.Person, person.Operator, operatorName);

    /// <summary>Sets a password that will do.</summary>
    public async Task SetAsync(PersonCard person, string password, HttpContext http)
    {
        // Not given up with the connection: the link that leads here is used up by now.
        await ways.SetPasswordAsync(person, hasher.HashPassword(person, password), CancellationToken.None);
        await notes.AddAsync(person, SignInEvent.PasswordSet, http.Whence(), CancellationToken.None);
    }

    /// <summary>Who signs in with a name and a password; else how long to wait, or nothing: name or password are wrong.</summary>
    public async Task<(PersonCard? Person, TimeSpan? Wait)> CheckAsync(string name, string password, HttpContext http)
    {
        var ct = http.RequestAborted;
        var place = http.Connection.RemoteIpAddress;
        var known = await people.NamedAsync(name, ct);

        // Not noted: whoever is kept waiting could else fill the notes.
        if (await tries.TakeAsync(name, place, ct) is { } wait) return (null, wait);

        if (password.Length <= PasswordRule.Most)
        {
            nobodysHash ??= hasher.HashPassword(Nobody, "nobody's");
            foreach (var person in known.Count == 0 ? [Nobody] : known)
            {
                if (!await IsOfAsync(person, password, ct)) continue;
                await tries.ForgetAsync(name, place, known.Count == 1, ct);
                return (person, null);
            }
        }

        foreach (var person in known) await notes.AddAsync(person, SignInEvent.WrongPassword, http.Whence(), ct);
        return (null, null);
    }

    private async Task<bool> IsOfAsync(PersonCard person, string password, CancellationToken ct)
    {
        var kept = ReferenceEquals(person, Nobody) ? null : await ways.PasswordAsync(person.Id, ct);
        var verdict = hasher.VerifyHashedPassword(person, kept?.Hash ?? nobodysHash!, password);
        if (kept is null || verdict == PasswordVerificationResult.Failed) return false;
        if (verdict == PasswordVerificationResult.SuccessRehashNeeded) await ways.RenewPasswordAsync(kept with { Hash = hasher.HashPassword(person, password) }, ct);
        return true;
    }
}
