using FleetWake.Logbook.Entries;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Questions that a person has to settle.</summary>
internal static class ContradictionsApi
{
    private static readonly QueryField<ContradictionKind?> Kind = Query.Word<ContradictionKind>("kind", "Only questions of this kind.");
    private static readonly Paged<ContradictionLine> Questions =
        new("contradictions", c => [c.BoatName.ToUpperInvariant(), c.Boat, Words.Of(c.Kind), string.Join(' ', c.Entries), c.Question]);

    public static void MapContradictions(this IEndpointRouteBuilder read) =>
        read.MapGet("contradictions", ContradictionsAsync).Lists(Questions, Query.Dock, Query.Boat, Kind)
            .Is("contradictions", "Records that cannot both be so, as questions, by boat. One that two boats share is asked of both.", "/api/contradictions", "/api/contradictions?boat=linnet");

    private static async Task<IResult> ContradictionsAsync(HttpContext http, FleetReading reading)
    {
        var (dock, boat, kind) = (Query.Dock.In(http), Query.Boat.In(http), Kind.In(http));
        var findings = await reading.FindingsAsync(http.User.OperatorOf(), http.RequestAborted);
        return Questions.Answer(http, findings.Select(f => f.Finding)
            .Where(f => (dock is null || f.Registered?.Dock == dock) && (boat is null || f.Boat == boat))
            .SelectMany(f => f.Contradictions.Where(c => kind is null || c.Kind == kind)
                .Select(c => new ContradictionLine(f.Boat, f.DisplayName(), f.Registered?.Dock, c.Kind, c.Entries, c.Question))));
    }
}

/// <summary>A question on a boat's record.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Dock">Its dock; null while the boat is not registered.</param>
/// <param name="Kind">What kind of contradiction.</param>
/// <param name="Entries">The entries that disagree, in order.</param>
/// <param name="Question">The question to the person who settles it.</param>
public sealed record ContradictionLine(string Boat, string BoatName, string? Dock, ContradictionKind Kind, IReadOnlyList<Guid> Entries, string Question);
