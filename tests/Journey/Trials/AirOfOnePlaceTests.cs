using FleetWake.Commands;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>An air that contradicts itself.</summary>
public class AirOfOnePlaceTests
{
    [Theory]
    [InlineData("1013hPa,1500ft", "457 m", "960 hPa")] // ISO 2533: 1013.25 hPa (1 - 0.0065 x 457.2/288.15)^5.25588 = 959.5
    [InlineData("300m,930hPa", "300 m", "978 hPa")]
    public void A_pressure_and_a_height_of_two_places_are_refused_with_a_question(string text, string height, string standard)
    {
        var message = Assert.Throws<CommandException>(() => AirOption.Read(text)).Message;
        Assert.Contains(height, message, StringComparison.Ordinal);
        Assert.Contains(standard, message, StringComparison.Ordinal);
        Assert.Contains("reduced to sea level? Give one of them", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1013hPa,300m")] // 35 hPa from the standard: a high may do it
    [InlineData("960hPa,1500ft")]
    [InlineData("1500ft")]
    public void Those_of_one_place_are_taken(string text) => Assert.NotNull(AirOption.Read(text).Altitude);

    [Fact]
    public void The_pressure_of_the_file_is_held_against_a_height_that_was_typed() => Assert.Contains(
        "the pressure is the file's, 1013 hPa", Assert.Throws<CommandException>(() => AirOption.Over(AirOption.Read("1500ft"), AirOption.Read("1013hPa"))).Message, StringComparison.Ordinal);
}
