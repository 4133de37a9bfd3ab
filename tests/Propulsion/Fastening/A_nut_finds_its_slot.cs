using CsCheck;
using FleetWake.Propulsion.Fastening;

namespace FleetWake.Propulsion.Tests.Fastening;

/// <summary>Plain geometry, worked here by hand; that a nut is never backed off is said by owners' manuals.</summary>
public class A_nut_finds_its_slot
{
    private static readonly Length s_unf20 = Length.FromInches(1 / 20.0);

    private static readonly Gen<CastleNut> s_nuts =
        Gen.Select(Gen.Int[2, 6], Gen.Bool, Gen.Double[0.5, 3]).Select((half, two, pitch) => new CastleNut(
            2 * half, two ? CrossHoles.TwoAtRightAngles : CrossHoles.One, Length.FromMillimetres(pitch)));

    [Theory]
    [InlineData(6, CrossHoles.One, 60)]
    [InlineData(6, CrossHoles.TwoAtRightAngles, 30)]
    [InlineData(8, CrossHoles.One, 45)]
    [InlineData(8, CrossHoles.TwoAtRightAngles, 45)] // the second hole finds a slot where the first does
    [InlineData(10, CrossHoles.TwoAtRightAngles, 18)]
    [InlineData(4, CrossHoles.TwoAtRightAngles, 90)]
    public void A_pin_fits_once_a_step(int slots, CrossHoles holes, double degrees) =>
        Assert.Equal(degrees, new CastleNut(slots, holes, s_unf20).StepDegrees, 1e-12);

    [Fact]
    public void The_step_is_what_trying_every_angle_finds() => s_nuts.Sample(nut =>
    {
        var fits = from slot in Enumerable.Range(0, nut.Slots)
                   from hole in nut.Holes == CrossHoles.One ? new[] { 0.0 } : [0.0, 90.0]
                   select Math.Round(((slot * 360.0 / nut.Slots) + hole) % 360, 9);
        var sorted = fits.Distinct().Order().ToArray();
        Assert.All(sorted.Zip(sorted.Skip(1)), pair => Assert.Equal(nut.StepDegrees, pair.Second - pair.First, 1e-8));
    });

    /// <summary>1/2-20 UNF, M16 x 1.5 and M12 x 1.25: thread pitch over six.</summary>
    [Theory]
    [InlineData(25.4 / 20, 0.2117)]
    [InlineData(1.5, 0.25)]
    [InlineData(1.25, 0.2083)]
    public void One_slot_of_six_moves_the_nut_by_a_sixth_of_the_thread(double pitchMillimetres, double expected) =>
        Assert.Equal(
            expected,
            new CastleNut(6, CrossHoles.One, Length.FromMillimetres(pitchMillimetres)).Advance(60).Millimetres,
            0.5e-4);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 59)]
    [InlineData(59, 1)]
    [InlineData(60, 0)]
    [InlineData(75, 45)]
    public void It_is_turned_on_to_the_next_one(double past, double further) =>
        Assert.Equal(further, new CastleNut(6, CrossHoles.One, s_unf20).DegreesToNextSlot(past), 1e-12);

    [Fact]
    public void It_is_never_turned_back_and_never_a_whole_step() =>
        Gen.Select(s_nuts, Gen.Double[0, 360]).Sample((nut, past) =>
        {
            var further = nut.DegreesToNextSlot(past);
            Assert.True(further >= 0 && further < nut.StepDegrees);
        });

    [Fact]
    public void Unseen_it_is_half_a_step_more_or_less()
    {
        var unseen = new CastleNut(6, CrossHoles.One, s_unf20).UnseenDegreesToNextSlot;
        Assert.Equal(30, unseen.Value);
        Assert.Equal(17.32, unseen.StandardDeviation, 0.005);
    }

    [Fact]
    public void Nuts_that_no_pin_can_pass_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("slots", () => new CastleNut(5, CrossHoles.One, s_unf20));
        Assert.Throws<ArgumentOutOfRangeException>("slots", () => new CastleNut(14, CrossHoles.One, s_unf20));
        Assert.Throws<ArgumentOutOfRangeException>("holes", () => new CastleNut(6, (CrossHoles)3, s_unf20));
        Assert.Throws<ArgumentOutOfRangeException>("threadPitch", () => new CastleNut(6, CrossHoles.One, default));
        Assert.Throws<ArgumentOutOfRangeException>("threadPitch", () => new CastleNut(6, CrossHoles.One, Length.FromMillimetres(20)));
        var nut = new CastleNut(6, CrossHoles.One, s_unf20);
        Assert.Throws<ArgumentOutOfRangeException>("degreesPastSlot", () => nut.DegreesToNextSlot(-1));
        Assert.Throws<ArgumentOutOfRangeException>("turnDegrees", () => nut.Advance(double.NaN));
    }
}
