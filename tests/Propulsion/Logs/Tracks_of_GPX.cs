using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class Tracks_of_GPX
{
    [Theory]
    [InlineData(0, 0, 0, 0.001, 111.319491)] // a pi/180: the definition of the ellipsoid's equator
    [InlineData(0, 0, 0.001, 0, 110.574276)] // metres in a degree of latitude at 0, 45 and 90 degrees: 110 574.3, 111 131.8
    [InlineData(45, 7, 45.001, 7, 111.131778)] // and 111 693.9 (WGS 84 in navigators' tables, from memory)
    [InlineData(89.9, 7, 89.901, 7, 111.693864)]
    [InlineData(10, 179.9995, 10, -179.9995, 109.639359)] // over the date line
    public void The_way_between_near_points_is_that_on_the_ellipsoid(double lat1, double lon1, double lat2, double lon2, double metres)
    {
        var log = Logs.Read(Gpx($"{Point(lat1, lon1, 0)}{Point(lat2, lon2, 10)}"));
        Assert.Equal(metres / 10, log.Track[0].Speed.MetresPerSecond, 3e-5);
        Assert.True(log.Says(LogNoticeKind.SpeedFromPositions));
    }

    [Theory]
    [InlineData(0.001, 0, 0)]
    [InlineData(0, 0.001, 90)]
    [InlineData(-0.001, 0, 180)]
    [InlineData(0, -0.001, 270)]
    public void The_course_is_made_of_positions(double north, double east, double course) =>
        Assert.Equal(course, Logs.Read(Gpx($"{Point(0, 0, 0)}{Point(north, east, 10)}")).Track[0].CourseDegrees!.Value, 1e-9);

    [Theory]
    [InlineData("<speed>12.5</speed><course>41.5</course>")] // as GPX 1.0 has them
    [InlineData("<extensions><speed>12.5</speed><course>41.5</course></extensions>")]
    [InlineData("<extensions><x:TrackPointExtension xmlns:x=\"urn:x\"><x:speed>12.5</x:speed><x:course>41.5</x:course></x:TrackPointExtension></extensions>")]
    public void A_receivers_own_speed_is_taken_where_it_gives_one(string inside)
    {
        var fix = Assert.Single(Logs.Read(Gpx(Point(58, 10, 0, inside))).Track);
        Assert.Equal(12.5, fix.Speed.MetresPerSecond, 1e-12);
        Assert.Equal(41.5, fix.CourseDegrees);
    }

    [Fact]
    public void Nothing_is_joined_over_the_end_of_a_segment() =>
        Assert.Empty(Logs.Read(Gpx($"{Point(58, 10, 0)}</trkseg><trkseg>{Point(59, 10, 1)}")).Track);

    [Fact]
    public void A_point_without_a_time_is_dropped()
    {
        var log = Logs.Read(Gpx("<trkpt lat=\"1\" lon=\"2\"/>"));
        Assert.Equal("a point without a time", Assert.Single(log.Dropped).Reason);
    }

    [Fact]
    public void A_track_that_breaks_off_is_read_up_to_there()
    {
        var whole = Gpx($"{Point(58, 10, 0)}{Point(58.001, 10, 5)}{Point(58.002, 10, 10)}");
        var log = Logs.Read(whole[..whole.LastIndexOf("<time>", StringComparison.Ordinal)]);
        Assert.Equal(2, log.Track.Count);
        Assert.Contains("cannot be read on", Assert.Single(log.Dropped).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_type_is_refused_and_nothing_in_it_grows()
    {
        var log = Logs.Read("<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><gpx>&b;</gpx>");
        Assert.Empty(log.Track);
        Assert.Contains("DTD", Assert.Single(log.Dropped).Reason, StringComparison.Ordinal);
    }

    private static string Gpx(string points) =>
        $"<?xml version=\"1.0\"?><gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"t\"><trk><trkseg>{points}</trkseg></trk></gpx>";

    private static string Point(double lat, double lon, int second, string inside = "") => FormattableString.Invariant(
        $"\n<trkpt lat=\"{lat}\" lon=\"{lon}\"><time>2026-05-04T09:00:{second:00}Z</time>{inside}</trkpt>");
}
