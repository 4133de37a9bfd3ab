using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Small parts: what each dock has.</summary>
internal static class PartsApi
{
    private static readonly QueryField<string> Beginning = Query.Beginning("Only parts whose id begins so.");
    private static readonly QueryField<string> Dock = Query.Id("dock", "Only parts that a record places at this dock.");
    private static readonly Paged<PartLine> Parts = new("parts", p => [p.Part]);

    public static void MapParts(this IEndpointRouteBuilder read)
    {
        read.MapGet("parts", PartsAsync).Lists(Parts, Dock, Beginning)
            .Is("parts", "Every small part, by id, with what each dock has of it.", "/api/parts", "/api/parts?dock=north-pier");
        read.MapGet("parts/{part}", PartAsync).Shows<PartLine>()
            .Is("part", "One small part with what each dock has of it.", "/api/parts/pin-3x25");
    }

    private static async Task<IResult> PartsAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (dock, beginning) = (Dock.In(http), Beginning.In(http));
        var ids = (await reading.StreamsAsync(tenant, StreamName.Part(""), ct)).Select(s => StreamName.PartOf(s)!)
            .Where(p => beginning is null || p.StartsWith(beginning, StringComparison.OrdinalIgnoreCase));
        return await Parts.WalkAsync(http, ids, async some => (await reading.PartsAsync(tenant, some, ct))
            .Where(p => dock is null || p.At(dock) is not null)
            .Select(Line));
    }

    private static async Task<IResult> PartAsync(string part, HttpContext http, FleetReading reading) =>
        ReadingRoutes.OrUnknown((await reading.PartsAsync(http.User.OperatorOf(), [part], http.RequestAborted)).Select(Line).FirstOrDefault(), "part", part);

    private static PartLine Line(PartStock p) => new(p.Part, p.Name, p.Kind, p.Total(), p.UsedFromNowhere, p.Docks);
}

/// <summary>What there is of a small part.</summary>
/// <param name="Part">Its id.</param>
/// <param name="Name">Its name for people, as told last.</param>
/// <param name="Kind">What it is; null while nobody stocked it.</param>
/// <param name="Total">Pieces at all docks, less those used with no dock named.</param>
/// <param name="UsedFromNowhere">Pieces used since the last stock-take with no dock named.</param>
/// <param name="Docks">What each dock has.</param>
public sealed record PartLine(string Part, string? Name, PartKind? Kind, int Total, int UsedFromNowhere, IReadOnlyList<DockStock> Docks);
