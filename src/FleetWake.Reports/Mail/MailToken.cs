using System.Net.Http.Json;
using System.Text.Json.Serialization;

namespace FleetWake.Reports.Mail;

/// <summary>Where an access token for the mail server is asked for (RFC 6749): by a refresh token (section 6) where there is one, else by the client's own credentials (4.4).</summary>
/// <param name="Endpoint">The token endpoint.</param>
/// <param name="Client">Id of the client.</param>
/// <param name="Secret">Its secret; null for a client without.</param>
/// <param name="Scope">The scope that is asked for; null for none.</param>
/// <param name="Refresh">The refresh token; null to ask by the client's own credentials.</param>
public sealed record TokenSettings(Uri Endpoint, string Client, string? Secret, string? Scope, string? Refresh)
{
    /// <summary>Without the secrets: a record in a log line must not give them away.</summary>
    public override string ToString() => $"{Endpoint.Host} ({Client})";
}

/// <summary>An access token, asked for when it is first needed and anew before it ends.</summary>
public sealed class MailToken(TokenSettings settings, HttpClient http, TimeProvider time) : IDisposable
{
    // A token that ends while the conversation goes on is of no use.
    private static readonly TimeSpan Margin = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan UsualLife = TimeSpan.FromMinutes(10);

    private readonly SemaphoreSlim turn = new(1);
    private string? token;
    private string? refresh = settings.Refresh;
    private DateTimeOffset until;

    /// <summary>A token that is good now. Throws <see cref="TokenException"/> when none is given.</summary>
    public async Task<string> GetAsync(CancellationToken ct)
    {
        await turn.WaitAsync(ct);
        try
        {
            if (token is not null && time.GetUtcNow() < until) return token;
            var given = await AskAsync(ct);
            until = time.GetUtcNow() + (given.ExpiresIn is > 0 and var seconds ? TimeSpan.FromSeconds(seconds) : UsualLife) - Margin;

            // Some endpoints hand out a new refresh token each time and end the old one.
            refresh = given.RefreshToken ?? refresh;
            return token = given.AccessToken!;
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>The mail server did not take the token: the next one is asked for.</summary>
    public void Forget() => until = DateTimeOffset.MinValue;

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private async Task<Given> AskAsync(CancellationToken ct)
    {
        var form = new Dictionary<string, string> { ["grant_type"] = refresh is null ? "client_credentials" : "refresh_token", ["client_id"] = settings.Client };
        if (refresh is not null) form["refresh_token"] = refresh;
        if (settings.Secret is { } secret) form["client_secret"] = secret;
        if (settings.Scope is { } scope) form["scope"] = scope;
        try
        {
            using var content = new FormUrlEncodedContent(form);
            using var answer = await http.PostAsync(settings.Endpoint, content, ct);

            // What it answers is not repeated: it may hold what was sent.
            if (!answer.IsSuccessStatusCode) throw new TokenException($"{settings.Endpoint.Host} gave no token for the mail server: it answered {(int)answer.StatusCode}");
            return await answer.Content.ReadFromJsonAsync<Given>(ct) is { AccessToken.Length: > 0 } given
                ? given
                : throw new TokenException($"{settings.Endpoint.Host} answered without a token for the mail server");
        }
        catch (Exception e) when (e is HttpRequestException or System.Text.Json.JsonException or NotSupportedException)
        {
            throw new TokenException($"{settings.Endpoint.Host} gave no token for the mail server: {e.Message}");
        }
    }

    private sealed record Given(
        [property: JsonPropertyName("access_token")] string? AccessToken,
        [property: JsonPropertyName("expires_in")] double? ExpiresIn,
        [property: JsonPropertyName("refresh_token")] string? RefreshToken);
}

/// <summary>No token for the mail server.</summary>
public sealed class TokenException(string message) : Exception(message);
