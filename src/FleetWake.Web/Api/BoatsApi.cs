using System.Globalization;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api;

/// <summary>Where boats, findings and due lists are read.</summary>
public static class BoatsApi
{
    /// <summary>Maps the routes.</summary>
    public static void MapBoats(this IEndpointRouteBuilder routes)
    {
        var read = routes.MapGroup("/api").RequireAuthorization(Words.Of(KeyScope.Read)).WithTags("Fleet").ProducesProblem(401).ProducesProblem(403).ProducesProblem(503);
        read.MapGet("boats", BoatsAsync).WithName("boats").WithSummary("Every boat with what needs a person.");
        read.MapGet("boats/{boat}", BoatAsync).WithName("boat").WithSummary("One boat: its present finding in short, and its record in order.").Produces<BoatPage>().ProducesProblem(404);
        read.MapGet("boats/{boat}/finding", FindingAsync).WithName("boat_finding").WithSummary("One boat's present finding, with what it was made from.").Produces<StoredFinding>().ProducesProblem(404);
        read.MapGet("due", DueAsync).WithName("due").WithSummary("What is due, most overdue first; \"day\" is today at each boat's dock unless given.").Produces<DueItem[]>().Produces<RefusalProblem>(422, Problems.MediaType);
    }

    private static async Task<BoatLine[]> BoatsAsync(HttpContext http, FleetReading reading, string? dock = null) =>
        [.. (await reading.FindingsAsync(http.User.OperatorOf(), http.RequestAborted))
            .Where(f => dock is null || f.Finding.Registered?.Dock == dock)
            .Select(f => Line(f.Finding))];

    private static async Task<IResult> BoatAsync(string boat, HttpContext http, FleetReading reading)
    {
        var tenant = http.User.OperatorOf();
        var log = await reading.LogAsync(tenant, boat, http.RequestAborted);
        if (log is null) return Unknown(boat);
        var finding = await reading.FindingAsync(tenant, boat, http.RequestAborted);
        return Results.Json(new BoatPage(finding is null ? null : Line(finding.Finding), log.Facts));
    }

    private static async Task<IResult> FindingAsync(string boat, HttpContext http, FleetReading reading) =>
        await reading.FindingAsync(http.User.OperatorOf(), boat, http.RequestAborted) is { } finding
            ? Results.Json(finding)
            : Unknown(boat);

    private static async Task<IResult> DueAsync(HttpContext http, FleetReading reading, TimeProvider time, string? day = null, string? dock = null)
    {
        DateOnly? asked = null;
        if (day is not null)
        {
            if (!DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var given))
                return Problems.Field("day", "not_a_date", "give the day as in 2026-05-03");
            asked = given;
        }

        var findings = await reading.FindingsAsync(http.User.OperatorOf(), http.RequestAborted);
        return Results.Json(findings.Select(f => f.Finding)
            .Where(f => f.Registered is not null && (dock is null || f.Registered.Dock == dock))
            .SelectMany(f => Outlook.Of(f, asked ?? TodayAt(f.Registered!.DockZone, time)))
            .OrderBy(d => d.DueOn).ThenBy(d => d.BoatName, StringComparer.OrdinalIgnoreCase).ThenBy(d => d.Position)
            .ToArray());
    }

    /// <summary>The calendar date at a dock now.</summary>
    public static DateOnly TodayAt(string zone, TimeProvider time) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);

    private static BoatLine Line(BoatFinding f)
    {
        var attention = Attentions.Of(f);
        return new BoatLine(f.Boat, f.DisplayName(), f.Registered?.Dock, attention.Any(a => a.Blocks), attention, [.. f.Positions.Select(p => new PositionLine(p.Position, p.Mounting?.Prop.Prop, p.Mounting?.Band, p.Mounting?.Exit))]);
    }

    private static IResult Unknown(string boat) => Problems.NotFound($"Nothing is on record of \"{boat}\", or it is not assessed yet.");
}

/// <summary>A boat in short.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Dock">Its dock; null while it is not registered.</param>
/// <param name="NotForHire">Something blocks it until an inspection.</param>
/// <param name="Attention">What needs a person, most urgent first.</param>
/// <param name="Positions">Each engine position in short.</param>
public sealed record BoatLine(string Boat, string Name, string? Dock, bool NotForHire, IReadOnlyList<Attention> Attention, IReadOnlyList<PositionLine> Positions);

/// <summary>An engine position in short.</summary>
/// <param name="Position">The position.</param>
/// <param name="Prop">Tag of the prop fitted.</param>
/// <param name="Band">Where it stands in its rated band.</param>
/// <param name="Exit">When drift takes it out.</param>
public sealed record PositionLine(Logbook.Position Position, string? Prop, BandStanding? Band, BandExit? Exit);

/// <summary>A boat with its record.</summary>
/// <param name="Now">The boat in short; null while it is not assessed.</param>
/// <param name="Record">Its facts in the order of things.</param>
public sealed record BoatPage(BoatLine? Now, IReadOnlyList<IFact> Record);
