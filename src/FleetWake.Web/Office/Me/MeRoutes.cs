using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Me;

/// <summary>How somebody likes to read: units, dates, light or dark. It is no record and changes none.</summary>
internal static class MeRoutes
{
    public static void MapMePage(this IEndpointRouteBuilder office)
    {
        office.MapGet("me", ShowAsync).NeedsSomebody();
        office.MapPost("me", KeepAsync).NeedsSomebody();
    }

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators) =>
        PageAnswer.Of<MePage>(http, new { Scene = await Scene.OfAsync(http, operators), Chosen = http.Preferences(), Kept = http.Request.Query.ContainsKey("kept") });

    private static async Task<IResult> KeepAsync(HttpContext http, FleetPreferences preferences)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        T Read<T>(string name)
            where T : struct, Enum => Words.TryRead<T>(form[name].ToString(), out var value) ? value : default;
        await preferences.KeepAsync(
            new PersonPreferences(
                PersonCard.KeyOf(http.User.OperatorOf(), http.User.PersonOf()!),
                Read<SpeedReading>("speed"), Read<TorqueReading>("torque"), Read<TemperatureReading>("temperature"), Read<DateReading>("dates"), Read<NumberReading>("numbers"), Read<ThemeReading>("theme")),
            http.RequestAborted);
        return Results.Redirect("/office/me?kept=1");
    }
}
