using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Logbook.Fleet.Advice;

/// <summary>A position that is outside its rated band, or likely to leave it soon, and the prop that would put it right.</summary>
/// <param name="Boat">Id of the boat.</param>
/// <param name="BoatName">Its name, as it was typed.</param>
/// <param name="Position">The position; null where the boat has but one.</param>
/// <param name="On">Day on which it leaves its band by its use; null when it is outside, or when that is not known.</param>
/// <param name="Outside">It is outside now.</param>
/// <param name="DiameterInches">Diameter of the prop [in].</param>
/// <param name="PitchInches">Its pitch [in]: the one advised, else that of the fitted one when it was new.</param>
/// <param name="Another">Another pitch than the fitted one is advised.</param>
/// <param name="First">What is to be settled before; empty when nothing is.</param>
/// <param name="InStore">How many such props lie fit in store.</param>
public sealed record PropWanted(
    string Boat, string BoatName, Position? Position, DateOnly? On, bool Outside, double? DiameterInches, double? PitchInches, bool Another, IReadOnlyList<PitchWait> First, int InStore)
{
    /// <summary>What boats of the fleet want: those outside first, then by the day on which they leave their band.</summary>
    /// <param name="findings">The boats.</param>
    /// <param name="lying">What lies in store.</param>
    public static IReadOnlyList<PropWanted> Of(IEnumerable<BoatFinding> findings, IReadOnlyList<SpareLying> lying) =>
        [.. All(findings, lying).OrderByDescending(w => w.Outside).ThenBy(w => w.On ?? DateOnly.MaxValue).ThenBy(w => w.BoatName, StringComparer.OrdinalIgnoreCase).ThenBy(w => w.Position)];

    private static IEnumerable<PropWanted> All(IEnumerable<BoatFinding> findings, IReadOnlyList<SpareLying> lying)
    {
        foreach (var boat in findings.Where(f => f is { Retired: null, Registered: not null } && !f.IsLaidUp()))
        {
            foreach (var position in boat.Positions.Where(p => p.Mounting is not null))
            {
                var mounting = position.Mounting!;
                var outside = mounting.Band.State is BandState.AboveTop or BandState.BelowBottom;
                if (!outside && !(mounting.Exit.Within100HoursChance >= NextTrialCard.ActAtChance)) continue;
                var card = PitchCard.Of(position);

                // A prop that was right when it was new and has left the band since wants another of its own size.
                var other = card is { Table.Advised: { Fitted: false } advised } ? advised.Pitch.Inches : (double?)null;
                var (diameter, pitch) = (mounting.Prop.DiameterInches, other ?? mounting.Prop.PitchInches);
                yield return new PropWanted(
                    boat.Boat,
                    boat.DisplayName(),
                    boat.Positions.Count > 1 ? position.Position : null,
                    outside ? null : mounting.Exit.Dates?.On,
                    outside,
                    diameter,
                    pitch,
                    other is not null,
                    [.. (card?.WaitsFor ?? []).Where(w => w != PitchWait.Band)],
                    lying.Where(l => Same(l.Size.DiameterInches, diameter) && Same(l.Size.PitchInches, pitch)).SelectMany(l => l.ByDock.Values).SelectMany(t => t).Count(t => t.CameOff is null));
            }
        }
    }

    private static bool Same(double a, double? b) => b is { } other && Math.Abs(a - other) < 0.01;
}
