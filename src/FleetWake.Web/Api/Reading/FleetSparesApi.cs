using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>What spares the fleet should hold.</summary>
internal static class FleetSparesApi
{
    private static readonly SpareQuestion Usual = new();

    private static readonly QueryField<int?> LeadTimeDays = Query.Whole("leadTimeDays", "Days from ordering a prop or part to having it.", 1, 730, (int)Usual.LeadTimeDays);
    private static readonly QueryField<double?> ServiceLevel = Number("serviceLevel", "Share of the time in which nobody is to wait for a spare.", 0.5, 0.999, Usual.ServiceLevel);
    private static readonly QueryField<double?> Season = Number("season", "How much busier the time ahead is than the year's average.", 0, 10, Usual.SeasonFactor);

    public static void MapFleetSpares(this IEndpointRouteBuilder read) =>
        read.MapGet("fleet/spares", SparesAsync).Takes(LeadTimeDays, ServiceLevel, Season).Produces<SpareNeeds>()
            .Is("fleet_spares", $"How many props of each size and small parts to hold over a lead time, against what is in store. Made on request, for at most {FleetGathering.MostBoats} boats.", "/api/fleet/spares", "/api/fleet/spares?leadTimeDays=21&serviceLevel=0.9&season=2");

    private static Task<IResult> SparesAsync(HttpContext http, FleetReading reading)
    {
        var question = new SpareQuestion(LeadTimeDays.In(http) ?? Usual.LeadTimeDays, ServiceLevel.In(http) ?? Usual.ServiceLevel, Season.In(http) ?? Usual.SeasonFactor);
        return FleetGathering.AnswerAsync(http, reading, fleet => SpareNeeds.Of(fleet, question));
    }

    /// <summary>A number within limits.</summary>
    private static QueryField<double?> Number(string name, string meaning, double least, double most, double usual) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.Number, Minimum = $"{least}", Maximum = $"{most}", Default = usual }, text =>
            double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
                ? (number, null)
                : (null, new Refusal(name, "out_of_range", $"give a number from {least} to {most}")));
}
