using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Boat;

namespace FleetWake.Web.Office.Spares;

/// <summary>A boat that is outside its rated band, or likely to leave it soon, and the prop that would put it right.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name, with the engine where it has several.</param>
/// <param name="On">Day on which it leaves its band by its use; null when it is outside, or when that is not known.</param>
/// <param name="Outside">It is outside now.</param>
/// <param name="DiameterInches">Diameter of the prop [in].</param>
/// <param name="PitchInches">Its pitch [in]: the one advised, else that of the fitted one when it was new.</param>
/// <param name="Another">Another pitch than the fitted one is advised.</param>
/// <param name="First">What is to be settled before; empty when nothing is.</param>
/// <param name="InStore">How many such props lie fit in store.</param>
public sealed record PropWanted(
    string Boat, string Name, DateOnly? On, bool Outside, double? DiameterInches, double? PitchInches, bool Another, IReadOnlyList<string> First, int InStore)
{
    internal static IEnumerable<PropWanted> Of(IEnumerable<BoatFinding> findings, IReadOnlyList<SpareLying> lying)
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
                    Phrases.Plain(boat.DisplayName()) + (boat.Positions.Count > 1 ? ", " + Words.Prose(position.Position) : ""),
                    outside ? null : mounting.Exit.Dates?.On,
                    outside,
                    diameter,
                    pitch,
                    other is not null,
                    [.. (card?.WaitsFor ?? []).Where(w => w != "boat.pitch-wait-band").Select(w => PageTexts.English[w])],
                    lying.Where(l => Same(l.Size.DiameterInches, diameter) && Same(l.Size.PitchInches, pitch)).SelectMany(l => l.ByDock.Values).SelectMany(t => t).Count(t => t.CameOff is null));
            }
        }
    }

    private static bool Same(double a, double? b) => b is { } other && Math.Abs(a - other) < 0.01;
}
