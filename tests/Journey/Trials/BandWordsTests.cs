using FleetWake.Propulsion.Logs;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>Where a trial stands against the band: the reading first, for the band is a rule for what the engine turns.</summary>
public class BandWordsTests
{
    private const string Dense = "10C,1030hPa,50%";
    private const string Thin = "32C,990hPa,40%";

    [Fact]
    public void An_engine_that_read_over_its_band_is_over_whatever_it_comes_to_at_reference_air()
    {
        var answer = Answer(6060, Dense);
        Assert.True(answer.Trial.CorrectedRpm.Value < 6000);
        Assert.Equal("above", BandWords.Code(answer));
        Assert.Equal(
            $"read 6060 at the helm, 60 above the band 5000-6000: the engine runs too fast; {answer.Trial.CorrectedRpm.Value:0} at reference air", BandWords.Sentence(answer));
    }

    [Fact]
    public void An_engine_that_read_under_its_band_lugs_whatever_it_comes_to_at_reference_air()
    {
        var answer = Answer(4970, Thin);
        Assert.True(answer.Trial.CorrectedRpm.Value > 5000);
        Assert.Equal("below", BandWords.Code(answer));
        Assert.StartsWith("read 4970 at the helm, 30 below the band 5000-6000: the engine lugs; ", BandWords.Sentence(answer), StringComparison.Ordinal);
    }

    [Fact]
    public void Never_in_where_the_reading_is_outside_and_never_silent() => Assert.All(
        from rpm in Enumerable.Range(940, 321) from air in new[] { null, Dense, Thin } from tacho in new[] { "", ",tacho=+2%", ",tacho=-2%" } select Answer(5 * rpm, air, tacho),
        answer =>
        {
            var turned = answer.Trial.Rpm.Value / (1 + (answer.Reading.Engine.TachometerError?.Value ?? 0));
            if (turned is < 5000 or > 6000) Assert.Equal(turned > 6000 ? "above" : "below", BandWords.Code(answer));
            Assert.NotEmpty(BandWords.Sentence(answer)!);
        });

    [Theory]
    [InlineData(6120, ",tacho=+2%", "unclear")] // 6000 turned: the top itself is in the band, as far as it is known
    [InlineData(6131, ",tacho=+2%", "above")]   // 6011 turned
    [InlineData(5900, ",tacho=-2%", "above")]   // 6020 turned
    [InlineData(4900, ",tacho=-2.5%", "unclear")]
    [InlineData(5060, ",tacho=+2%", "below")]   // 4961 turned
    public void A_known_error_of_the_gauge_is_taken_out_first(int rpm, string tacho, string code) => Assert.Equal(code, BandWords.Code(Answer(rpm, "25C,1010hPa,50%", tacho)));

    [Fact]
    public void A_known_error_of_the_gauge_is_told_with_what_turned() => Assert.StartsWith(
        "read 6222 at the helm by a gauge of known error, so 6100 turned, 100 above the band", BandWords.Sentence(Answer(6222, Dense, ",tacho=+2%")), StringComparison.Ordinal);

    [Theory]
    [InlineData(4900, "unclear", "held by the limiter: at least this much")]
    [InlineData(6100, "above", "read 6100 at the helm, 100 above")]
    public void What_the_limiter_held_is_a_lower_bound(int rpm, string code, string words)
    {
        var answer = Answer(rpm, null, limiter: true);
        Assert.Equal(code, BandWords.Code(answer));
        Assert.StartsWith(words, BandWords.Sentence(answer), StringComparison.Ordinal);
    }

    private static TrialAnswer Answer(int rpm, string? air, string tacho = "", bool limiter = false)
    {
        using var reader = new StringReader($"rpm,speed_kn,heading_deg\n{rpm},31.2,40\n{rpm},29.3,221\n");
        var request = new TrialRequest(EngineOption.Read("band=5000-6000,gear=2.08,step=10" + tacho), null) { Air = air is null ? null : AirOption.Read(air), LimiterReached = limiter };
        return request.Of(TrialLog.Read(reader, new LogOptions()), "f");
    }
}
