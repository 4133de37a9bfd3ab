using FleetWake.Store.People;
using FleetWake.Web.Office.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.SignIn;

/// <summary>The address under which people reach the program, for links and passkeys.</summary>
/// <param name="Public">As set; null when it is not.</param>
public sealed record SiteAddress(Uri? Public)
{
    /// <summary>The address without a slash at its end: as set, or as the request has it.</summary>
    public string Of(HttpRequest request) => Public?.AbsoluteUri.TrimEnd('/') ?? $"{request.Scheme}://{request.Host}{request.PathBase}";
}

/// <summary>Puts signing in together.</summary>
internal static class SignInServices
{
    public static void AddSignIn(this IServiceCollection services, Uri? publicUrl)
    {
        services.AddSingleton(new SiteAddress(publicUrl));
        SharedKeys.Add(services);
        services.AddAntiforgery(o =>
        {
            o.FormFieldName = FormGuard.Field;
            o.HeaderName = FormGuard.Header;
            o.Cookie.Name = "fleetwake-form";
            o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddIdentityCore<PersonCard>();
        services.AddScoped<IUserStore<PersonCard>, PasskeyUsers>();
        services.AddScoped<IPasskeyHandler<PersonCard>, PasskeyHandler<PersonCard>>();
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = Passwords.Rounds);
        services.Configure<IdentityPasskeyOptions>(o =>
        {
            // The authenticator must know whose the passkey is: nobody types a name first.
            o.ResidentKeyRequirement = "required";
            o.UserVerificationRequirement = "required";
            if (publicUrl is null) return;
            o.ServerDomain = publicUrl.Host;
            o.ValidateOrigin = asked => ValueTask.FromResult(!asked.CrossOrigin && asked.Origin == publicUrl.GetLeftPart(UriPartial.Authority));
        });
        services.AddScoped<Passkeys>();
        services.AddScoped<Passwords>();
        services.AddScoped<ComingIn>();
        services.AddSingleton<PeopleDesk>();
        services.AddSingleton<MyWays>();
    }

    /// <summary>
    /// TLS ends in front of the program. A proxy on this machine is believed about who asked and how; and what comes in under
    /// the public address came by https, whatever the proxy says.
    /// </summary>
    public static void UseProxyInFront(this WebApplication app)
    {
        app.UseForwardedHeaders(new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto });
        if (app.Services.GetRequiredService<SiteAddress>().Public is not { } site) return;
        app.Use((http, next) =>
        {
            if (string.Equals(http.Request.Host.Host, site.Host, StringComparison.OrdinalIgnoreCase)) http.Request.Scheme = Uri.UriSchemeHttps;
            return next(http);
        });
    }
}
