using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Statistics.Rates;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>How often the fleet strikes, by dock, by boat and by bottom. The exposure is engine hours, those of twins added up.</summary>
/// <param name="Fleet">All of it.</param>
/// <param name="ByDock">By the dock that was the boat's home when it struck; hours are split where a boat moved.</param>
/// <param name="ByBoat">By boat.</param>
/// <param name="ByBottom">By the bottom under that home; <c>unknown</c> where nobody told it.</param>
/// <param name="Level">Level of all limits [1].</param>
/// <param name="Sentence">The figure in words.</param>
public sealed record StrikeRates(
    StrikeRate Fleet, IReadOnlyList<StrikeRate> ByDock, IReadOnlyList<StrikeRate> ByBoat, IReadOnlyList<StrikeRate> ByBottom, double Level, string Sentence)
{
    /// <summary>Word of a group whose name nobody told.</summary>
    internal const string NotTold = "unknown";

    /// <summary>Counts the strikes of a fleet over the hours that its engines ran.</summary>
    public static StrikeRates Of(FleetRecord fleet)
    {
        var pieces = fleet.Boats.SelectMany(b => StrikePiece.Of(b, HomeSpan.Of(b, fleet.Office))).Where(p => p.EngineHours > 0 || p.Strikes + p.Outside > 0).ToList();
        var docks = fleet.Office.Docks.ToDictionary(d => d.Dock, d => d.Name, StringComparer.Ordinal);
        var boats = fleet.Boats.ToDictionary(b => b.Boat, b => b.Registered?.Name ?? b.Boat, StringComparer.Ordinal);
        var all = StrikeRate.Of("fleet", "fleet", pieces);
        return new StrikeRates(
            all,
            StrikeRate.Groups(pieces, p => p.Home.Dock ?? NotTold, d => d == NotTold ? "dock not told" : docks.GetValueOrDefault(d, d)),
            StrikeRate.Groups(pieces, p => p.Boat, b => boats[b]),
            StrikeRate.Groups(pieces, p => Words.Of(p.Home.Bottom), b => b == NotTold ? "bottom not told" : b),
            Limits.Level,
            $"The fleet: {all.Sentence}");
    }
}

/// <summary>Strikes of one group over its engine hours.</summary>
/// <param name="Group">Id or word of the group.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="EngineHours">Engine hours known to have run there [h].</param>
/// <param name="Strikes">Strikes within those hours, "no mark" among them.</param>
/// <param name="LeftMark">Those of them that left a mark.</param>
/// <param name="OutsideHours">Strikes told from a time whose hours are not known, such as before the first reading of the meter: in no rate.</param>
/// <param name="All">Rate of all strikes; null without hours.</param>
/// <param name="Marked">Rate of those that left a mark; null without hours. It depends less on who reports what.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record StrikeRate(
    string Group, string Name, double EngineHours, int Strikes, int LeftMark, int OutsideHours, StrikeLimits? All, StrikeLimits? Marked, string Sentence)
{
    private const double PerHours = 1000; // [h]
    private const double FewestHours = 1e-3; // [h]; less is the rounding of a clock

    internal static IReadOnlyList<StrikeRate> Groups(IEnumerable<StrikePiece> pieces, Func<StrikePiece, string> group, Func<string, string> name)
    {
        var groups = pieces.GroupBy(group).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Of(g.Key, name(g.Key), [.. g])).ToList();
        var all = RateShrinkage.Of([.. groups.Select(g => g.Tally(g.Strikes))], Limits.Level)?.Units;
        var marked = RateShrinkage.Of([.. groups.Select(g => g.Tally(g.LeftMark))], Limits.Level)?.Units;
        return [.. groups.Select((g, i) => g with { All = g.All?.With(all?[i]), Marked = g.Marked?.With(marked?[i]) })];
    }

    internal static StrikeRate Of(string group, string name, IReadOnlyList<StrikePiece> pieces)
    {
        var hours = pieces.Sum(p => p.EngineHours);
        var known = hours >= FewestHours;
        var (strikes, marks) = known ? (pieces.Sum(p => p.Strikes), pieces.Sum(p => p.Marks)) : (0, 0);
        var outside = pieces.Sum(p => p.Outside + (known ? 0 : p.Strikes));
        var rate = new StrikeRate(group, name, known ? hours : 0, strikes, marks, outside, null, null, "");
        rate = rate with { All = StrikeLimits.Of(rate.Tally(strikes)), Marked = StrikeLimits.Of(rate.Tally(marks)) };
        return rate with { Sentence = rate.InWords() };
    }

    private Tally Tally(int count) => new(count, EngineHours / PerHours);

    private string InWords()
    {
        var beside = OutsideHours == 0 ? "" : $" {OutsideHours} more {(OutsideHours == 1 ? "was" : "were")} told from a time without known hours.";
        if (All is not { } all || Marked is not { } marked) return $"no engine hours are known, so no rate is told.{beside}";
        var hours = $"{EngineHours:0} engine hours";
        var counted = Strikes == 0 ? $"no strike in {hours}; up to {all.Exact.High:0.0} per 1,000 h would still be no surprise"
            : $"{Strikes} {(Strikes == 1 ? "strike" : "strikes")} in {hours}, {LeftMark} with a mark: {all.Exact.Value:0.0} per 1,000 h ({all.Exact.Low:0.0} to {all.Exact.High:0.0}), with a mark {marked.Exact.Value:0.0}";
        return $"{counted}.{beside}";
    }
}

/// <summary>A rate of strikes, per 1,000 engine hours.</summary>
/// <param name="Exact">Counted over exposed, with the exact limits of Garwood.</param>
/// <param name="Shrunk">The same drawn towards the other groups as far as its own record is short; null for the whole fleet.</param>
/// <param name="OwnShare">How much of the shrunk rate is its own record [1].</param>
public sealed record StrikeLimits(Limits Exact, Limits? Shrunk = null, double? OwnShare = null)
{
    internal static StrikeLimits? Of(Tally tally) => Limits.Of(PoissonLimits.Rate(tally, Limits.Level)) is { } exact ? new StrikeLimits(exact) : null;

    internal StrikeLimits With(ShrunkRate? shrunk) => shrunk is null ? this : this with { Shrunk = Limits.Of(shrunk.Rate), OwnShare = shrunk.OwnShare };
}

/// <summary>Strikes and hours of one boat at one home.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Home">The home.</param>
/// <param name="EngineHours">Known hours of all its engines there [h].</param>
/// <param name="Strikes">Strikes within them.</param>
/// <param name="Marks">Those that left a mark.</param>
/// <param name="Outside">Strikes told from a time without known hours.</param>
internal sealed record StrikePiece(string Boat, HomeSpan Home, double EngineHours, int Strikes, int Marks, int Outside)
{
    public static IEnumerable<StrikePiece> Of(BoatHistory boat, IReadOnlyList<HomeSpan> homes)
    {
        var runs = boat.Engines
            .Select(e => (e.Position, Run: EngineRun.Of(boat.Meters.GetValueOrDefault(e.Engine), boat.Order, e.From, e.To)))
            .Where(e => e.Run is not null).ToList();
        foreach (var home in homes)
        {
            var here = boat.Strikes.Where(s => home.Holds(boat.Order, s.Entry)).ToLookup(s => runs.Any(r => r.Position == s.Position && r.Run!.Holds(s.Entry)));
            yield return new StrikePiece(
                boat.Boat, home, runs.Sum(r => r.Run!.In(home)), here[true].Count(), here[true].Count(s => s.Severity != StrikeSeverity.NoMark), here[false].Count());
        }
    }
}
