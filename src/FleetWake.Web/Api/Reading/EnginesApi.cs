using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Engines: what their manuals say, where they hang, what their meters read.</summary>
internal static class EnginesApi
{
    private static readonly QueryField<string> Beginning = Query.Beginning("Only engines whose id begins so.");
    private static readonly QueryField<string> Dock = Query.Id("dock", "Only engines that hang on a boat of this dock.");
    private static readonly Paged<string> Engines = new("engines", id => [id]);

    public static void MapEngines(this IEndpointRouteBuilder read)
    {
        read.MapGet("engines", EnginesAsync).Takes(Dock, Beginning, Engines.Limit, Engines.After).Produces<Page<EngineLine>>()
            .Is("engines", "Every engine, by id, with where it hangs.", "/api/engines", "/api/engines?dock=north-pier");
        read.MapGet("engines/{engine}", EngineAsync).Shows<EnginePage>()
            .Is("engine", "One engine: its manual, where it hung, and its hours.", "/api/engines/engine-7");
    }

    private static async Task<IResult> EnginesAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (dock, beginning) = (Dock.In(http), Beginning.In(http));
        var places = Places(await reading.FindingsAsync(tenant, ct));
        var ids = (await reading.StreamsAsync(tenant, StreamName.Engine(""), ct)).Select(s => StreamName.EngineOf(s)!);
        var page = Engines.Page(http, ids
            .Where(id => beginning is null || id.StartsWith(beginning, StringComparison.OrdinalIgnoreCase))
            .Where(id => dock is null || places.GetValueOrDefault(id)?.Boat.Registered?.Dock == dock));

        // Only the page's own logs are read.
        var logs = await reading.LogsAsync(tenant, page.Items.Select(StreamName.Engine), ct);
        return TaggedJson.Of(page.With(id => Line(id, logs[StreamName.Engine(id)], places.GetValueOrDefault(id))));
    }

    private static async Task<IResult> EngineAsync(string engine, HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var log = (await reading.LogsAsync(tenant, [StreamName.Engine(engine)], ct)).Values.Single();
        if (log.Facts.Count == 0) return ReadingRoutes.OrUnknown<EnginePage>(null, "engine", engine);
        var boats = Logbook.Boats.Dossier.BoatsNamed(log).ToList();
        var places = Places(await reading.FindingsAsync(tenant, boats, ct));

        // The history of any one boat it was on tells of all the others.
        var told = boats.Count == 0 ? null : (await reading.HistoriesAsync(tenant, boats[..1], ct))[0];
        var meter = told?.Meters.GetValueOrDefault(engine);
        return TaggedJson.Of(new EnginePage(
            Line(engine, log, places.GetValueOrDefault(engine)),
            [.. (told?.Engines ?? []).Concat(told?.Elsewhere.SelectMany(e => e.Engines) ?? [])
                .Where(s => s.Engine == engine).OrderBy(s => s.From, EntryOrder.Instance)
                .Select(s => new EngineStay(s.Boat, s.Position, s.From.Date(), s.To?.Date()))],
            [.. (meter?.Readings ?? []).Select(r => new MeterReading(r.Entry.Id, r.Entry.Date(), r.Hours, true))
                .Concat((meter?.SetAside ?? []).Select(r => new MeterReading(r.Entry.Id, r.Entry.Date(), r.Hours, false)))
                .OrderBy(r => r.On).ThenBy(r => r.Hours)]));
    }

    private static EngineLine Line(string id, FactLog log, Place? place)
    {
        var manual = Effective.Of(log.Facts).Facts.OfType<EngineRegistered>().FirstOrDefault();
        return new EngineLine(
            id, manual?.Model, manual?.BandLowRpm, manual?.BandHighRpm, manual?.GearRatio, manual?.NutTorque, manual?.NutTorqueUnit, manual?.TachometerStepRpm,
            place?.Boat.Boat, place?.Position.Position, place?.Position.EngineHours);
    }

    private static Dictionary<string, Place> Places(IEnumerable<Store.Findings.StoredFinding> findings)
    {
        var places = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var finding in findings.Select(f => f.Finding))
        {
            foreach (var position in finding.Positions.Where(p => p.Engine is not null)) places[position.Engine!.Engine] = new Place(finding, position);
        }

        return places;
    }

    private sealed record Place(BoatFinding Boat, PositionFinding Position);
}

/// <summary>An engine in short. What its manual says is null while it is not registered.</summary>
/// <param name="Engine">Its id.</param>
/// <param name="Model">Model name.</param>
/// <param name="BandLowRpm">Bottom of the rated band [RPM].</param>
/// <param name="BandHighRpm">Top of the rated band [RPM].</param>
/// <param name="GearRatio">Engine turns per prop turn.</param>
/// <param name="NutTorque">Nut torque, in its unit.</param>
/// <param name="NutTorqueUnit">Unit of the nut torque.</param>
/// <param name="TachometerStepRpm">Smallest step of its tachometer [RPM].</param>
/// <param name="Boat">The boat it hangs on; null when it hangs on none.</param>
/// <param name="Position">The position there.</param>
/// <param name="Hours">Last credible hour-meter reading [h].</param>
public sealed record EngineLine(
    string Engine, string? Model, double? BandLowRpm, double? BandHighRpm, double? GearRatio, double? NutTorque, TorqueUnit? NutTorqueUnit,
    double? TachometerStepRpm, string? Boat, Logbook.Position? Position, double? Hours);

/// <summary>An engine by itself.</summary>
/// <param name="Now">The engine in short.</param>
/// <param name="Stays">Where it hung, in order.</param>
/// <param name="Meter">Its hour-meter readings by day, those that cannot be believed included.</param>
public sealed record EnginePage(EngineLine Now, IReadOnlyList<EngineStay> Stays, IReadOnlyList<MeterReading> Meter);

/// <summary>A time that an engine hung at a position.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="From">Dock's date of hanging.</param>
/// <param name="To">Dock's date of leaving; null while it hangs there.</param>
public sealed record EngineStay(string Boat, Logbook.Position Position, DateOnly From, DateOnly? To);

/// <summary>A reading of an hour meter.</summary>
/// <param name="Entry">The entry it came with.</param>
/// <param name="On">Dock's date.</param>
/// <param name="Hours">What the meter showed [h].</param>
/// <param name="Believed">False when it fits no chain that hours can run in; somebody is asked.</param>
public sealed record MeterReading(Guid Entry, DateOnly On, double Hours, bool Believed);
