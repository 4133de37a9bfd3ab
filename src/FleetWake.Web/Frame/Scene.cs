using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Quarantine;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Frame;

/// <summary>Who looks at a page, and what the page's frame needs of that.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Person">Id of the person.</param>
/// <param name="PersonName">The person's name.</param>
/// <param name="Role">The person's role.</param>
/// <param name="Path">Path of the page.</param>
public sealed record Scene(OperatorCard Operator, string Person, string PersonName, Role Role, string Path)
{
    private static readonly (Place Place, Matter Matter)[] Everywhere =
    [
        (new("/office", "nav.fleet"), Matter.Fleet),
        (new("/office/due", "nav.due"), Matter.Fleet),
        (new("/office/questions", "nav.questions"), Matter.Questions),
        (new("/office/quarantine", "nav.quarantine"), Matter.Quarantine),
        (new("/office/props", "nav.props"), Matter.Stock),
        (new("/office/spares", "nav.spares"), Matter.Stock),
        (new("/office/shop", "nav.shop"), Matter.Stock),
        (new("/office/claims", "nav.claims"), Matter.Money),
        (new("/office/mail", "nav.mail"), Matter.Reports),
        (new("/office/rules", "nav.rules"), Matter.Rules),
        (new("/office/templates", "nav.templates"), Matter.Reports),
        (new("/office/analyst", "nav.analyst"), Matter.Export),
        (new("/office/import", "nav.import"), Matter.Import),
        (new("/office/devices", "nav.devices"), Matter.Devices),
        (new("/office/tags", "nav.tags"), Matter.Register),
        (new("/office/photos", "nav.photos"), Matter.Devices),
        (new("/office/people", "nav.people"), Matter.People),
    ];

    /// <summary>Dates, numbers and units as this person reads them.</summary>
    public Measures Measures { get; init; } = Measures.Usual;

    /// <summary>Where this person can go.</summary>
    public IReadOnlyList<Place> Places => [.. Everywhere.Where(p => Permissions.Allow(Role, Verb.Read, p.Matter)).Select(p => p.Place with { Waiting = Waiting.GetValueOrDefault(p.Place.Path) })];

    /// <summary>How much waits for somebody, by the place where it does.</summary>
    public IReadOnlyDictionary<string, int> Waiting { get; init; } = new Dictionary<string, int>();

    /// <summary>The scene of a request of somebody who is signed in.</summary>
    public static async Task<Scene> OfAsync(HttpContext http, FleetOperators operators)
    {
        var card = await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted);
        return new Scene(card!, http.User.PersonOf()!, http.User.FindFirst(Claims.Name)!.Value, http.User.RoleOf()!.Value, http.Request.Path) { Measures = http.Measures(), Waiting = await WaitingAsync(http) };
    }

    private static async Task<IReadOnlyDictionary<string, int>> WaitingAsync(HttpContext http)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var waiting = new Dictionary<string, int>(StringComparer.Ordinal);
        if (http.User.May(Verb.Read, Matter.Questions))
            waiting["/office/questions"] = (await http.RequestServices.GetRequiredService<FleetReading>().FindingsAsync(tenant, ct)).Where(f => f.Finding.Contradictions.Count > 0)
                .SelectMany(f => f.Finding.Contradictions).DistinctBy(c => $"{c.Kind} {string.Join(' ', c.Entries.Order())}").Count();
        if (http.User.May(Verb.Read, Matter.Quarantine))
            waiting["/office/quarantine"] = await http.RequestServices.GetRequiredService<QuarantineBook>().WaitingAsync(tenant, ct);
        return waiting;
    }
}
