using System.Buffers.Text;
using System.Text.Json;
using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>
/// A list in pages. An item's key is its place in the order, and a cursor is the key of the last item shown: what is
/// inserted or goes away meanwhile neither repeats an item nor leaves one out.
/// </summary>
/// <typeparam name="T">What it lists.</typeparam>
public sealed class Paged<T>
{
    /// <summary>Items on a page unless asked otherwise.</summary>
    public const int Usual = 50;

    /// <summary>Items on a page at the most.</summary>
    public const int Most = 200;

    private const int AtATime = 16;
    private const int MostAtOnce = 16 * AtATime;

    private readonly string name;
    private readonly Func<T, string[]> key;

    /// <summary>A list by its name, which its cursors carry, and the key of an item: parts that are compared in turn, ordinally.</summary>
    public Paged(string name, Func<T, string[]> key)
    {
        (this.name, this.key) = (name, key);
        Limit = Query.Whole("limit", "Items on a page.", 1, Most, Usual);
        After = new QueryField<string[]>("after", "The \"next\" of the page before.", new OpenApiSchema { Type = JsonSchemaType.String }, text =>
            Decode(text) is { } place ? (place, null) : (null, new Refusal("after", "no_cursor", "give the \"next\" of a page of this list as it came, or leave it out to begin at the start")));
    }

    /// <summary>The parameter for the length of a page.</summary>
    public QueryField<int?> Limit { get; }

    /// <summary>The parameter for the cursor.</summary>
    public QueryField<string[]> After { get; }

    /// <summary>The answer with the page that a request asks for.</summary>
    public IResult Answer(HttpContext http, IEnumerable<T> items) => TaggedJson.Of(Page(http, items));

    /// <summary>The page that a request asks for, out of items in any order. Items up to the cursor may be left out.</summary>
    public Page<T> Page(HttpContext http, IEnumerable<T> items)
    {
        var after = After.In(http);
        var limit = Limit.In(http) ?? Usual;
        var rest = items.Select(item => (Item: item, Key: key(item)))
            .Where(i => after is null || Compare(i.Key, after) > 0)
            .OrderBy(i => i.Key, Comparer<string[]>.Create(Compare))
            .Take(limit + 1)
            .ToList();
        var shown = rest.Take(limit).ToList();
        return new Page<T>([.. shown.Select(i => i.Item)], rest.Count > limit ? Encode(shown[^1].Key) : null);
    }

    /// <summary>
    /// The answer for a list whose items are told from logs: walks the things it is made of, some at a time, only as far
    /// as the page needs. The first part of an item's key is the id of its thing. A filter that matches little must not walk
    /// the whole fleet in one request: after some hundred things the page ends where it is, short or empty.
    /// </summary>
    /// <param name="http">The request.</param>
    /// <param name="ids">Ids of the things, in any order.</param>
    /// <param name="tell">The items of some of them.</param>
    public async Task<IResult> WalkAsync(HttpContext http, IEnumerable<string> ids, Func<string[], Task<IEnumerable<T>>> tell)
    {
        var after = After.In(http);
        var gathered = new List<T>();
        var rest = ids.Where(id => string.CompareOrdinal(id, after?[0]) >= 0).Order(StringComparer.Ordinal).ToList();
        foreach (var some in rest.Take(MostAtOnce).Chunk(AtATime))
        {
            gathered.AddRange((await tell(some)).Where(item => after is null || Compare(key(item), after) > 0));

            // One more than a page tells whether another follows.
            if (gathered.Count > (Limit.In(http) ?? Usual)) break;
        }

        var page = Page(http, gathered);
        return TaggedJson.Of(page.Next is null && rest.Count > MostAtOnce ? page with { Next = Encode([Behind(rest[MostAtOnce - 1])]) } : page);
    }

    /// <summary>The place behind every item of a thing and before any other thing.</summary>
    private static string Behind(string id) => id + '\0';

    private static int Compare(string[] x, string[] y)
    {
        for (var i = 0; i < Math.Min(x.Length, y.Length); i++)
        {
            if (string.CompareOrdinal(x[i], y[i]) is not 0 and var parted) return parted;
        }

        return x.Length - y.Length;
    }

    private string Encode(string[] place) => Base64Url.EncodeToString(JsonSerializer.SerializeToUtf8Bytes((string[])[name, .. place]));

    private string[]? Decode(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<string[]>(Base64Url.DecodeFromChars(text)) is [var list, .. { Length: > 0 } place] && list == name && place.All(p => p is not null) ? place : null;
        }
        catch (Exception e) when (e is FormatException or JsonException)
        {
            return null;
        }
    }
}
