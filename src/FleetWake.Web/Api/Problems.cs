using FleetWake.Logbook.Entries;
using FleetWake.Store.Records;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Api;

/// <summary>Every refusal of the API as a problem document (RFC 9457), in one place.</summary>
public static class Problems
{
    /// <summary>Base of the stable problem types.</summary>
    public const string TypeBase = "urn:fleetwake:problem:";

    /// <summary>Media type of a problem document.</summary>
    public const string MediaType = "application/problem+json";

    /// <summary>The record is not kept: 409 for an entry id used twice, else 422.</summary>
    public static IResult Record(Answer answer) => answer.Outcome == Outcome.Conflict
        ? Make(StatusCodes.Status409Conflict, "entry-id-used", "This entry id was used before for other content.", answer.Refusals)
        : Make(StatusCodes.Status422UnprocessableEntity, "record-refused", "The record cannot be kept as it is. Mend the fields named and send it again; nothing was stored.", answer.Refusals);

    /// <summary>Query parameters cannot be used.</summary>
    public static IResult Query(IReadOnlyList<Refusal> refusals) => Make(
        StatusCodes.Status422UnprocessableEntity, "request-refused", string.Join("; ", refusals.Select(r => r.Message)) + ".", refusals);

    /// <summary>A header or a batch field cannot be used.</summary>
    public static IResult Field(string field, string reason, string message) =>
        Make(StatusCodes.Status422UnprocessableEntity, "request-refused", message, [new Refusal(field, reason, message)]);

    /// <summary>The body is no JSON.</summary>
    public static IResult Malformed(string detail) => Make(StatusCodes.Status400BadRequest, "malformed-json", detail, []);

    /// <summary>No key, or none that is known.</summary>
    public static IResult Unauthorized() =>
        Make(StatusCodes.Status401Unauthorized, "key-needed", "Send a valid API key as \"Authorization: Bearer fw_…\".", []);

    /// <summary>The key was good, and has ended by itself.</summary>
    public static IResult Expired(DateTimeOffset until) => Make(
        StatusCodes.Status401Unauthorized, "key-expired", $"This key ended on {until.ToUniversalTime():yyyy-MM-dd HH:mm} UTC: ask whoever runs your fleet's record for a new one (fleetwake key make).", []);

    /// <summary>The key lacks the scope.</summary>
    public static IResult Forbidden() =>
        Make(StatusCodes.Status403Forbidden, "scope-needed", "This key may not do that: ask for one with the scope that the route names.", []);

    /// <summary>Nothing is known of what the path names.</summary>
    public static IResult NotFound(string detail) => Make(StatusCodes.Status404NotFound, "not-found", detail, []);

    /// <summary>The database does not answer; the device keeps the entry and tries again.</summary>
    public static IResult Unavailable() =>
        Make(StatusCodes.Status503ServiceUnavailable, "record-unavailable", "The record cannot be reached just now. Keep the entry and send it again; a repeat is harmless.", []);

    /// <summary>Any other status.</summary>
    public static IResult Make(int status, string type, string detail, IReadOnlyList<Refusal> refusals) => Results.Problem(
        type: TypeBase + type,
        statusCode: status,
        title: type.Replace('-', ' '),
        detail: detail,
        extensions: refusals.Count == 0 ? null : new Dictionary<string, object?>
        {
            ["errors"] = refusals.GroupBy(r => r.Field, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Select(r => r.Message).ToArray(), StringComparer.Ordinal),
            ["refusals"] = refusals,
        });
}

/// <summary>A problem document that names fields, for the API description.</summary>
/// <param name="Type">Stable type of the problem.</param>
/// <param name="Title">The same for people.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Detail">What to do.</param>
/// <param name="Errors">Messages by field, each field a JSON pointer.</param>
/// <param name="Refusals">The same with a stable reason each.</param>
public sealed record RefusalProblem(
    string Type, string Title, int Status, string Detail, IReadOnlyDictionary<string, string[]> Errors, IReadOnlyList<Refusal> Refusals);
