using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Statistics.Life;

namespace FleetWake.Figures;

/// <summary>The figures of a fleet in words and plain tables.</summary>
internal static class FiguresText
{
    private const string None = "-";

    public static IEnumerable<string> Of(FleetFigures figures) =>
    [
        .. Life("HOW LONG PROPS LAST, until another is needed", figures.UsedUp), "",
        .. Life("HOW THEY WEAR, strikes left aside", figures.Worn), "",
        .. Costs(figures.Costs), "",
        .. Strikes(figures.Strikes), "",
        .. Spares(figures.Spares), "",
        $"Limits hold the truth {100 * Limits.Level:0} times in 100. A decision aid: the owner's manual, local rules and a licensed technician win.",
    ];

    private static IEnumerable<string> Life(string head, PropLives lives)
    {
        yield return head;
        yield return lives.Sentence;
        if (lives.TakenAsNew > 0) yield return $"{lives.TakenAsNew} of those followed are taken as new: their first mounting is on record, and nobody told their state.";
        if (lives.Props == 0) yield break;
        int[] ages = [.. lives.ByMaterial.Concat(lives.ByWater).SelectMany(g => g.Alive).Select(a => (int)a.EngineHours).Distinct().Order().Take(5)];
        List<string[]> rows =
        [
            ["group", "props", "ended", "hours", .. ages.Select(a => $"outlive {a} h"), "half last", "Weibull shape"],
            .. lives.ByMaterial.Concat(lives.ByWater).Select(g => (string[])
            [
                g.Group, $"{g.Props}", $"{g.Ended}", $"{g.EngineHours:0}",
                .. ages.Select(a => g.Alive.FirstOrDefault(s => s.EngineHours == a) is { } alive ? Percent(alive.Share) : None),
                g.MedianHours is { } median ? Hours(median) : "too few", g.Weibull is { } w ? Range(w.Shape, "0.0") : None,
            ]),
        ];
        foreach (var line in TextTable.Of(rows)) yield return line;
        foreach (var test in new[] { lives.Materials, lives.Waters, lives.MaterialsWithinWaters }.OfType<LifeComparison>()) yield return test.Sentence;
    }

    private static IEnumerable<string> Costs(WearCost costs) =>
        ["WHAT 100 ENGINE HOURS COST", costs.Sentence, .. costs.ByMaterial.Select(m => m.Sentence)];

    private static IEnumerable<string> Strikes(StrikeRates strikes)
    {
        yield return "HOW OFTEN THE FLEET STRIKES, per 1,000 engine hours";
        yield return strikes.Sentence;
        if (strikes.Fleet.All is null) yield break;
        List<string[]> rows =
        [
            ["where", "hours", "strikes", "with a mark", "all", "with a mark", "with the fleet in mind"],
            .. strikes.ByDock.Concat(strikes.ByBottom).Concat(strikes.ByBoat.OrderByDescending(b => b.Marked?.Shrunk?.Value).ThenBy(b => b.Group, StringComparer.Ordinal).Take(10))
                .Select(r => (string[])
                [
                    r.Name, $"{r.EngineHours:0}", $"{r.Strikes}", $"{r.LeftMark}", Rate(r.All?.Exact), Rate(r.Marked?.Exact), Rate(r.Marked?.Shrunk),
                ]),
        ];
        foreach (var line in TextTable.Of(rows)) yield return line;
        if (strikes.ByBoat.Count > 10) yield return $"Of {strikes.ByBoat.Count} boats the ten with the highest rates are shown; --json has all.";
    }

    private static IEnumerable<string> Spares(SpareNeeds spares)
    {
        yield return $"WHAT SPARES TO HOLD, {spares.Question.LeadTimeDays:0.#} days ahead, enough {100 * spares.Question.ServiceLevel:0.#} times in 100{(spares.Question.SeasonFactor == 1 ? "" : $", season {spares.Question.SeasonFactor:0.##} times the average")}";
        yield return spares.Sentence;
        if (spares.SizeNotTold > 0) yield return $"{spares.SizeNotTold} fitted props are of a size nobody told.";
        if (spares.Sizes.Count > 0)
        {
            List<string[]> rows =
            [
                ["size", "fitted", "wanted", "expected", "at hand", "to mend", "at shop", "hold", "order"],
                .. spares.Sizes.Select(s => (string[])
                [
                    $"{s.Size}", $"{s.Count.Fitted}", $"{s.Wanted} in {s.FittedYears:0.0} a", s.ExpectedNeed is { } need ? $"{need:0.00}" : None,
                    $"{s.Count.AtHand}", $"{s.Count.ToMend}", $"{s.Count.AtShop}", s.BaseStock is { } stock ? $"{stock}" : None, s.ToOrder is { } order ? $"{order}" : None,
                ]),
            ];
            foreach (var line in TextTable.Of(rows)) yield return line;
        }

        foreach (var part in spares.Parts) yield return part.Sentence;
    }

    private static string Percent(Limits share) => $"{100 * share.Value:0} % ({100 * share.Low:0}-{100 * (share.High ?? 1):0})";

    private static string Hours(LifeReached at) => at.Hours is { } hours
        ? $"{hours:0} h ({(at.LowHours is { } low ? $"{low:0}" : "?")}-{(at.HighHours is { } high ? $"{high:0}" : "?")})"
        : at.LowHours is { } least ? $"over {least:0} h" : "not seen yet";

    private static string Rate(Limits? rate) => rate is null ? None : Range(rate, "0.0");

    private static string Range(Limits limits, string format) =>
        $"{limits.Value.ToString(format)} ({limits.Low.ToString(format)}-{limits.High?.ToString(format) ?? "?"})";
}
