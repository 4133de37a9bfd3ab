using System.Globalization;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Schedules;
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

    private static async Task<IResult> ShowAsync(string month, HttpContext http, FleetOperators operators, FleetReading reading, TimeProvider time)
    {
        var scene = await Scene.OfAsync(http, operators);
        if (Read(month) is not { } first) return NotHere(http, scene, PageTexts.English["analyst.not-here"]);
        if (!IsOver(first, scene, time)) return NotOver(http, scene, first);
        var read = await AnalystPackKind.ReadAsync(reading, scene.Operator.Id, first, http.RequestAborted);
        return PageAnswer.Of<AnalystPage>(http, new { Scene = scene, Month = month, Files = await AnalystPackDigest.FilesAsync(read, http.RequestAborted) });
    }

    private static async Task<IResult> FileAsync(string month, string file, HttpContext http, FleetOperators operators, FleetReading reading, TimeProvider time)
    {
        var scene = await Scene.OfAsync(http, operators);
        if (Read(month) is not { } first) return NotHere(http, scene, PageTexts.English["analyst.not-here"]);
        if (!IsOver(first, scene, time)) return NotOver(http, scene, first);
        var read = await AnalystPackKind.ReadAsync(reading, http.User.OperatorOf(), first, http.RequestAborted);
        var found = (await AnalystPackDigest.FilesAsync(read, http.RequestAborted)).FirstOrDefault(f => f.FileName == file);
        if (found is null) return NotHere(http, scene, PageTexts.English["analyst.not-here"]);
        http.Response.Headers.CacheControl = "no-store";
        return Results.File(found.Bytes, found.MediaType, $"{month}-{found.FileName}");
    }

    /// <summary>Its last day is over at the office: a pack tells of whole months, and its forecasts are held against what came by the month's end.</summary>
    private static bool IsOver(DateOnly first, Scene scene, TimeProvider time) =>
        first.AddMonths(1) <= DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(scene.Operator.Zone)).DateTime);

    private static IResult NotOver(HttpContext http, Scene scene, DateOnly first) =>
        NotHere(http, scene, PageTexts.English.With("analyst.not-over", ("month", Periods.Prose(Periods.Month(first))), ("from", Periods.Day(first.AddMonths(1)))));

    private static IResult NotHere(HttpContext http, Scene scene, string sentence) => PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = sentence }, StatusCodes.Status404NotFound);

    private static DateOnly? Read(string month) => DateOnly.TryParseExact($"{month}-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first) && first.Year < 9999 ? first : null;
}
