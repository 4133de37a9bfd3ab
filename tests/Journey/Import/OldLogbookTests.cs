using FleetWake.Import;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Import;

namespace FleetWake.Journey.Tests.Import;

/// <summary>What years of logbooks leave open: days without a time, marks in numbers, twins.</summary>
public sealed class OldLogbookTests : IDisposable
{
    private const string Header = "happened_at;boat;position;object;severity;hours";
    private readonly SheetFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_date_alone_is_taken_as_noon_of_that_day()
    {
        var row = Assert.Single(folder.With(SheetFolder.Strikes, Header, "2026-05-03;tern;single;rock;chipped;212,5").Read());
        Assert.Equal("2026-05-03T12:00:00", row.Command!.Entry!.HappenedAt);
        Assert.Equal("2026-05-03T12:00:00 tern single", row.Key);
    }

    [Theory]
    [InlineData("01.05.2026")]
    [InlineData("5/1/2026")]
    [InlineData("2026-5-3")]
    [InlineData("3 May")]
    public void Another_form_of_a_date_is_refused_with_the_forms_that_are_read(string date)
    {
        var bad = Assert.Single(Assert.Single(folder.With(SheetFolder.Strikes, Header, $"{date};tern;single;rock;chipped;").Read()).Bad);
        Assert.Equal(("happened_at", date), (bad.Column, bad.Value));
        Assert.Contains("as in 2026-05-03 10:15, or the date alone as in 2026-05-03", bad.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1.234 | 212,5", "where other numbers of this file have \",\" | ")]
    [InlineData("212,5 | 1.234", " | where other numbers of this file have \",\"")]
    [InlineData("1,234 | 212.5", "where other numbers of this file have \".\" | ")]
    [InlineData("212,5 | 27.5", "decimal commas and decimal points | decimal commas and decimal points")]
    [InlineData("1.234 | 5", "may be 1234 with a mark for the thousands | ")]
    [InlineData("1,234 | 12,750", "may be 1234 with | may be 12750 with")]
    public void A_mark_that_may_stand_for_thousands_is_refused_whichever_row_it_stands_in(string hours, string why)
    {
        foreach (var (row, says) in Rows(hours).Zip(why.Split(" | ")))
        {
            if (says.Length == 0) Assert.Empty(row.Bad);
            else Assert.Contains(says, Assert.Single(row.Bad).Why, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("1.234 | 212.5", 1.234, 212.5)]
    [InlineData("1,234 | 212,5", 1.234, 212.5)]
    [InlineData("1,234 | 0,500", 1.234, 0.5)]
    [InlineData("1.2340 | 7", 1.234, 7)]
    public void A_mark_that_the_other_numbers_explain_is_read_as_a_decimal(string hours, double first, double second) =>
        Assert.Equal([first, second], Rows(hours).Select(r => ((ReportStrike)r.Command!).Hours!.Value));

    [Fact]
    public void Where_commas_separate_the_columns_a_point_is_a_decimal_point()
    {
        var row = Assert.Single(folder.With(SheetFolder.Strikes, Header.Replace(';', ','), "2026-05-03 10:15,tern,single,rock,chipped,1.234").Read());
        Assert.Equal(1.234, ((ReportStrike)row.Command!).Hours);
    }

    [Fact]
    public void Templates_have_the_columns_of_twins_in_every_run_and_the_order_within_a_moment()
    {
        var header = Templates.Header(RecordKind.Find("trial_run")!);
        foreach (var column in (string[])["count", "runs.2.tachometers.2.rpm", "runs.2.tachometers.1.limiter_reached", "runs.1.tachometers.2.position", "meters.2.hours"])
            Assert.Contains(column, header);
        Assert.DoesNotContain("amends", header);
        Assert.DoesNotContain("runs.3.speed", header);
    }

    private IReadOnlyList<ReadRow> Rows(string hours) =>
        folder.With(SheetFolder.Strikes, [.. hours.Split(" | ").Select((h, i) => $"2026-05-0{i + 3} 10:15;tern;single;rock;chipped;{h}").Prepend(Header)]).Read();
}
