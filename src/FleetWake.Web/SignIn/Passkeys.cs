using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;

namespace FleetWake.Web.SignIn;

/// <summary>Making and using passkeys (WebAuthn), each in two requests: what is asked of the authenticator, and what it answers.</summary>
public sealed class Passkeys(IPasskeyHandler<PersonCard> handler, IUserStore<PersonCard> users)
{
    private const int LongestName = 40;
    private readonly IUserPasskeyStore<PersonCard> users = (IUserPasskeyStore<PersonCard>)users;

    /// <summary>Asks for a new passkey of a person.</summary>
    public async Task<IResult> AskForNewAsync(HttpContext http, PersonCard person)
    {
        // The name is what the person's own phone shows in its list; it leaves this machine to nowhere else.
        var entity = new PasskeyUserEntity { Id = FleetPasskeys.HandleOf(person), Name = person.Address ?? person.Id, DisplayName = person.Name };
        var asked = await handler.MakeCreationOptionsAsync(entity, http);
        Handed.NewPasskey.Give(http, asked.AttestationState!);
        return Results.Content(asked.CreationOptionsJson, "application/json");
    }

    /// <summary>Reads the answer; the passkey is kept by <see cref="KeepAsync"/>. Null when it will not do.</summary>
    public async Task<UserPasskeyInfo?> ReadNewAsync(HttpContext http, PersonCard person, Answered answered)
    {
        if (Handed.NewPasskey.Take(http) is not { } state) return null;
        var result = await handler.PerformAttestationAsync(new PasskeyAttestationContext { HttpContext = http, CredentialJson = answered.Credential, AttestationState = state });
        if (!result.Succeeded || result.UserEntity.Id != FleetPasskeys.HandleOf(person)) return null;
        var name = (answered.Name ?? "").Trim();
        result.Passkey.Name = name.Length is > 0 and <= LongestName && !name.Any(char.IsControl) ? name : http.Request.BrowserWords();
        return result.Passkey;
    }

    /// <summary>Keeps a passkey.</summary>
    public Task KeepAsync(PersonCard person, UserPasskeyInfo passkey, CancellationToken ct) => users.AddOrUpdatePasskeyAsync(person, passkey, ct);

    /// <summary>Asks for any passkey that is known here; the authenticator knows whose it is.</summary>
    public async Task<IResult> AskForKnownAsync(HttpContext http)
    {
        var asked = await handler.MakeRequestOptionsAsync(null, http);
        Handed.KnownPasskey.Give(http, asked.AssertionState!);
        return Results.Content(asked.RequestOptionsJson, "application/json");
    }

    /// <summary>Whose passkey answered; null when none of ours did.</summary>
    public async Task<PersonCard?> RecognizeAsync(HttpContext http, Answered answered)
    {
        if (Handed.KnownPasskey.Take(http) is not { } state) return null;
        var result = await handler.PerformAssertionAsync(new PasskeyAssertionContext { HttpContext = http, CredentialJson = answered.Credential, AssertionState = state });
        if (!result.Succeeded) return null;
        await users.AddOrUpdatePasskeyAsync(result.User, result.Passkey, http.RequestAborted);
        return result.User;
    }
}

/// <summary>What a script sends of an authenticator's answer.</summary>
/// <param name="Credential">The credential, as the browser writes it.</param>
/// <param name="Name">What a new passkey is called.</param>
/// <param name="To">Where to go afterwards.</param>
public sealed record Answered(string Credential, string? Name, string? To)
{
    /// <summary>Reads the body; null when it is none.</summary>
    public static async Task<Answered?> ReadAsync(HttpContext http)
    {
        try
        {
            var body = await JsonNode.ParseAsync(http.Request.Body, documentOptions: new JsonDocumentOptions { MaxDepth = 16 }, cancellationToken: http.RequestAborted);
            return body?["credential"] is JsonObject credential ? new Answered(credential.ToJsonString(), Text(body["name"]), Text(body["to"])) : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
