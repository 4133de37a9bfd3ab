using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Dock;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Tags;

/// <summary>Tags with a QR code for boats, engines and props, to be printed.</summary>
internal static class TagsRoutes
{
    /// <summary>Tags on one print: more is a printer's job for an afternoon.</summary>
    public const int MostTags = 600;

    public static void MapTags(this IEndpointRouteBuilder office)
    {
        office.MapGet("tags", ChooseAsync).NeedsTo(Verb.Read, Matter.Register);
        office.MapGet("tags/sheet", SheetAsync).NeedsTo(Verb.Read, Matter.Register);
    }

    private static async Task<IResult> ChooseAsync(HttpContext http, TagGathering gathering) =>
        PageAnswer.Of<TagsPage>(http, new { Scene = await gathering.SceneAsync(http), Groups = await gathering.OfAsync(http.User.OperatorOf(), http.RequestAborted), Nothing = http.Request.Query.ContainsKey("nothing") });

    private static async Task<IResult> SheetAsync(HttpContext http, TagGathering gathering, SiteAddress address)
    {
        var query = http.Request.Query;
        bool Asked(string field, string? value) => query[field].Contains(value);
        var chosen = (await gathering.OfAsync(http.User.OperatorOf(), http.RequestAborted))
            .SelectMany(g => g.Tags.Where(t => Asked("all", $"{t.Letter}/{g.Dock}") || Asked("one", t.Path)))
            .Take(MostTags).ToList();
        if (chosen.Count == 0) return Results.Redirect("/office/tags?nothing");
        return PageAnswer.Of<TagSheetPage>(http, new { Scene = await gathering.SceneAsync(http), Tags = chosen, Letter = query["paper"] == "letter", Address = address.Of(http.Request) });
    }
}

/// <summary>Gathers what can have a tag.</summary>
internal sealed class TagGathering(FleetReading reading, FleetOperators operators)
{
    public Task<Scene> SceneAsync(HttpContext http) => Scene.OfAsync(http, operators);

    /// <summary>Every boat, engine and prop by the dock where it is; those that are nowhere come last.</summary>
    public async Task<IReadOnlyList<TagGroup>> OfAsync(string tenant, CancellationToken ct)
    {
        var findings = (await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding).Where(f => f.Retired is null).ToList();
        var docks = DockPlaces.Of((await reading.OfficeAsync(tenant, ct)).Record, findings).ToDictionary(d => d.Id, d => d.Name, StringComparer.Ordinal);
        var tags = new List<(string Dock, Tag Tag)>();
        tags.AddRange(findings.Where(f => f.Registered is not null).Select(f => (f.Registered!.Dock, new Tag('b', f.Boat, f.DisplayName()))));

        var placed = findings.SelectMany(f => f.Positions.Select(p => (Dock: f.Registered?.Dock ?? "", Position: p))).ToList();
        var engineAt = placed.Where(p => p.Position.Engine is not null).GroupBy(p => p.Position.Engine!.Engine, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Dock, StringComparer.Ordinal);
        var engines = await reading.LogsAsync(tenant, await reading.StreamsAsync(tenant, StreamName.Engine(""), ct), ct);
        tags.AddRange(engines.Values.Select(log => (Id: StreamName.EngineOf(log.Id)!, Manual: log.Facts.OfType<EngineRegistered>().LastOrDefault())).Where(e => e.Manual is not null)
            .Select(e => (engineAt.GetValueOrDefault(e.Id, ""), new Tag('e', e.Id, e.Manual!.Model))));

        var propAt = placed.Where(p => p.Position.Mounting is not null).GroupBy(p => p.Position.Mounting!.Prop.Prop, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Dock, StringComparer.Ordinal);
        var props = await reading.LogsAsync(tenant, await reading.StreamsAsync(tenant, StreamName.Prop(""), ct), ct);
        tags.AddRange(props.Values.Select(log => (Id: StreamName.PropOf(log.Id)!, Facts: Effective.Of(log.Facts).Facts)).Where(p => p.Facts.OfType<PropRegistered>().Any() && !p.Facts.OfType<PropRetired>().Any())
            .Select(p => (propAt.GetValueOrDefault(p.Id) ?? p.Facts.OfType<PropStored>().LastOrDefault()?.Dock ?? "", new Tag('p', p.Id, Size(p.Facts.OfType<PropRegistered>().First())))));

        return
        [
            .. tags.GroupBy(t => t.Dock, StringComparer.Ordinal).OrderBy(g => g.Key.Length == 0).ThenBy(g => docks.GetValueOrDefault(g.Key, g.Key), StringComparer.OrdinalIgnoreCase)
                .Select(g => new TagGroup(g.Key, g.Key.Length == 0 ? null : docks.GetValueOrDefault(g.Key, g.Key), [.. g.Select(t => t.Tag).OrderBy(t => t.Letter).ThenBy(t => t.Name, StringComparer.OrdinalIgnoreCase).ThenBy(t => t.Id, StringComparer.Ordinal)])),
        ];
    }

    private static string Size(PropRegistered prop) => Cards.Size(prop.DiameterInches, prop.PitchInches)!;
}

/// <summary>What one dock has.</summary>
/// <param name="Dock">The dock; empty for what is at none.</param>
/// <param name="Name">Its name; null for what is at none.</param>
/// <param name="Tags">What can have a tag.</param>
public sealed record TagGroup(string Dock, string? Name, IReadOnlyList<Tag> Tags);

/// <summary>A tag.</summary>
/// <param name="Letter">b for a boat, e for an engine, p for a prop: the beginning of its address at the dock.</param>
/// <param name="Id">Id of the thing.</param>
/// <param name="Name">Its name, model or size.</param>
public sealed record Tag(char Letter, string Id, string Name)
{
    /// <summary>Its address below the dock's.</summary>
    public string Path => $"{Letter}/{Id}";
}
