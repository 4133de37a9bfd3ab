using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>The fleet's figures as tables: lives of props, rates of strikes, and forecasts held against what came.</summary>
internal static class PackFigures
{
    public static PackTable Lives(FleetRecord fleet) => new(
        "lives", "a prop whose life is followed; ended or still running (right-censored)",
        [
            new("material", PackType.Text, "", "material of the prop"),
            new("water", PackType.Text, "", "water in which most of its hours were run"),
            new("engine_hours", PackType.Number, "h", "engine hours that it ran"),
            new("used_up", PackType.Truth, "", "another was needed: worn, lost or broken"),
            new("worn", PackType.Truth, "", "it was worn"),
            new("told_new", PackType.Truth, "", "somebody told that it was new; else its first mounting on record stands for that"),
        ],
        [
            .. PropLives.Lifetimes(fleet).Lives.Select(l => new object?[]
            {
                l.Material is { } m ? Words.Of(m) : null, l.Water is { } w ? Words.Of(w) : null, l.EngineHours, l.HasEnded(LifeQuestion.UsedUp), l.HasEnded(LifeQuestion.Worn), l.ToldNew,
            }),
        ]);

    public static PackTable Strikes(StrikeRates rates) => new(
        "strikes", "strikes of the fleet, a dock, a boat or a bottom over its engine hours",
        [
            new("by", PackType.Text, "", "fleet, dock, boat or bottom"),
            new("group", PackType.Text, "", "id or word of the group"),
            new("engine_hours", PackType.Number, "h", "engine hours known to have run"),
            new("strikes", PackType.Whole, "", "strikes within those hours"),
            new("left_mark", PackType.Whole, "", "those of them that left a mark"),
            new("rate", PackType.Number, "per 1,000 h", "strikes per 1,000 engine hours"),
            new("rate_low", PackType.Number, "per 1,000 h", "lower limit, exact (Garwood)"),
            new("rate_high", PackType.Number, "per 1,000 h", "upper limit"),
        ],
        [
            Row("fleet", rates.Fleet), .. rates.ByDock.Select(r => Row("dock", r)), .. rates.ByBoat.Select(r => Row("boat", r)), .. rates.ByBottom.Select(r => Row("bottom", r)),
        ]);

    public static PackTable Forecasts(IReadOnlyList<(DateOnly Made, ForecastCheck Check)> checks) => new(
        "forecasts", "a forecast of an earlier month's end held against what came by this one's",
        [
            new("made", PackType.Day, "", "last day that the forecast knew"),
            new("boat", PackType.Text, "", "id of the boat"),
            new("position", PackType.Text, "", "engine position"),
            new("mounting", PackType.Text, "", "id of the mounting"),
            new("rpm_outcome", PackType.Text, "", "RPM of the next trial: held, below, above, or open"),
            new("rpm_low", PackType.Number, "rpm", "lower end foretold"),
            new("rpm_high", PackType.Number, "rpm", "upper end foretold"),
            new("rpm_came", PackType.Number, "rpm", "what came"),
            new("exit_outcome", PackType.Text, "", "engine hours to the edge of the band: held, below, above, or open"),
            new("exit_low", PackType.Number, "h", "lower end foretold"),
            new("exit_high", PackType.Number, "h", "upper end foretold"),
            new("exit_came", PackType.Number, "h", "first hours at which a trial lay outside"),
            new("level", PackType.Number, "1", "level claimed for the intervals"),
            new("leaves_chance", PackType.Number, "1", "chance told of leaving the band within 100 engine hours"),
            new("left", PackType.Truth, "", "whether it did; empty while nobody can tell"),
        ],
        [
            .. checks.OrderBy(c => c.Made).ThenBy(c => c.Check.Boat, StringComparer.Ordinal).Select(c => new object?[]
            {
                c.Made, c.Check.Boat, Words.Of(c.Check.Position), c.Check.Mounting,
                Words.Of(c.Check.NextTrial.Outcome), c.Check.NextTrial.Low, c.Check.NextTrial.High, c.Check.NextTrial.Came,
                c.Check.Exit is { } exit ? Words.Of(exit.Outcome) : null, c.Check.Exit?.Low, c.Check.Exit?.High, c.Check.Exit?.Came,
                c.Check.NextTrial.Level, c.Check.Leaves?.Chance, c.Check.Leaves?.Happened,
            }),
        ]);

    /// <summary>What each column of each table means.</summary>
    public static PackTable Dictionary(IReadOnlyList<PackTable> tables) => new(
        "dictionary", "a column of one of the tables",
        [
            new("table", PackType.Text, "", "the file, without its ending"),
            new("row_is", PackType.Text, "", "what a row of it is"),
            new("column", PackType.Text, "", "name of the column"),
            new("type", PackType.Text, "", "text, number, whole, truth or day"),
            new("unit", PackType.Text, "", "unit; empty without one"),
            new("meaning", PackType.Text, "", "what it says; an empty cell was not told or does not apply"),
        ],
        [.. tables.SelectMany(t => t.Columns.Select(c => new object?[] { t.Name, t.Meaning, c.Name, Words.Of(c.Type), c.Unit, c.Meaning }))]);

    private static object?[] Row(string by, StrikeRate r) => [by, r.Group, r.EngineHours, r.Strikes, r.LeftMark, r.All?.Exact.Value, r.All?.Exact.Low, r.All?.Exact.High];
}
