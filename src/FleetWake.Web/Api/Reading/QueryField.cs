using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>
/// A parameter of a query: its name, what it means, and how it is read. A route declares its parameters as these; the
/// strict check, the API description and the docs follow from that.
/// </summary>
/// <param name="Name">Name in the query.</param>
/// <param name="Meaning">What it does, in one sentence.</param>
/// <param name="Schema">Its form, for the API description.</param>
public abstract record QueryField(string Name, string Meaning, OpenApiSchema Schema)
{
    /// <summary>The route cannot answer without it.</summary>
    public bool Needed { get; init; }

    /// <summary>Why a text cannot be read; null when it can.</summary>
    public abstract Refusal? Refuse(string text);
}

/// <summary>A parameter that is read as a value.</summary>
/// <typeparam name="T">A type with null, which stands for a parameter that is not given.</typeparam>
/// <param name="Name">Name in the query.</param>
/// <param name="Meaning">What it does.</param>
/// <param name="Schema">Its form.</param>
/// <param name="Read">Reads a text: the value, or why it is none.</param>
public sealed record QueryField<T>(string Name, string Meaning, OpenApiSchema Schema, Func<string, (T? Value, Refusal? Wrong)> Read)
    : QueryField(Name, Meaning, Schema)
{
    /// <inheritdoc/>
    public override Refusal? Refuse(string text) => Read(text).Wrong;

    /// <summary>The value in a request that <see cref="StrictQuery"/> let through; null when it is not given.</summary>
    public T? In(HttpContext http) =>
        http.GetEndpoint()?.Metadata.GetOrderedMetadata<QueryField>().Contains(this) != true
            ? throw new InvalidOperationException($"The route reads \"{Name}\" without declaring it.")
            : http.Request.Query[Name] is [{ Length: > 0 } text] ? Read(text).Value : default;
}
