using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Tests.Pictures;

public class PngRendererTests
{
    private static readonly PngRenderer Renderer = new();

    private static IEnumerable<DriftPicture> All() =>
        SkerryBay.Fleet().SelectMany(b => b.Positions.Select(p => DriftPictures.Of(b, p))).OfType<DriftPicture>();

    [Fact]
    public void Every_picture_of_the_fleet_is_drawn_at_double_size_and_small_enough_to_mail()
    {
        // LOOK_AT names a folder to put the pictures in, for a person who wants to see them.
        var lookAt = Environment.GetEnvironmentVariable("LOOK_AT");
        foreach (var picture in All())
        {
            var png = Renderer.Render(picture);
            if (lookAt is not null) File.WriteAllBytes(Path.Combine(lookAt, $"{picture.Boat}-{picture.Position}.png".Replace(' ', '-')), png);
            Assert.Equal(1200, (png[18] << 8) + png[19]);
            Assert.InRange(png.Length, 5_000, 110_000);
        }
    }

    [Fact]
    public void Pictures_drawn_in_parallel_are_the_same_byte_for_byte_as_one_by_one()
    {
        var pictures = All().ToList();
        var alone = pictures.Select(Renderer.Render).ToList();
        var together = pictures.AsParallel().AsOrdered().WithDegreeOfParallelism(8).Select(Renderer.Render).ToList();
        Assert.All(alone.Zip(together), pair => Assert.Equal(pair.First, pair.Second));
    }

    [Fact]
    public void A_missing_font_stops_the_start_and_says_what_to_do()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var error = Assert.Throws<InvalidOperationException>(() => new PngRenderer(folder));
        Assert.Contains("Inter_400Regular.ttf", error.Message, StringComparison.Ordinal);
        Assert.Contains("beside the program", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Labels_of_close_marks_hang_in_rows_and_cover_neither_each_other_nor_a_line()
    {
        var placed = MarkStrip.Place([(20, "fitted"), (30, "strike: rock"), (40, "repitch"), (900, "strike: wood")], s => s.Length * 10, 0, 1000);
        Assert.Equal([2, 1, 0, 0], placed.Select(p => p.Row));
        Assert.True(placed[3].Right < 900, "no room to the right of the last line, so its flag hangs to the left");
        Assert.All(placed, p => Assert.True(p.Left >= 0 && p.Right <= 1000));
        foreach (var high in placed)
            Assert.All(placed.Where(p => p.Row < high.Row), low => Assert.False(high.X > low.Left && high.X < low.Right));
    }

    [Fact]
    public void A_mark_without_room_for_its_label_is_counted()
    {
        var placed = MarkStrip.Place([(20, "strike: wood"), (30, "strike: rock"), (40, "repitch"), (50, "strike: sand")], s => s.Length * 10, 0, 1000);
        Assert.Equal(3, placed.Count);
        Assert.EndsWith("(+1)", placed[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_mark_did_is_written_where_it_costs_no_other_mark_its_label()
    {
        var roomy = MarkStrip.Place([(20, "fitted", null), (300, "strike", "+85 RPM")], s => s.Length * 10, 0, 1000);
        Assert.Equal(["fitted", "strike: +85 RPM"], roomy.Select(p => p.Text));
        var below = MarkStrip.Place([(20, "fitted", null), (500, "strike, bent + repitched to 14 in", "-428 RPM (-474 to -382)")], s => s.Length * 10, 0, 1000);
        Assert.Equal([("fitted", 0, 0), ("strike, bent + repitched to 14 in", 1, 1), ("-428 RPM (-474 to -382)", 1, 0)], below.Select(p => (p.Text, p.Index, p.Row)));
        (float, string, string?)[] crowd = [(800, "strike: wood", null), (810, "strike: rock", null), (820, "repitch", "+85 RPM (20 to 150)"), (980, "strike: sand", null)];
        var placed = MarkStrip.Place(crowd, s => s.Length * 10, 0, 1000);
        Assert.Equal(4, placed.Count);
        Assert.All(placed.Zip(["strike: wood", "strike: rock", "repitch", "strike: sand"]), p => Assert.StartsWith(p.Second, p.First.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Values_at_the_right_keep_their_distance_and_their_order()
    {
        var spread = SideLabels.Spread([new(100, "a", false, false), new(104, "b", false, false), new(390, "c", false, false), new(395, "d", false, false)], 30, 20, 400);
        Assert.Equal(["a", "b", "c", "d"], spread.Select(l => l.Text));
        Assert.All(spread.Zip(spread.Skip(1)), pair => Assert.True(pair.Second.Y - pair.First.Y >= 30));
        Assert.All(spread, l => Assert.InRange(l.Y, 20, 400));
    }

    [Fact]
    public void Forecast_points_beyond_the_window_are_cut_on_its_edge()
    {
        var line = new DriftLine(0.8, [new(0, 100, 90, 110, false), new(10, 110, 100, 120, false), new(20, 120, 100, 140, true)]);
        var cut = Windows.Cut(line, 15);
        Assert.Equal(new DriftPoint(15, 115, 100, 130, true), cut.Points[^1]);
    }
}
