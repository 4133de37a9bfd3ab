using System.Buffers.Text;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Frame;

/// <summary>
/// What every answer tells a browser: run no script but ours, frame us nowhere, guess no types, send no address on
/// (OWASP ASVS 5.0, V3). Scripts are files; the nonce is for the few tags that name them.
/// </summary>
public static class PageGuard
{
    private static readonly object NonceKey = new();

    /// <summary>Adds the headers to every answer.</summary>
    public static void UsePageGuard(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        var nonce = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(18));
        http.Items[NonceKey] = nonce;
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy =
            $"default-src 'none'; script-src 'self' 'nonce-{nonce}'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
            + "font-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";

        // The camera reads a tag, the position measures a trial's speed; nothing else of the phone is wanted.
        headers["Permissions-Policy"] = "camera=(self), geolocation=(self), microphone=(), payment=(), usb=()";
        if (http.Request.IsHttps) headers.StrictTransportSecurity = "max-age=31536000; includeSubDomains";
        return next(http);
    });

    /// <summary>The nonce of this answer's script tags.</summary>
    public static string Nonce(this HttpContext http) => (string)http.Items[NonceKey]!;
}
