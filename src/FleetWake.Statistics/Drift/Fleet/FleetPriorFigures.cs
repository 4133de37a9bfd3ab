namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// A fleet's prior as plain numbers that can be kept and read again: <see cref="FleetPrior.Of"/> makes of them a prior that
/// gives the same results to the last bit.
/// </summary>
/// <param name="GrossChance">Chance that a trial is a gross error [1].</param>
/// <param name="Noise">Noise of the trials of a boat that the fleet has not seen.</param>
/// <param name="Groups">What new boats of each pair of material and water are expected to do.</param>
/// <param name="Unseen">The same of a group that the fleet has not seen: counts as in <see cref="GroupFigures"/>.</param>
/// <param name="Members">What is known of single mountings; one that is not among them is as a new boat's of its group.</param>
public sealed record FleetPriorFigures(
    double GrossChance, NoiseFigures Noise, IReadOnlyList<GroupFigures> Groups, IReadOnlyList<int> Unseen, IReadOnlyList<MemberFigures> Members);

/// <summary>A log-normal belief about the noise of one trial, see <see cref="NoiseNodes.LogNormal"/>.</summary>
/// <param name="MedianShare">Its median as a share of the RPM [1].</param>
/// <param name="LogSd">Standard deviation of its natural logarithm [1].</param>
public sealed record NoiseFigures(double MedianShare, double LogSd);

/// <summary>The prior of a group.</summary>
/// <param name="Material">Material of the prop.</param>
/// <param name="Water">Water of the boat.</param>
/// <param name="Mountings">Mountings of it that the fleet has shown; 0 for a group of which only the trade speaks.</param>
/// <param name="Counts">
/// For each place of <see cref="SlopeGrid"/> its weight in units of 1e-7, whole, at least 1: no drift is impossible.
/// </param>
public sealed record GroupFigures(string Material, string Water, int Mountings, IReadOnlyList<int> Counts);

/// <summary>The prior of a mounting from all others of its fleet.</summary>
/// <param name="Id">The mounting.</param>
/// <param name="Counts">As in <see cref="GroupFigures"/>.</param>
/// <param name="NoiseMedianShare">Noise by the other mountings of its boat: median as a share of the RPM [1].</param>
/// <param name="NoiseLogSd">Standard deviation of its natural logarithm [1].</param>
public sealed record MemberFigures(string Id, IReadOnlyList<int> Counts, double NoiseMedianShare, double NoiseLogSd);
