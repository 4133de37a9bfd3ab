using System.Text;
using FleetWake.Commands;
using FleetWake.Import;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;
using FleetWake.Store.Import;

namespace FleetWake.Journey.Tests.Import;

/// <summary>Sheets as spreadsheets and people make them, read without a database.</summary>
public sealed class SheetTests : IDisposable
{
    private const string Header = "happened_at,boat,position,object,severity,hours";
    private readonly SheetFolder folder = new();

    public static TheoryData<string> Spellings => new(
        "happened_at,boat,position,object,severity,hours\n2026-05-03 10:15,tern,single,rock,chipped,212.5\n",
        "\uFEFFhappened_at,boat,position,object,severity,hours\r\n2026-05-03 10:15,tern,single,rock,chipped,212.5\r\n",
        "happened_at;boat;position;object;severity;hours\n2026-05-03 10:15;tern;single;rock;chipped;212,5\n",
        "happened_at\tboat\tposition\tobject\tseverity\thours\n2026-05-03 10:15\ttern\tsingle\trock\tchipped\t212,5\n",
        "sep=;\nhappened_at;boat;position;object;severity;hours\n2026-05-03 10:15;tern;single;rock;chipped;212,5",
        "Happened_At, BOAT ,position,object,severity,hours,,\n\"2026-05-03T10:15:00\", tern ,single,\"rock\",chipped,212.50,,\n,,,,,,,\n\n");

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Spellings))]
    public void A_sheet_is_read_alike_however_a_spreadsheet_saves_it(string text)
    {
        var row = Assert.Single(folder.With(SheetFolder.Strikes, Encoding.UTF8.GetBytes(text)).Read());
        var strike = Assert.IsType<ReportStrike>(row.Command);
        Assert.Equal(("tern", "rock", 212.5), (strike.Boat, strike.Object, strike.Hours));
        Assert.Equal("2026-05-03T10:15:00", strike.Entry!.HappenedAt);
        Assert.Equal("2026-05-03T10:15:00 tern single", row.Key);
    }

    [Fact]
    public void A_missing_column_is_told_once_and_nothing_is_read()
    {
        folder.With(SheetFolder.Strikes, "happened_at,boat,position,object", "2026-05-03 10:15,tern,single,rock", "2026-05-04 10:15,tern,single,rock");
        var told = Assert.Throws<CommandException>(() => folder.Read()).Message;
        Assert.Equal(2, told.Split("strike_reported.csv").Length);
        Assert.Contains("the column \"severity\" is missing", told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("prop_mounted.csv", "happened_at,boat,position,prop,torque_pounds", "\"torque_pounds\" is no column of prop_mounted; its columns are key, happened_at")]
    [InlineData("trial_run.csv", "happened_at,boat,throttle,runs.1.speed,runs.1.speed_unit,runs.1.tachometers.1.rpm", "the column \"runs.1.heading_degrees\" is missing")]
    [InlineData("trial_run.csv", "happened_at,boat,throttle,runs.1.speed,runs.1.speed_unit,runs.1.heading_degrees,runs.1.tachometers.1.rpm", "the column \"runs.1.tachometers.1.position\" is missing")]
    [InlineData("trial_run.csv", "happened_at,boat,throttle", "the column \"runs.1.speed\" is missing")]
    [InlineData("strike_reported.csv", "happened_at,boat,boat,position,object,severity", "the column \"boat\" stands there twice")]
    [InlineData("hours.csv", "happened_at,engine,hours", "there is no kind of record \"hours\"")]
    public void A_head_that_cannot_be_is_told_by_its_names(string name, string header, string why) =>
        Assert.Contains(why, Assert.Throws<CommandException>(() => folder.With(name, header, "x").Read()).Message, StringComparison.Ordinal);

    [Fact]
    public void Other_letters_than_utf8_are_told_with_their_line()
    {
        folder.With(SheetFolder.Strikes, [.. Encoding.UTF8.GetBytes($"{Header}\n2026-05-03 10:15,tern,single,rock,chipped,\n2026-05-04 10:15,"), 0xE9, .. "\n"u8]);
        Assert.Contains("strike_reported.csv: line 3 holds letters that are not UTF-8", Assert.Throws<CommandException>(() => folder.Read()).Message, StringComparison.Ordinal);
        folder.With(SheetFolder.Strikes, [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Header)]);
        Assert.Contains("is UTF-16", Assert.Throws<CommandException>(() => folder.Read()).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-05-03 10:15,tern,single,rock,chipped,5 800", "hours", "is no number")]
    [InlineData("2026-05-03 10:15,tern,single,rock,chipped,\"212,5\"", "hours", "decimal comma where commas separate")]
    [InlineData("2026-05-03 10:15,tern,single,rock,chipped,1E+03", "hours", "is no number")]
    [InlineData("2026-05-03 10:15,tern,single,rock,chipped,-3", "hours", "cannot be")]
    [InlineData("2026-05-03 10:15,tern,single,rock,awful,", "severity", "is not known here: give one of")]
    [InlineData("03.05.2026,tern,single,rock,chipped,", "happened_at", "give local date and time as in")]
    [InlineData(",tern,single,rock,chipped,", "happened_at", "missing")]
    [InlineData("2036-05-03 10:15,tern,single,,chipped,", "object", "missing: give one of")]
    [InlineData("2026-05-03 10:15,tern,single,rock,chipped,212,5", "", "has 7 cells where the first line names 6 columns")]
    [InlineData("2026-05-03 10:15,\"tern,single,rock,chipped,212\n2026-05-03 10:15,tern,single,rock,chipped,212", "", "a quotation mark opens here, and everything up to line")]
    public void A_bad_cell_is_told_with_its_line_its_column_and_how_to_mend_it(string row, string column, string why)
    {
        var read = folder.With(SheetFolder.Strikes, Header, row).Read();
        var told = read.SelectMany(Tell).ToList();
        Assert.Contains(told, b => b.Line == 2 && b.Column == column && b.Why.Contains(why, StringComparison.Ordinal));
    }

    [Fact]
    public void Numbers_with_points_among_numbers_with_commas_are_not_guessed_at()
    {
        var read = folder.With(SheetFolder.Strikes, Header.Replace(',', ';'), "2026-05-03 10:15;tern;single;rock;chipped;212,5", "2026-05-04 10:15;tern;single;rock;chipped;1.234").Read();
        Assert.Empty(read[0].Bad);
        Assert.Contains("is written with \".\" where other numbers of this file have \",\"", Assert.Single(read[1].Bad).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_without_a_key_is_called_the_same_in_whatever_order_its_columns_stand()
    {
        var row = Assert.Single(folder.With("prop_mounted.csv", "happened_at,boat,position,prop", "2026-05-03 10:15,tern,single,p-1").Read());
        Assert.Equal("2026-05-03T10:15:00 tern single p-1", row.Key);
        var moved = Assert.Single(folder.With("prop_mounted.csv", "prop,position,happened_at,boat", "p-1,single,2026-05-03 10:15,tern").Read());
        Assert.Equal(row.Command!.Entry!.Id, moved.Command!.Entry!.Id);
    }

    [Fact]
    public void A_quotation_mark_that_is_never_closed_in_a_large_sheet_is_told_with_its_line()
    {
        var lines = Enumerable.Repeat("2026-05-03 10:15,tern,single,rock,chipped,212", 500_000).Prepend("2026-05-03 10:15,\"tern,single,rock,chipped,212").Prepend(Header);
        folder.With(SheetFolder.Strikes, [.. lines]);
        Assert.Contains("strike_reported.csv: a quotation mark opens on line", Assert.Throws<TableException>(() => folder.Read()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_run_writes_into_the_folder_is_no_sheet_and_no_sheet_is_written_over()
    {
        folder.With(SheetFolder.Strikes, Header, "2026-05-03 10:15,tern,single,rock,chipped,");
        var findings = Path.Combine(folder.Path, "findings.csv");
        var request = folder.Request with { Report = Path.Combine(folder.Path, "bad.csv"), Output = findings };
        for (var run = 0; run < 2; run++)
        {
            folder.With("bad.csv", "of the run before");
            new AssessRun(TimeProvider.System).Run(request, null, fit: true, () => new StreamWriter(findings), TestContext.Current.CancellationToken);
            Assert.False(File.Exists(request.Report));
            Assert.Equal(AssessRun.Columns, File.ReadLines(findings).First());
        }

        foreach (var over in (ImportRequest[])[request with { Report = Path.Combine(folder.Path, SheetFolder.Strikes) }, request with { Output = Path.Combine(folder.Path, "Trial_Run.CSV") }])
        {
            Assert.Contains("is a sheet of", Assert.Throws<CommandException>(() => new AssessRun(TimeProvider.System).Run(over, null, fit: true, () => TextWriter.Null, TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(folder.Path, SheetFolder.Strikes)));
        }
    }

    [Fact]
    public void Two_rows_that_nothing_tells_apart_are_both_refused_until_they_have_keys()
    {
        const string Row = "2026-05-03 10:15,tern,single,rock,chipped,";
        Assert.All(folder.With(SheetFolder.Strikes, Header, Row, Row).Read(), r => Assert.Contains("give each of them one of its own", Assert.Single(r.Bad).Why, StringComparison.Ordinal));
        var keyed = folder.With(SheetFolder.Strikes, "key," + Header, "a," + Row, "b," + Row).Read();
        Assert.All(keyed, r => Assert.Empty(r.Bad));
        Assert.NotEqual(keyed[0].Command!.Entry!.Id, keyed[1].Command!.Entry!.Id);
    }

    [Fact]
    public void Runs_and_tachometers_stand_in_numbered_columns_and_refusals_name_them()
    {
        const string Names = "happened_at,boat,throttle,meters.1.position,meters.1.hours,runs.1.speed,runs.1.speed_unit,runs.1.heading_degrees,runs.1.tachometers.1.position,"
            + "runs.1.tachometers.1.rpm,runs.2.speed,runs.2.speed_unit,runs.2.heading_degrees,runs.2.tachometers.1.position,runs.2.tachometers.1.rpm";
        var read = folder.With(
            "trial_run.csv",
            Names,
            "2026-05-03 10:15,tern,wide_open,single,212,25.1,kn,90,single,5650,27,kn,270,single,5640",
            "2026-05-04 10:15,tern,wide_open,single,213,25.1,kn,90,single,5650,,,,,",
            "2026-05-05 10:15,tern,wide_open,single,214,25.1,kn,90,single,5650,2700,kn,270,single,5640").Read();
        var trial = Assert.IsType<RunTrial>(read[0].Command);
        Assert.Equal(5640, trial.Runs![1].Tachometers![0].Rpm);
        Assert.Single(Assert.IsType<RunTrial>(read[1].Command).Runs!);
        Assert.Contains(Tell(read[2]), b => b.Column == "runs.2.speed" && b.Value == "2700");
    }

    private static IEnumerable<FleetWake.Store.Import.BadCell> Tell(FleetWake.Store.Import.ReadRow row)
    {
        if (row.Command is null) return row.Bad;
        var arrival = new FleetWake.Logbook.Entries.Arrival("import", new DateTimeOffset(2026, 6, 1, 0, 0, 0, TimeSpan.Zero), null);
        return row.Kind.Decide(row.Command, arrival) is FleetWake.Logbook.Entries.Decision.Refuse refused ? refused.Refusals.Select(row.Told) : [];
    }
}
