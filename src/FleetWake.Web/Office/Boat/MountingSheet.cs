using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Mountings;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Boat;

/// <summary>A mounting with its sheet, the newest first: what was said, and what nobody said.</summary>
/// <param name="Span">The mounting.</param>
/// <param name="Size">Size of the prop as stamped; null while it is not registered.</param>
/// <param name="Hours">Engine hours at fitting [h], when read.</param>
public sealed record MountingSheet(MountingSpan Span, string? Size, double? Hours)
{
    internal static IReadOnlyList<MountingSheet> Of(BoatHistory? history) => history is null
        ? []
        : [.. history.Mountings.Reverse().Select(m => new MountingSheet(m, history.PropOf(m) is { } prop ? PropWords.Size(prop.DiameterInches, prop.PitchInches) : null, m.Fitted.Hours))];

    /// <summary>What the sheet says, line by line; null where nobody said anything.</summary>
    public IReadOnlyList<(string What, string Said)> Lines(Measures measures)
    {
        var (sheet, t) = (Span.Fitted, PageTexts.English);
        var lines = new List<(string, string)>();
        void Tick(string key, bool? said)
        {
            if (said is { } yes) lines.Add((t[key], yes ? t["boat.sheet-yes"] : t["boat.sheet-no"]));
        }

        Tick("boat.sheet-seal", sheet.SealClearOfLine);
        Tick("boat.sheet-grease", sheet.ShaftGreased);
        Tick("boat.sheet-hardware", sheet.HardwareInOrder);
        if (sheet is { Torque: { } torque, TorqueUnit: { } unit }) lines.Add((t["boat.sheet-torque"], measures.Torque(torque, unit)));
        if (sheet.SlotsAdvanced is { } slots) lines.Add((t["boat.sheet-slots"], measures.Number(slots)));
        Tick("boat.sheet-pin", sheet.NewCotterPin);
        return lines;
    }
}
