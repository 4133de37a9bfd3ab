using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What a wear digest tells beside the findings.</summary>
public sealed record WearNews
{
    /// <summary>Nothing beside.</summary>
    public static WearNews None { get; } = new();

    /// <summary>Docks and prices of the operator.</summary>
    public OfficeRecord Office { get; init; } = OfficeRecord.Of(FactLog.Empty(StreamName.Operator));

    /// <summary>The dock whose readers it is for; null for readers of the whole fleet.</summary>
    public string? Dock { get; init; }

    /// <summary>The day of the edition before it; null for the first.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>What was received since that edition; null where it told of its whole day, and what happened later is new.</summary>
    public IReadOnlyList<ReceivedRecord>? Received { get; init; }

    /// <summary>The boats of every dock, where the digest is of one: whether strikes cluster there is seen against the rest. Null where it is of all.</summary>
    public IReadOnlyList<BoatFinding>? Everywhere { get; init; }

    /// <summary>Props at a shop.</summary>
    public IReadOnlyList<PropLife> AtShop { get; init; } = [];

    /// <summary>Props that are here on loan.</summary>
    public IReadOnlyList<PropLife> Loaners { get; init; } = [];

    /// <summary>Props that boats want by their own trials, as the office's page of spares has them.</summary>
    public IReadOnlyList<PropWanted> PropsWanted { get; init; } = [];

    /// <summary>Names of docks and people.</summary>
    public MailNames Names { get; init; } = MailNames.None;

    /// <summary>Names of boats and engines.</summary>
    public NamedThings Things { get; init; } = NamedThings.None;

    /// <summary>Spares to hold; null where they were not reckoned.</summary>
    public SpareNeeds? Spares { get; init; }

    /// <summary>How often the fleet strikes; null where it was not reckoned.</summary>
    public StrikeRates? Strikes { get; init; }

    /// <summary>Why spares and strikes were not reckoned; null where they were.</summary>
    public string? FiguresLeftOut { get; init; }

    /// <summary>Address of the office's pages; null where none is set: then nothing is linked.</summary>
    public Uri? Pages { get; init; }

    /// <summary>Name of a dock, or its id.</summary>
    public string DockName(string dock) => Names.Docks.GetValueOrDefault(dock) ?? Office.Docks.FirstOrDefault(d => d.Dock == dock)?.Name ?? dock;

    /// <summary>The office's page of a boat; empty where no address is set.</summary>
    public string BoatLink(string boat) => Link($"office/boats/{Uri.EscapeDataString(boat)}");

    /// <summary>A page of the office; empty where no address is set.</summary>
    public string Link(string path) => Pages is null ? "" : new Uri(Pages, path).AbsoluteUri;

    /// <summary>What a thing costs on a day by the operator's own price list; null where it says nothing.</summary>
    public Money? Price(DateOnly day, PricedThing what) => Office.PriceOn(day, what)?.Money;

    /// <summary>
    /// The same of a thing that is priced by shop or by size: the one price that was set for any, else the least and the most of those
    /// set for one each. Null where nothing is set, or in several currencies, which are never compared.
    /// </summary>
    public (Money Low, Money High)? Prices(DateOnly day, PricedThing what)
    {
        if (Price(day, what) is { } any) return (any, any);
        var each = Office.Prices.Where(p => p.What == what && p.From <= day).GroupBy(p => p.Item, StringComparer.Ordinal).Select(g => g.Last().Money).OrderBy(m => m.Amount).ToList();
        return each.Select(m => m.Currency).Distinct(StringComparer.Ordinal).Count() == 1 ? (each[0], each[^1]) : null;
    }
}
