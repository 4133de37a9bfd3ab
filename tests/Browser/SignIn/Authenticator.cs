using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.SignIn;

/// <summary>A phone's own passkey store, played by Chromium: it makes and uses passkeys without asking for a finger.</summary>
internal sealed class Authenticator(ICDPSession devtools, string id)
{
    public static async Task<Authenticator> OnAsync(IPage page)
    {
        var devtools = await page.Context.NewCDPSessionAsync(page);
        await devtools.SendAsync("WebAuthn.enable");
        var options = new Dictionary<string, object>
        {
            ["protocol"] = "ctap2",
            ["transport"] = "internal",
            ["hasResidentKey"] = true,
            ["hasUserVerification"] = true,
            ["isUserVerified"] = true,
            ["automaticPresenceSimulation"] = true,
        };
        var made = await devtools.SendAsync("WebAuthn.addVirtualAuthenticator", new Dictionary<string, object> { ["options"] = options });
        return new Authenticator(devtools, made!.Value.GetProperty("authenticatorId").GetString()!);
    }

    /// <summary>How many passkeys it holds.</summary>
    public async Task<int> CountAsync() =>
        (await devtools.SendAsync("WebAuthn.getCredentials", new Dictionary<string, object> { ["authenticatorId"] = id }))!.Value.GetProperty("credentials").GetArrayLength();

    /// <summary>The finger is from now on that of nobody.</summary>
    public Task RefuseAsync() => devtools.SendAsync("WebAuthn.setUserVerified", new Dictionary<string, object> { ["authenticatorId"] = id, ["isUserVerified"] = false });
}
