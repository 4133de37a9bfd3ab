using System.Globalization;
using FleetWake.Logbook.People;
using FleetWake.Reports.Digests.AnalystPack;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Analyst;

/// <summary>The files of a month's pack, for when they are too large for a mail or were lost. They are made when asked for.</summary>
internal static class AnalystRoutes
{
    public static void MapAnalystPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("analyst/{month}", ShowAsync).NeedsTo(Verb.Read, Matter.Export);
        office.MapGet("analyst/{month}/{file}", FileAsync).NeedsTo(Verb.Read, Matter.Export);
    }

    private static async Task<IResult> ShowAsync(string month, HttpContext http, FleetOperators operators, FleetReading reading)
    {
        var scene = await Scene.OfAsync(http, operators);
        if (Read(month) is not { } first) return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["analyst.not-here"] }, StatusCodes.Status404NotFound);
        var read = await AnalystPackKind.ReadAsync(reading, scene.Operator.Id, first, http.RequestAborted);
        return PageAnswer.Of<AnalystPage>(http, new { Scene = scene, Month = month, Files = await AnalystPackDigest.FilesAsync(read, http.RequestAborted) });
    }

    private static async Task<IResult> FileAsync(string month, string file, HttpContext http, FleetOperators operators, FleetReading reading)
    {
        if (Read(month) is not { } first) return PageAnswer.Of<NotHerePage>(http, new { Scene = await Scene.OfAsync(http, operators), Sentence = PageTexts.English["analyst.not-here"] }, StatusCodes.Status404NotFound);
        var read = await AnalystPackKind.ReadAsync(reading, http.User.OperatorOf(), first, http.RequestAborted);
        var found = (await AnalystPackDigest.FilesAsync(read, http.RequestAborted)).FirstOrDefault(f => f.FileName == file);
        if (found is null) return PageAnswer.Of<NotHerePage>(http, new { Scene = await Scene.OfAsync(http, operators), Sentence = PageTexts.English["analyst.not-here"] }, StatusCodes.Status404NotFound);
        http.Response.Headers.CacheControl = "no-store";
        return Results.File(found.Bytes, found.MediaType, $"{month}-{found.FileName}");
    }

    private static DateOnly? Read(string month) => DateOnly.TryParseExact($"{month}-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first) ? first : null;
}
