using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Api.Reading;

/// <summary>
/// Gathers a whole fleet for its figures. Every history is told anew for each request, which costs some milliseconds a boat,
/// so there is a limit: a larger fleet is reckoned from its sheets by <c>fleetwake fleet</c>.
/// </summary>
internal static class FleetGathering
{
    /// <summary>Most boats that a request tells the histories of.</summary>
    public const int MostBoats = FleetReading.MostBoatsForFigures;

    /// <summary>Answers with a figure of the operator's fleet; with a refusal when it is too large for a request.</summary>
    public static async Task<IResult> AnswerAsync<T>(HttpContext http, FleetReading reading, Func<FleetRecord, T> figure)
    {
        var (fleet, boats) = await ReadAsync(reading, http.User.OperatorOf(), http.RequestAborted);
        return fleet is null ? TooLarge(boats) : TaggedJson.Of(figure(fleet));
    }

    /// <summary>The refusal of a fleet that is too large for a request.</summary>
    public static IResult TooLarge(int boats) => Problems.Make(
        StatusCodes.Status422UnprocessableEntity, "fleet-too-large",
        $"There are {boats} boats, and figures are made on request for at most {MostBoats}. Write the record to sheets and run \"fleetwake fleet FOLDER\".", []);

    /// <summary>An operator's fleet, and how many boats it has; no fleet when those are too many for a request.</summary>
    public static Task<(FleetRecord? Fleet, int Boats)> ReadAsync(FleetReading reading, string tenant, CancellationToken ct) => reading.FleetAsync(tenant, ct);
}
