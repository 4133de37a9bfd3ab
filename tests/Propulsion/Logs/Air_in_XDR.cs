using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>
/// Names of transducers are anyone's own: the forms here are those that public logs and manuals show, the numbers are invented.
/// </summary>
public class Air_in_XDR
{
    [Theory]
    [InlineData("WIXDR,C,23.3,C,0,C,24.0,C,1,H,50.1,P,0,P,1009.5,H,0", 23.3, 1009.5, 0.501)] // numbers for names, pressure in hPa
    [InlineData("WIXDR,P,1.0250,B,2,C,18.0,C,3,C,19.0,C,4,H,70.0,P,5", 18.0, 1025.0, 0.7)]
    [InlineData("WIXDR,H,70.0,P,RH,C,18.0,C,TEMP,P,1.025,B,PRESS,C,11.0,C,DP", 18.0, 1025.0, 0.7)] // the dew point is not taken
    [InlineData("YXXDR,C,,C,WCHR,C,,C,WCHT,C,,C,HINX,P,1.009,B,STNP", null, 1009.0, null)] // the station pressure, whoever says it
    [InlineData("IIXDR,H,70.0,P,Humidity", null, null, 0.7)]
    [InlineData("WIXDR,C,18.0,C,TEMP,C,21.0,C,AirTemp", 21.0, null, null)] // the air's name goes before no name
    [InlineData("WIXDR,P,100950,P,", null, 1009.5, null)]
    public void A_weather_station_is_believed_where_a_name_contradicts_nothing(string sentence, double? celsius, double? hectopascals, double? humidity)
    {
        var air = Logs.Lines(Logs.Nmea($"{sentence}")).Air!;
        Near(celsius, air.Temperature?.Celsius);
        Near(hectopascals, air.StationPressure?.Hectopascals);
        Near(humidity, air.RelativeHumidityFraction);
    }

    [Theory]
    [InlineData("WIXDR,C,14.0,C,WaterTemp")]
    [InlineData("WIXDR,C,80.0,C,ENGINE#0,P,3.1,B,OIL#0")]
    [InlineData("WIXDR,C,4.0,C,Fridge,P,1.0132,B,Sealevel")]
    [InlineData("IIXDR,C,18.0,C,TEMP,P,1.009,B,0")] // no weather station
    public void Else_the_reading_is_left_aside_and_that_is_said(string sentence)
    {
        var log = Logs.Lines(Logs.Nmea($"{sentence}"));
        Assert.Null(log.Air);
        var told = log.Notices.Single(notice => notice.Kind == LogNoticeKind.LeftAside).Detail;
        Assert.Contains("left aside", told, StringComparison.Ordinal);
        Assert.Contains(sentence.Split(',')[4], told, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_said_once_with_the_reason()
    {
        var log = Logs.Lines([.. Enumerable.Repeat(Logs.Nmea($"IIXDR,P,1.009,B,0"), 300)]);
        Assert.Equal("XDR P \"0\" (1.009 bar) left aside: its name does not say it is the air's", Assert.Single(log.Notices, n => n.Kind == LogNoticeKind.LeftAside).Detail);
        Assert.Equal((0, 0), (log.DroppedCount, log.LeftAsideCount));
    }

    [Fact]
    public void What_is_plainly_not_the_air_needs_no_word_where_the_air_was_read() => Assert.False(
        Logs.Lines(Logs.Nmea($"WIXDR,C,18.0,C,AirTemp,C,14.0,C,WaterTemp")).Says(LogNoticeKind.LeftAside));

    [Fact]
    public void The_first_of_two_is_kept_though_each_has_its_own_sentence()
    {
        var log = Logs.Lines(Logs.Nmea($"WIXDR,C,20.0,C,0"), Logs.Nmea($"WIXDR,C,30.0,C,1"), Logs.Nmea($"WIXDR,C,22.0,C,0"));
        Assert.Equal(21, log.Air!.Temperature!.Value.Celsius, 1e-9);
    }

    [Fact]
    public void TAG_blocks_with_a_wrong_checksum_are_counted_and_told_once()
    {
        var log = Logs.Lines([.. Enumerable.Repeat(@"\s:n2k,c:1777802400*00\$IIRPM,E,0,800,,A*6F", 40)]);
        Assert.Equal("40 TAG blocks with a wrong checksum: their times were not used", log.Notices.Single(n => n.Kind == LogNoticeKind.LeftAside).Detail);
        Assert.Equal("RPM was logged, but none that could be used", log.Notices.Single(n => n.Kind == LogNoticeKind.NoRpm).Detail);
    }

    private static void Near(double? expected, double? actual)
    {
        Assert.Equal(expected is null, actual is null);
        if (expected is { } e) Assert.Equal(e, actual!.Value, 1e-9);
    }
}
