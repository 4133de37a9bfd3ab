using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Props: where each is, what it ran, what it cost.</summary>
internal static class PropsApi
{
    private static readonly QueryField<string> Beginning = Query.Beginning("Only props whose tag begins so.");
    private static readonly QueryField<string> Dock = Query.Id("dock", "Only spares that lie at this dock.");
    private static readonly QueryField<PropStanding?> Standing = Query.Word<PropStanding>("standing", "Only props of which this is so.");
    private static readonly Paged<PropLine> Props = new("props", p => [p.Prop]);

    public static void MapProps(this IEndpointRouteBuilder read)
    {
        read.MapGet("props", PropsAsync).Lists(Props, Dock, Standing, Beginning)
            .Is("props", "Every prop, by tag, with where it is.", "/api/props", "/api/props?standing=spare&q=lin");
        read.MapGet("props/{prop}", PropAsync).Shows<PropLife>()
            .Is("prop", "One prop's life: where it ran and is, its hours, its numbers as told and measured, what it cost.", "/api/props/lin-13");
    }

    private static async Task<IResult> PropsAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (dock, standing, beginning) = (Dock.In(http), Standing.In(http), Beginning.In(http));
        var tags = (await reading.StreamsAsync(tenant, StreamName.Prop(""), ct)).Select(s => StreamName.PropOf(s)!)
            .Where(t => beginning is null || t.StartsWith(beginning, StringComparison.OrdinalIgnoreCase));
        return await Props.WalkAsync(http, tags, async some => (await reading.PropLivesAsync(tenant, some, ct))
            .Where(p => (standing is null || p.Place.Standing == standing) && (dock is null || p.Place.Dock == dock))
            .Select(p => new PropLine(p.Prop, p.Numbers.DiameterInches, p.Numbers.PitchInches, p.Registered?.Blades, p.Registered?.Material, p.Place, p.Hours)));
    }

    private static async Task<IResult> PropAsync(string prop, HttpContext http, FleetReading reading) =>
        ReadingRoutes.OrUnknown((await reading.PropLivesAsync(http.User.OperatorOf(), [prop], http.RequestAborted)).FirstOrDefault(), "prop", prop);
}

/// <summary>A prop in short.</summary>
/// <param name="Prop">Its tag.</param>
/// <param name="DiameterInches">Diameter now [in].</param>
/// <param name="PitchInches">Pitch now [in].</param>
/// <param name="Blades">Number of blades; null while it is not registered.</param>
/// <param name="Material">Material; null while it is not registered.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Hours">Engine hours it ran, as far as they are known [h].</param>
public sealed record PropLine(string Prop, double? DiameterInches, double? PitchInches, int? Blades, PropMaterial? Material, PropPlace Place, double? Hours);
