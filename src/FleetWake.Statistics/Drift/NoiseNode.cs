namespace FleetWake.Statistics.Drift;

/// <summary>Variances [rpm^2] of good trials and gross errors under a noise node, and log(2 pi variance).</summary>
internal readonly record struct NoiseNode(int Number, double Fine, double Gross, double LogFine, double LogGross)
{
    public static NoiseNode[] Of(DriftSettings settings, double medianRpm)
    {
        var nodes = new NoiseNode[settings.Noise.Shares.Length];
        var r2 = medianRpm * medianRpm;
        for (var j = 0; j < nodes.Length; j++)
        {
            var fine = r2 * settings.Noise.Shares[j] * settings.Noise.Shares[j];
            nodes[j] = Of(j, fine, fine + (r2 * settings.GrossShare * settings.GrossShare));
        }

        return nodes;
    }

    public static NoiseNode Of(int number, double fine, double gross) =>
        new(number, fine, gross, Math.Log(2 * Math.PI * fine), Math.Log(2 * Math.PI * gross));

    /// <summary>The variance of a trial with a further one of its own.</summary>
    public double Variance(bool isGross, double own) => (isGross ? Gross : Fine) + own;
}
