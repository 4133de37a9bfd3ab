using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;
using FleetWake.Web.Api.Reading;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Spares;

/// <summary>What lies in store, and what should.</summary>
/// <param name="Asked">Lead time, service level and season as asked for.</param>
/// <param name="Wrong">What was asked for and cannot be, by field; the usual stands instead.</param>
/// <param name="Needs">What the fleet should hold; null when it is too large to reckon on request.</param>
/// <param name="Boats">How many boats there are.</param>
/// <param name="Lying">Spares that lie at a dock, by size.</param>
/// <param name="Parts">Small parts, by id.</param>
public sealed record SparesView(
    SpareQuestion Asked, IReadOnlyDictionary<string, string> Wrong, SpareNeeds? Needs, int Boats, IReadOnlyList<SpareLying> Lying, IReadOnlyList<PartStock> Parts)
{
    /// <summary>Boats that want another prop by their own trials, those outside their band first.</summary>
    public IReadOnlyList<PropWanted> Wanted { get; init; } = [];

    /// <summary>Docks that a spare or a part lies at, or was counted at.</summary>
    public IReadOnlyList<string> Docks =>
        [.. Lying.SelectMany(l => l.ByDock.Keys).Where(d => d.Length > 0).Concat(Parts.SelectMany(p => p.Docks.Select(d => d.Dock))).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    internal static async Task<SparesView> OfAsync(HttpRequest request, FleetReading reading, string tenant, CancellationToken ct)
    {
        var wrong = new Dictionary<string, string>(StringComparer.Ordinal);
        var usual = new SpareQuestion();
        var asked = new SpareQuestion(
            Read(request, wrong, "days", 1, 730, 1) is { } days ? Math.Round(days) : usual.LeadTimeDays,
            Read(request, wrong, "level", 50, 99.9, 1) is { } level ? level / 100 : usual.ServiceLevel,
            Read(request, wrong, "season", 0, 10, 1) ?? usual.SeasonFactor);
        var (fleet, boats) = await FleetGathering.ReadAsync(reading, tenant, ct);
        var parts = fleet?.Parts.Select(p => p.Stock).ToList()
            ?? [.. await reading.PartsAsync(tenant, [.. (await reading.StreamsAsync(tenant, StreamName.Part(""), ct)).Select(s => StreamName.PartOf(s)!)], ct)];
        var lying = fleet is null ? [] : SpareLying.Of(fleet);
        return new SparesView(asked, wrong, fleet is null ? null : SpareNeeds.Of(fleet, asked), boats, lying, parts)
        {
            Wanted = PropWanted.Of((await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding), lying),
        };
    }

    private static double? Read(HttpRequest request, Dictionary<string, string> wrong, string name, double least, double most, double unit)
    {
        if (request.Query[name].ToString().Trim() is not { Length: > 0 } text) return null;
        if (double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most) return number / unit;
        wrong[name] = string.Create(CultureInfo.InvariantCulture, $"{least:0.#} – {most:0.#}");
        return null;
    }
}
