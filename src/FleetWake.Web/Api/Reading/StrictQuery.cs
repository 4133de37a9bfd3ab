using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Api.Reading;

/// <summary>
/// Refuses a query that a route would only half understand: a misspelt filter that is passed over answers another
/// question than the one that was asked. Every wrong parameter is named at once.
/// </summary>
public static class StrictQuery
{
    /// <summary>Stands before every reading route.</summary>
    public static ValueTask<object?> CheckAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var fields = context.HttpContext.GetEndpoint()!.Metadata.GetOrderedMetadata<QueryField>();
        var refusals = context.HttpContext.Request.Query
            .SelectMany(given => given.Value.Select(value => (given.Key, value, given.Value.Count)))
            .DistinctBy(given => given.Key)
            .Select(given => Refuse(fields, given.Key, given.value ?? "", given.Count))
            .Concat(fields.Where(f => f.Needed && !context.HttpContext.Request.Query.ContainsKey(f.Name)).Select(f => new Refusal(f.Name, "missing", $"missing: give {f.Name}")))
            .OfType<Refusal>()
            .ToList();
        return refusals.Count == 0
            ? next(context)
            : ValueTask.FromResult<object?>(Problems.Query(refusals));
    }

    private static Refusal? Refuse(IReadOnlyList<QueryField> fields, string name, string text, int times)
    {
        if (fields.FirstOrDefault(f => f.Name == name) is not { } field)
            return new Refusal(name, "unknown_parameter", $"\"{name}\" is not a parameter here: {(fields.Count == 0 ? "there are none" : $"those known are {string.Join(", ", fields.Select(f => f.Name))}")}");
        if (times > 1) return new Refusal(name, "given_twice", $"give {name} once");
        return text.Length == 0 ? new Refusal(name, "empty", $"give {name} a value, or leave it out") : field.Refuse(text);
    }
}
