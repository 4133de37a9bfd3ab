using FleetWake.Store.People;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Frame;

/// <summary>What somebody prefers, read once a request behind the sign-in: the frame of every page asks for it.</summary>
public static class PersonHere
{
    /// <summary>Reads it for whoever is signed in.</summary>
    public static void UsePersonHere(this IApplicationBuilder app) => app.UseMiddleware<Reader>();

    /// <summary>What the person prefers; the usual for programs and strangers.</summary>
    public static PersonPreferences Preferences(this HttpContext http) => http.Features.Get<PersonPreferences>() ?? Frame.Measures.Usual.Preferences;

    /// <summary>Dates, numbers and units as the person reads them.</summary>
    public static Measures Measures(this HttpContext http) => http.Features.Get<PersonPreferences>() is { } own ? new Measures(own) : Frame.Measures.Usual;

    private sealed class Reader(RequestDelegate next)
    {
        public async Task InvokeAsync(HttpContext http, FleetPreferences preferences)
        {
            if (http.User.PersonOf() is { } person) http.Features.Set(await preferences.OfAsync(http.User.OperatorOf(), person, http.RequestAborted));
            await next(http);
        }
    }
}
