using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.SignIn;

/// <summary>Something that one answer hands to the next request of the same browser, which can neither read nor make it: the state of a passkey, a line to show once.</summary>
/// <param name="Name">Name of the cookie.</param>
/// <param name="Lasts">How long it waits.</param>
public sealed record Handed(string Name, TimeSpan Lasts)
{
    /// <summary>A line to show on the page that follows a form, once.</summary>
    public static Handed Line { get; } = new("fleetwake-line", TimeSpan.FromMinutes(2));

    /// <summary>What is expected of a new passkey.</summary>
    public static Handed NewPasskey { get; } = new("fleetwake-new-passkey", TimeSpan.FromMinutes(5));

    /// <summary>What is expected of a known passkey.</summary>
    public static Handed KnownPasskey { get; } = new("fleetwake-passkey", TimeSpan.FromMinutes(5));

    /// <summary>Gives it.</summary>
    public void Give(HttpContext http, string text) =>
        http.Response.Cookies.Append(Name, Protector(http).Protect(text, Lasts), Options(http, Lasts));

    /// <summary>Takes it back; null when there is none or it is too old.</summary>
    public string? Take(HttpContext http)
    {
        if (http.Request.Cookies[Name] is not { Length: > 0 } given) return null;
        http.Response.Cookies.Delete(Name, Options(http));
        try
        {
            return Protector(http).Unprotect(given);
        }
        catch (System.Security.Cryptography.CryptographicException)
        {
            return null;
        }
    }

    private ITimeLimitedDataProtector Protector(HttpContext http) =>
        ((IDataProtectionProvider)http.RequestServices.GetService(typeof(IDataProtectionProvider))!).CreateProtector("FleetWake.Handed", Name).ToTimeLimitedDataProtector();

    private static CookieOptions Options(HttpContext http, TimeSpan? lasts = null) =>
        new() { HttpOnly = true, Secure = http.Request.IsHttps, SameSite = SameSiteMode.Strict, IsEssential = true, Path = "/", MaxAge = lasts };
}
