using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Trials;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>How an engine and a prop are typed at the command line.</summary>
public class EngineAndPropOptionTests
{
    [Fact]
    public void An_engine_is_read_with_all_its_parts()
    {
        var engine = EngineOption.Read("band=5000-6000, gear=2.08:1, step=50, power=150hp, tacho=+2+-0.5%, air=supercharged");
        Assert.Equal((5000.0, 6000.0), (engine.BandLow!.Value.RevolutionsPerMinute, engine.BandHigh!.Value.RevolutionsPerMinute));
        Assert.Equal(new GearRatio(2.08), engine.Gear);
        Assert.Equal(50, engine.TachometerStep!.Value.RevolutionsPerMinute);
        Assert.Equal(150, engine.RatedPower!.Value.Horsepower, 1e-9);
        Assert.Equal(new Uncertain(0.02, 0.005), engine.TachometerError);
        Assert.Equal(AirResponse.Supercharged, engine.Breathing);
    }

    [Fact]
    public void What_is_not_given_of_an_engine_is_not_known()
    {
        var engine = EngineOption.Read("GEAR=2");
        Assert.Equal((null, null, null, null, null), (engine.BandLow, engine.BandHigh, engine.RatedPower, engine.TachometerStep, engine.TachometerError));
        Assert.Equal(AirResponse.NaturallyAspirated, engine.Breathing);
    }

    [Theory]
    [InlineData("power=110kW", 110_000)]
    [InlineData("power=150 PS", 110_324.8125)]
    public void Power_is_read_in_its_unit(string text, double watts) => Assert.Equal(watts, EngineOption.Read(text).RatedPower!.Value.Watts, 1e-6);

    [Theory]
    [InlineData("13x19", 13, 19, null)]
    [InlineData("13 X 19 x 3", 13, 19, 3)]
    [InlineData("13 1/4x17", 13.25, 17, null)]
    [InlineData("13-1/2x17.5x4", 13.5, 17.5, 4)]
    [InlineData("13\"x19\"", 13, 19, null)]
    [InlineData("330.2x482.6mm", 13, 19, null)]
    [InlineData("330.2 mm x 482.6 mm x 3", 13, 19, 3)]
    public void A_prop_is_read_as_it_is_stamped(string text, double diameter, double pitch, int? blades)
    {
        var prop = PropOption.Read(text);
        Assert.Equal(diameter, prop.Diameter!.Value.Inches, 1e-9);
        Assert.Equal(pitch, prop.Pitch.Inches, 1e-9);
        Assert.Equal(blades, prop.Blades);
    }

    [Theory]
    [InlineData("band=6000-5000", "band=6000-5000", "1000 to 12000")]
    [InlineData("band=6000", "band=6000", "such as 5000-6000")]
    [InlineData("gear=0", "gear=0", "0.5 to 5")]
    [InlineData("gear=NaN", "gear=NaN", "0.5 to 5")]
    [InlineData("gear=2,08", "\"08\"", "decimals with a point")]
    [InlineData("step=-50", "step=-50", "1 to 500")]
    [InlineData("power=150", "power=150", "unit")]
    [InlineData("tacho=50%", "tacho=50%", "-20 to 20")]
    [InlineData("cylinders=4", "cylinders", "band, gear")]
    [InlineData("gear=2,gear=2", "gear", "twice")]
    [InlineData("gear=2,", "empty part", "name=value")]
    [InlineData("gear=", "gear", "no value")]
    [InlineData("air=thin", "air=thin", "natural or supercharged")]
    public void An_engine_that_cannot_be_is_refused_with_what_to_write(string text, string what, string mend) =>
        RefusedWith(() => EngineOption.Read(text), "--engine", what, mend);

    [Theory]
    [InlineData("19", "19", "13x19")]
    [InlineData("13x0", "pitch of 0", "3 to 40")]
    [InlineData("330x483", "diameter of 330", "330x483mm")]
    [InlineData("3x13x19", "diameter of 3", "blades last")]
    [InlineData("13x19x9", "9 blades", "2 to 7")]
    [InlineData("13x19mm", "diameter", "inches")]
    [InlineData("-13x19", "-13x19", "13x19")]
    public void A_prop_that_cannot_be_is_refused_with_what_to_write(string text, string what, string mend) =>
        RefusedWith(() => PropOption.Read(text), "--prop", what, mend);

    private static void RefusedWith(Func<object> read, params string[] words)
    {
        var told = Assert.Throws<CommandException>(read).Message;
        Assert.All(words, word => Assert.Contains(word, told, StringComparison.Ordinal));
    }
}
