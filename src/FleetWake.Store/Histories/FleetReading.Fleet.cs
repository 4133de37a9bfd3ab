using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Store.Histories;

/// <content>A whole fleet for its figures. Every history is told anew each time, which costs some milliseconds a boat, so there is a limit.</content>
public sealed partial class FleetReading
{
    /// <summary>Most boats that figures are made of on the way: a larger fleet is reckoned from its sheets.</summary>
    public const int MostBoatsForFigures = 300;

    private const int AtATime = 32;

    /// <summary>An operator's fleet, and how many boats it has; no fleet when those are too many.</summary>
    public async Task<(FleetRecord? Fleet, int Boats)> FleetAsync(string @operator, CancellationToken ct)
    {
        var boats = (await StreamsAsync(@operator, StreamName.Boat(""), ct)).Select(s => StreamName.BoatOf(s)!).ToList();
        if (boats.Count > MostBoatsForFigures) return (null, boats.Count);
        var histories = new List<BoatHistory>();
        foreach (var some in boats.Chunk(AtATime)) histories.AddRange(await HistoriesAsync(@operator, some, ct));
        var streams = (await StreamsAsync(@operator, StreamName.Prop(""), ct)).Concat(await StreamsAsync(@operator, StreamName.Part(""), ct)).Append(StreamName.Operator);
        var logs = (await LogsAsync(@operator, streams, ct)).Values.ToList();

        // A part's use may be corrected on the log of the boat that it was used on.
        var beside = logs.Where(l => StreamName.PartOf(l.Id) is not null).SelectMany(PartStock.BoatsNamed).Distinct(StringComparer.Ordinal).Select(StreamName.Boat);
        logs.AddRange((await LogsAsync(@operator, beside, ct)).Values);
        var fleet = FleetRecord.Of(histories, logs);
        ct.ThrowIfCancellationRequested();
        return (fleet, boats.Count);
    }

    /// <summary>Props that are at a shop now, longest there first.</summary>
    public async Task<IReadOnlyList<PropLife>> PropsAtShopAsync(string @operator, CancellationToken ct)
    {
        var sent = (await StreamsWithAsync<PropSentToShop>(@operator, ct)).Select(StreamName.PropOf).OfType<string>().ToList();
        return [.. (await PropLivesAsync(@operator, sent, ct)).Where(l => l.Place.Standing == PropStanding.AtShop).OrderBy(l => l.Place.Since)];
    }

    /// <summary>Props of somebody else's that are here on loan, the one that goes back soonest first.</summary>
    public async Task<IReadOnlyList<PropLife>> LoanersAsync(string @operator, CancellationToken ct)
    {
        var lent = (await StreamsWithAsync<LoanerTaken>(@operator, ct)).Select(StreamName.PropOf).OfType<string>().ToList();
        return
        [
            .. (await PropLivesAsync(@operator, lent, ct)).Where(l => l.Loan is not null && l.Place.Standing is not (PropStanding.GivenBack or PropStanding.Retired))
                .OrderBy(l => l.Loan!.DueBackOn ?? DateOnly.MaxValue).ThenBy(l => l.Prop, StringComparer.Ordinal),
        ];
    }
}
