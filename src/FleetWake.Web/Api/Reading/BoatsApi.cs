using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Boats and their findings.</summary>
internal static class BoatsApi
{
    private static readonly QueryField<string> Beginning = Query.Beginning("Only boats whose name or id begins so.");
    private static readonly QueryField<HireWord?> Hire = Query.Word<HireWord>("hire", "Only boats of which this is so.");
    private static readonly Paged<BoatLine> Boats = new("boats", b => [b.Name.ToUpperInvariant(), b.Boat]);

    public static void MapBoats(this IEndpointRouteBuilder read)
    {
        read.MapGet("boats", BoatsAsync).Lists(Boats, Query.Dock, Hire, Beginning)
            .Is("boats", "Every boat with what needs a person, by name.", "/api/boats", "/api/boats?dock=north-pier&q=lin&limit=20", "/api/boats?hire=out");
        read.MapGet("boats/{boat}", BoatAsync).Shows<BoatPage>()
            .Is("boat", "One boat in short.", "/api/boats/linnet");
        read.MapGet("boats/{boat}/finding", FindingAsync).Shows<StoredFinding>()
            .Is("boat_finding", "One boat's present finding whole: trials, slip, drift, margin, band exit, and what they were made from.", "/api/boats/linnet/finding");
    }

    private static async Task<IResult> BoatsAsync(HttpContext http, FleetReading reading)
    {
        var dock = Query.Dock.In(http);
        var beginning = Beginning.In(http);
        var hire = Hire.In(http);
        var policy = await reading.PolicyAsync(http.User.OperatorOf(), http.RequestAborted);
        var findings = await reading.FindingsAsync(http.User.OperatorOf(), http.RequestAborted);
        return Boats.Answer(http, findings.Select(f => f.Finding)
            .Where(f => dock is null || f.Registered?.Dock == dock)
            .Where(f => beginning is null || Begins(f.DisplayName(), beginning) || Begins(f.Boat, beginning))
            .Select(f => BoatLine.Of(f, policy))
            .Where(b => hire is null || b.Hire.Word == hire));
    }

    private static async Task<IResult> BoatAsync(string boat, HttpContext http, FleetReading reading)
    {
        var tenant = http.User.OperatorOf();
        var upToDate = await reading.IsUpToDateAsync(tenant, boat, http.RequestAborted);
        if (await reading.FindingAsync(tenant, boat, http.RequestAborted) is not { } stored) return ReadingRoutes.OrUnknown<BoatPage>(null, "boat", boat);
        var policy = await reading.PolicyAsync(tenant, http.RequestAborted);
        return TaggedJson.Of(new BoatPage(BoatLine.Of(stored.Finding, policy), stored.Finding.Registered, stored.Finding.Held, stored.AssessedAt, upToDate));
    }

    private static async Task<IResult> FindingAsync(string boat, HttpContext http, FleetReading reading) =>
        ReadingRoutes.OrUnknown(await reading.FindingAsync(http.User.OperatorOf(), boat, http.RequestAborted), "boat", boat);

    private static bool Begins(string text, string beginning) => text.StartsWith(beginning, StringComparison.OrdinalIgnoreCase);
}

/// <summary>A boat in short.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Dock">Its dock; null while it is not registered.</param>
/// <param name="Hire">Whether it may go out on hire by the operator's table, and what releases it if not.</param>
/// <param name="NotForHire">It is not in hire: <c>hire</c> says whether a look is enough, and what releases it.</param>
/// <param name="Attention">What needs a person, most urgent first.</param>
/// <param name="Positions">Each engine position in short.</param>
public sealed record BoatLine(
    string Boat, string Name, string? Dock, HireState Hire, bool NotForHire, IReadOnlyList<Attention> Attention, IReadOnlyList<PositionLine> Positions)
{
    internal static BoatLine Of(BoatFinding f, FleetPolicy policy)
    {
        var hire = HireStates.Of(f, policy);
        return new BoatLine(f.Boat, f.DisplayName(), f.Registered?.Dock, hire, hire.Word != HireWord.InHire, Attentions.Of(f, policy), [.. f.Positions.Select(PositionLine.Of)]);
    }
}

/// <summary>An engine position in short.</summary>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that hangs there.</param>
/// <param name="EngineHours">Its last credible hour-meter reading [h].</param>
/// <param name="Prop">Tag of the prop fitted.</param>
/// <param name="Mounting">Id of the mounting.</param>
/// <param name="Band">Where it stands in its rated band.</param>
/// <param name="Exit">When drift takes it out.</param>
public sealed record PositionLine(
    Logbook.Position Position, string? Engine, double? EngineHours, string? Prop, string? Mounting, BandStanding? Band, BandExit? Exit)
{
    internal static PositionLine Of(PositionFinding p) =>
        new(p.Position, p.Engine?.Engine, p.EngineHours, p.Mounting?.Prop.Prop, p.Mounting?.Mounting, p.Mounting?.Band, p.Mounting?.Exit);
}

/// <summary>A boat by itself.</summary>
/// <param name="Now">The boat in short.</param>
/// <param name="Registered">What its registration says; null while only records of it have arrived.</param>
/// <param name="Held">How many records wait for its registration.</param>
/// <param name="AssessedAt">When its finding was made.</param>
/// <param name="UpToDate">Whether every record of it is in the finding; usually it is assessed again within about a second. False too while records of the fleet wait to be looked at.</param>
public sealed record BoatPage(BoatLine Now, BoatCard? Registered, int Held, DateTimeOffset AssessedAt, bool UpToDate);
