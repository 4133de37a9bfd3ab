using FleetWake.Propulsion.Trials;
using FleetWake.Trials;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>Doubts in words, each true by itself.</summary>
public class DoubtWordsTests
{
    public static TheoryData<TrialDoubt> All => [.. Enum.GetValues<TrialDoubt>()];

    [Theory]
    [MemberData(nameof(All))]
    public void Each_doubt_has_words_of_its_own(TrialDoubt doubt)
    {
        Assert.NotEqual(TrialDoubts.Code(doubt).Replace('_', ' '), DoubtWords.Of(doubt));
        Assert.Equal(1, Enum.GetValues<TrialDoubt>().Count(other => DoubtWords.Of(other) == DoubtWords.Of(doubt)));
    }

    [Fact]
    public void RPM_far_apart_are_not_blamed_on_wind() =>
        Assert.Contains("check the RPM of each run", DoubtWords.Of(TrialDoubt.RpmImplausible), StringComparison.Ordinal);
}
