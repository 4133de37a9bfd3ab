using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;
using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace FleetWake.Web.Api.Reading;

/// <summary>
/// An answer with a strong ETag: the hash of its bytes. Who has it already is told so and gets no body. Hashing the
/// answer costs less than keeping a version for each, and cannot be wrong when a policy or a calendar day changes it.
/// </summary>
public sealed class TaggedJson : IResult
{
    private readonly byte[] body;
    private readonly byte[] tagged;

    private TaggedJson(byte[] body, byte[] tagged) => (this.body, this.tagged) = (body, tagged);

    /// <summary>The answer with a value.</summary>
    public static TaggedJson Of<T>(T value)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(value, LogbookJson.Options);
        return new(body, body);
    }

    /// <summary>The answer with a value that says when it was made, and so is never twice the same: the tag is of what of it counts.</summary>
    public static TaggedJson Of<T>(T value, T counting) =>
        new(JsonSerializer.SerializeToUtf8Bytes(value, LogbookJson.Options), JsonSerializer.SerializeToUtf8Bytes(counting, LogbookJson.Options));

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var tag = new EntityTagHeaderValue($"\"{Base64Url.EncodeToString(SHA256.HashData(tagged).AsSpan(0, 18))}\"");
        var headers = httpContext.Response.GetTypedHeaders();
        headers.ETag = tag;
        // The operator's own; a store in between may keep it only to ask whether it still holds.
        headers.CacheControl = new CacheControlHeaderValue { Private = true, NoCache = true };
        if (httpContext.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Equals(EntityTagHeaderValue.Any) || known.Compare(tag, useStrongComparison: false)))
        {
            httpContext.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        httpContext.Response.ContentType = "application/json; charset=utf-8";
        httpContext.Response.ContentLength = body.Length;
        await httpContext.Response.Body.WriteAsync(body, httpContext.RequestAborted);
    }
}
