using System.Globalization;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Mountings: which prop was fitted where, from when to when, and how it wore.</summary>
internal static class MountingsApi
{
    private static readonly QueryField<string> Prop = Query.Id("prop", "Only of this prop.");
    private static readonly QueryField<bool?> Open = Query.Flag("open", "True: only props that are fitted now. False: only those that came off.");
    private static readonly Paged<MountingLine> Mountings = new("mountings", m => [m.Boat, m.Place, m.Mounting]);

    private static readonly string Example = RecordKind.Find("prop_mounted")!.Example.Entry!.Id.ToString()!;

    public static void MapMountings(this IEndpointRouteBuilder read)
    {
        read.MapGet("mountings", MountingsAsync).Lists(Mountings, Query.Boat, Prop, Open)
            .Is("mountings", "Every mounting, by boat and then in order.", "/api/mountings", "/api/mountings?boat=linnet&open=true", "/api/mountings?prop=lin-13");
        read.MapGet("mountings/{mounting:guid}", MountingAsync).Shows<MountingPage>()
            .Is("mounting", "One mounting: its sheet, its trials, and its wear, whether it has ended or not.", "/api/mountings/" + Example);
    }

    private static async Task<IResult> MountingsAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (prop, open) = (Prop.In(http), Open.In(http));
        var boats = await BoatsAsync(tenant, Query.Boat.In(http), prop, reading, ct);
        return await Mountings.WalkAsync(http, boats, async some => (await reading.HistoriesAsync(tenant, some, ct)).SelectMany(history => history.Mountings
            .Where(m => (prop is null || m.Fitted.Prop == prop) && (open is null || open == m.To is null))
            .Select(m => MountingLine.Of(history, m))));
    }

    private static async Task<IResult> MountingAsync(Guid mounting, HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var boats = await reading.BoatsOfEntryAsync(tenant, mounting, ct);
        foreach (var history in await reading.HistoriesAsync(tenant, boats, ct))
        {
            if (history.Mountings.FirstOrDefault(m => m.Original == mounting) is not { } span) continue;
            return TaggedJson.Of(new MountingPage(MountingLine.Of(history, span), span.Fitted, Assess.Mounting(history, span, await reading.PriorsAsync(tenant, ct))));
        }

        return ReadingRoutes.OrUnknown<MountingPage>(null, "mounting", mounting.ToString());
    }

    /// <summary>The boats whose mountings may be asked for.</summary>
    private static async Task<IEnumerable<string>> BoatsAsync(string tenant, string? boat, string? prop, FleetReading reading, CancellationToken ct)
    {
        if (prop is null) return boat is not null ? [boat] : (await reading.StreamsAsync(tenant, StreamName.Boat(""), ct)).Select(s => StreamName.BoatOf(s)!);
        var log = (await reading.LogsAsync(tenant, [StreamName.Prop(prop)], ct)).Values.Single();
        return Dossier.BoatsNamed(log).Where(b => boat is null || b == boat);
    }
}

/// <summary>A mounting in short.</summary>
/// <param name="Mounting">Its id: the entry that first told of it.</param>
/// <param name="Boat">The boat.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">Tag of the prop.</param>
/// <param name="FittedOn">Dock's date of fitting.</param>
/// <param name="OffOn">Dock's date on which it ended; null while the prop is fitted.</param>
public sealed record MountingLine(string Mounting, string Boat, string BoatName, Logbook.Position Position, string Prop, DateOnly FittedOn, DateOnly? OffOn)
{
    /// <summary>Its place in the order of its boat's mountings.</summary>
    internal string Place { get; private init; } = "";

    internal static MountingLine Of(BoatHistory history, MountingSpan m) =>
        new(m.Id, history.Boat, history.Registered?.Name ?? history.Boat, m.Fitted.Position, m.Fitted.Prop, m.Fitted.Entry.Date(), m.To?.Date())
        {
            Place = m.Fitted.Entry.Happened().UtcTicks.ToString("D20", CultureInfo.InvariantCulture),
        };
}

/// <summary>A mounting by itself.</summary>
/// <param name="Now">The mounting in short.</param>
/// <param name="Sheet">The mounting sheet, as last amended.</param>
/// <param name="Wear">Its trials, marks, drift, margin and band exit.</param>
public sealed record MountingPage(MountingLine Now, PropMounted Sheet, MountingFinding Wear);
