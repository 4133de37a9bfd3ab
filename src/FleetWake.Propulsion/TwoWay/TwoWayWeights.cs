namespace FleetWake.Propulsion;

/// <summary>What each run counts in a mean; see <see cref="TwoWayMean"/> for where the weights come from.</summary>
internal static class TwoWayWeights
{
    private static readonly double[] s_double = [1 / 2.0, 1 / 2.0];
    private static readonly double[] s_three = [1 / 4.0, 2 / 4.0, 1 / 4.0];
    private static readonly double[] s_four = [1 / 8.0, 3 / 8.0, 3 / 8.0, 1 / 8.0];

    /// <summary>Writes one weight a run; they sum to one.</summary>
    internal static void Fill(MeanSpeedMethod method, ReadOnlySpan<bool> isOut, Span<double> weights)
    {
        switch (method)
        {
            case MeanSpeedMethod.DoubleRun:
                s_double.CopyTo(weights);
                break;
            case MeanSpeedMethod.ThreeRuns:
                s_three.CopyTo(weights);
                break;
            case MeanSpeedMethod.FourRuns:
                s_four.CopyTo(weights);
                break;
            case MeanSpeedMethod.MeanOfHeadings:
                var there = isOut.Count(true);
                var back = isOut.Length - there;
                for (var i = 0; i < isOut.Length; i++)
                    weights[i] = 0.5 / (isOut[i] ? there : back);
                break;
            default:
                weights.Fill(1.0 / isOut.Length);
                break;
        }
    }
}
