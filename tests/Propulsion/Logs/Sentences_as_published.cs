using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>
/// Sentences as others printed them, each with its own source. "Signal K" is the test suite of the project's NMEA 0183 parser
/// (SignalK/nmea0183-signalk, Apache 2.0), whose expected values are used; "gpsd" is the description of the sentences that
/// the gpsd project keeps. RMC of 1994 and VTG 054.7 stand in countless manuals; who printed them first is not known.
/// </summary>
public class Sentences_as_published
{
    private const string Rmc1994 = "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A";

    [Fact]
    public void RMC_tells_time_speed_and_course()
    {
        var fix = Assert.Single(Logs.Lines(Rmc1994).Track);
        Assert.Equal(new DateTimeOffset(1994, 3, 23, 12, 35, 19, TimeSpan.Zero), fix.At);
        Assert.Equal(22.4, fix.Speed.Knots, 1e-12);
        Assert.Equal(84.4, fix.CourseDegrees);
    }

    [Fact]
    public void RMC_with_parts_of_a_second_and_a_mode() // Signal K: 2014-04-03T08:54:12Z, 0.298 m/s, 4.387 rad
    {
        var fix = Assert.Single(Logs.Lines("$GPRMC,085412.000,A,5222.3198,N,00454.5784,E,0.58,251.34,030414,,,A*65").Track);
        Assert.Equal(new DateTimeOffset(2014, 4, 3, 8, 54, 12, TimeSpan.Zero), fix.At);
        Assert.Equal(0.298, fix.Speed.MetresPerSecond, 0.0005);
        Assert.Equal(4.387, fix.CourseDegrees!.Value * Math.PI / 180, 0.0005);
    }

    [Fact]
    public void RMC_without_speed_still_tells_the_time() // Signal K
    {
        var log = Logs.Lines("$GPRMC,085412.000,A,5222.3198,N,00454.5784,E,,,030414,12,E*42", "$IIRPM,E,1,2418.2,10.5,A*5F");
        Assert.Empty(log.Track);
        Assert.Equal(new DateTimeOffset(2014, 4, 3, 8, 54, 12, TimeSpan.Zero), Assert.Single(log.Rates).At);
    }

    [Fact]
    public void RPM_tells_the_engines_rate() // Signal K: 2418.2/60 a second
    {
        var log = Logs.Lines(Rmc1994, "$IIRPM,E,1,2418.2,10.5,A*5F");
        Assert.Equal(2418.2, Assert.Single(log.Rates).Engine.RevolutionsPerMinute);
        Assert.Equal(0, log.DroppedCount);
    }

    [Fact]
    public void RPM_of_a_shaft_is_no_engines_rate_until_a_ratio_brings_it_there() // Signal K: 30 a second at the shaft
    {
        var text = $"{Rmc1994}\n$IIRPM,S,2,1800.0,0.0,A*7A";
        Assert.Contains("gear ratio", Assert.Single(Logs.Read(text).Dropped).Reason, StringComparison.Ordinal);
        var log = Logs.Read(text, new LogOptions { Gear = new GearRatio(2) });
        Assert.Equal(3600, Assert.Single(log.Rates).Engine.RevolutionsPerMinute);
        Assert.True(log.Says(LogNoticeKind.ShaftRates));
    }

    [Theory]
    [InlineData("$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48", 5.5, 54.7)]
    [InlineData("$GPVTG,0.0,T,359.3,M,15.0,N,,K,A*35", 15.0, 0.0)] // Signal K: knots alone
    [InlineData("$GPVTG,,T,,M,0.102,N,0.190,K,A*28", 0.102, null)] // Signal K: no course while drifting
    [InlineData("$IIVTG,224.44,T,224.44,M,5.81,N,,,D*68", 5.81, 224.44)] // Signal K server's sample log of a sailing boat
    public void VTG_has_the_time_of_what_came_before_it(string sentence, double knots, double? course)
    {
        var fix = Assert.Single(Logs.Lines("$GPGLL,6005.071,N,02332.346,E,095559,A,D*43", sentence).Track);
        Assert.Equal(knots, fix.Speed.Knots, 1e-9);
        Assert.Equal(course, fix.CourseDegrees);
        Assert.Equal(new TimeSpan(9, 55, 59), fix.At.TimeOfDay);
    }

    [Theory]
    [InlineData("$IIXDR,P,1.02481,B,Barometer*29", 1024.81, null, null)] // gpsd
    [InlineData("$IIXDR,C,19.52,C,TempAir*19", null, 19.52, null)] // gpsd
    [InlineData("$WIXDR,C,022.0,C,,*52", null, 22.0, null)] // Signal K: a weather station that names nothing
    [InlineData("$IIXDR,C,24.24,C,ENV_OUTSIDE_T,P,100700,P,ENV_ATMOS_P,H,64.356,P,ENV_OUTSIDE_H*37", 1007.0, 24.24, 0.64356)] // marnav's tests
    public void XDR_tells_the_air(string sentence, double? hectopascals, double? celsius, double? humidity)
    {
        var air = Logs.Lines(sentence).Air!;
        Near(hectopascals, air.StationPressure?.Hectopascals);
        Near(celsius, air.Temperature?.Celsius);
        Near(humidity, air.RelativeHumidityFraction);
    }

    [Fact]
    public void XDR_of_something_else_is_not_the_air() => // gpsd: pitch, roll and magnets
        Assert.Null(Logs.Lines("$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ*41").Air);

    [Fact]
    public void XDR_may_carry_the_rate() // form of the type T, unit R in the standard's table of transducers (from memory)
    {
        var log = Logs.Lines(Rmc1994, Logs.Nmea($"IIXDR,T,5480.00,R,ENGINE#0"));
        Assert.Equal(5480, Assert.Single(log.Rates).Engine.RevolutionsPerMinute);
    }

    [Fact]
    public void MDA_tells_the_air_at_once() // form as described by gpsd; the numbers are invented
    {
        var air = Logs.Lines(Logs.Nmea($"WIMDA,29.9210,I,1.0132,B,21.5,C,14.2,C,64.0,,14.3,C,,T,,M,,N,,M")).Air!;
        Near(1013.2, air.StationPressure?.Hectopascals);
        Near(21.5, air.Temperature?.Celsius);
        Near(0.64, air.RelativeHumidityFraction);
    }

    [Fact]
    public void A_TAG_block_tells_when_a_sentence_was_heard() // the block is gpsd's, 1241544035 = 2009-05-05T17:20:35Z
    {
        var log = Logs.Lines(@"\g:1-2-73874,n:157036,s:r003669945,c:1241544035*4A\$IIRPM,E,1,2418.2,10.5,A*5F");
        Assert.Equal(DateTimeOffset.FromUnixTimeSeconds(1241544035), Assert.Single(log.Rates).At);
    }

    [Fact]
    public void A_TAG_block_whose_checksum_is_wrong_costs_its_time_only() // Signal K's README shows one: 13, its characters make 40
    {
        var log = Logs.Lines(Rmc1994, @"\s:airmar dst800,c:1438489697*13\$IIRPM,E,1,2418.2,10.5,A*5F");
        Assert.Equal(1994, Assert.Single(log.Rates).At.Year);
        Assert.Equal("1 TAG block with a wrong checksum: its time was not used", log.Notices.Single(n => n.Kind == LogNoticeKind.LeftAside).Detail);
        Assert.Equal(0, log.DroppedCount);
    }

    [Theory]
    [InlineData("2026-05-04T09:00:01.500Z $IIRPM,E,1,2418.2,10.5,A*5F")]
    [InlineData("[2026-05-04 09:00:01.500] $IIRPM,E,1,2418.2,10.5,A*5F")]
    [InlineData("1777885201.5;$IIRPM,E,1,2418.2,10.5,A*5F")]
    [InlineData("1777885201500 $IIRPM,E,1,2418.2,10.5,A*5F")]
    public void A_time_in_front_tells_it_too(string line) => Assert.Equal(
        new DateTimeOffset(2026, 5, 4, 9, 0, 1, 500, TimeSpan.Zero), Assert.Single(Logs.Lines(line).Rates).At);

    [Fact]
    public void Two_clocks_are_noticed_and_the_loggers_is_kept()
    {
        var log = Logs.Lines("2026-05-04T09:00:00Z $GPRMC,085412.000,A,5222.3198,N,00454.5784,E,0.58,251.34,030414,,,A*65");
        Assert.True(log.Says(LogNoticeKind.ClocksDiffer));
        Assert.Equal(2026, Assert.Single(log.Track).At.Year);
    }

    private static void Near(double? expected, double? given)
    {
        Assert.Equal(expected is null, given is null);
        if (expected is { } e) Assert.Equal(e, given!.Value, 1e-9);
    }
}
