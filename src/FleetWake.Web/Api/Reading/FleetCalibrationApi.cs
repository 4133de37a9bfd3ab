using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>Whether the forecasts were right.</summary>
internal static class FleetCalibrationApi
{
    private static readonly QueryField<DateOnly?> Month = new(
        "month", "The month at whose end the forecasts were made; the last one that is over unless given.", new OpenApiSchema { Type = JsonSchemaType.String, Pattern = "^[0-9]{4}-[0-9]{2}$" }, text =>
            DateOnly.TryParseExact(text, "yyyy-MM", CultureInfo.InvariantCulture, DateTimeStyles.None, out var first) && first.Year > 1900
                ? (first, null)
                : (null, new Refusal("month", "not_a_month", "give the month as in 2026-05")));

    public static void MapFleetCalibration(this IEndpointRouteBuilder read) =>
        read.MapGet("fleet/calibration", CalibrationAsync).Takes(Month).Produces<ForecastCalibration>()
            .Is("fleet_calibration", $"Forecasts as they would have been at the end of a month, held against what has come since: how many of the 80 % intervals held, with exact limits. Made on request, for at most {FleetGathering.MostBoats} boats.", "/api/fleet/calibration", "/api/fleet/calibration?month=2026-01");

    private static async Task<IResult> CalibrationAsync(HttpContext http, FleetReading reading, FleetOperators operators, TimeProvider time)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var today = DueApi.TodayAt((await operators.FindAsync(tenant, ct))!.Zone, time);
        var ofThis = new DateOnly(today.Year, today.Month, 1);
        var first = Month.In(http) ?? ofThis.AddMonths(-1);
        if (first >= ofThis) return Problems.Query([new Refusal("month", "not_over", "give a month that is over: nothing has come yet of forecasts that are still to be made")]);
        var boats = (await reading.FindingsAsync(tenant, ct)).Count;
        return boats > FleetGathering.MostBoats ? FleetGathering.TooLarge(boats) : TaggedJson.Of(await reading.CalibrationAsync(tenant, first.AddMonths(1).AddDays(-1), ct));
    }
}
